#pragma once

/// Every command of the window: its name, what it does in words, its key. One list feeds the keys, the bar, the
/// searchable list and the first-run page.

#include <functional>
#include <string>
#include <vector>

#include "app/Desk.hpp"
#include "window/InputQueue.hpp"

namespace sagitta::viewer {

struct Command {
  std::string name;   ///< "undo"; what panels ask for
  std::string title;  ///< "Undo"
  std::string group;  ///< "File", "Edit", "Look", "Window"
  Chord key;
  std::function<void(Desk&)> run;
  std::function<bool(const Desk&)> can = nullptr;  ///< always, when empty
};

const std::vector<Command>& commands();
const Command* command_named(const std::string& name);
const Command* command_on(const Chord& key);
/// "Ctrl+Shift+S".
std::string key_words(const Chord& key);
/// All of them as panels show them, and what of them would do something now.
Offer offer();
void update(Offer& offer, const Desk& desk);

}  // namespace sagitta::viewer
