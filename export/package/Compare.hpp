#pragma once

/// Two boards compared: keys of the board file that differ, and what each changes in the wood.

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// What a change does to the wood, in mm: the largest shift of a slot that both boards have, of the outline, and of
/// the height of a floor or of the playing surface; and what one board has and the other has not.
struct Effect {
  double slot = 0;   ///< of a slot's middle line, at the edges or on the centre line
  double edge = 0;   ///< of the outline, its ends included
  double depth = 0;  ///< of the playing surface, or of a slot's, pocket's or nut seat's floor above the glue face
  int slots = 0, pockets = 0;  ///< more (or fewer) in the second board
  double volume = 0;           ///< of the finished board, more in the second; mm^3
  friend bool operator==(const Effect&, const Effect&) = default;
};

/// What two boards differ by.
Effect effect_of(const PreparedBoard& a, const PreparedBoard& b);

/// A key that two boards give differently, as it would stand in a board file; "-" where one gives none. `effect` is
/// what this key alone changes on the first board; empty where the first board cannot be built with it alone.
struct KeyDifference {
  std::string key, a, b;
  std::optional<Effect> effect;
};

/// Every key that differs, in the order of the field table.
std::vector<KeyDifference> differences(const PreparedBoard& a, const PreparedBoard& b);

/// "slots up to 0.2500 mm, 2 fewer pockets", lengths in these units; "nothing in the wood".
std::string effect_text(const Effect& effect, Units units);

/// What `sagitta compare` prints, lengths in these units.
std::string comparison_text(const std::vector<KeyDifference>& keys, const Effect& all, Units units);
/// {keys: [{key, a, b, effect}], effect}; effect: {slot, edge, depth, slots, pockets, volume}, mm and mm^3, or null.
nlohmann::ordered_json comparison_json(const std::vector<KeyDifference>& keys, const Effect& all);

}  // namespace sagitta
