#pragma once

/// A change of the board that no widget makes.

#include <functional>

#include "gui/Hand.hpp"

namespace sagitta::test {

/// Edits the document as one step that can be undone, and waits until the window has followed.
inline void change(Hand& hand, const std::function<void(Board&)>& edit) {
  Board draft = hand.board();
  edit(draft);
  hand.desk().document.change(draft, "Test");
  hand.wait();
}

}  // namespace sagitta::test
