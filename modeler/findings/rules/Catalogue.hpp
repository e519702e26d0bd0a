#pragma once

/// Every finding's name, severity, limit, source and cost, in the order of what they cost: a wrong scale loses the
/// intonation, a thin edge costs a second look.

#include <algorithm>
#include <array>
#include <iterator>
#include <string>

#include "rules/LookRules.hpp"
#include "rules/NoteRules.hpp"
#include "rules/StopRules.hpp"

namespace sagitta {

inline constexpr auto catalogue = [] {
  std::array<Rule, std::size(stop_rules) + std::size(look_rules) + std::size(note_rules)> all{};
  auto end = std::copy(std::begin(stop_rules), std::end(stop_rules), all.begin());
  end = std::copy(std::begin(look_rules), std::end(look_rules), end);
  std::copy(std::begin(note_rules), std::end(note_rules), end);
  return all;
}();

/// The rule of this name; a name that is not in the catalogue does not compile.
consteval const Rule& rule(std::string_view name) {
  for (const Rule& entry : catalogue)
    if (entry.name == name) return entry;
  throw "no such finding";
}

/// The catalogue for reading: what `sagitta findings` prints.
std::string findings_text();

/// The same as Markdown tables, as the README carries it.
std::string findings_markdown();

}  // namespace sagitta
