#pragma once

#include <string>
#include <vector>

#include "app/Desk.hpp"
#include "panels/Dimensions.hpp"

namespace sagitta::viewer {

/// "slot-too-shallow" -> "Slot too shallow".
std::string finding_title(const Finding& finding);
/// The decision that a finding comes from: a key of the board file, with its index where it is one of many; "" when
/// no one decision does.
std::string key_of_finding(const Finding& finding, const Board& board);
/// Its value where it was measured: a line of that length where the direction is known, else a note at the place.
Dimension dimension_of(const Finding& finding, const Layout& layout, const Manner& manner);
/// The stage of the work in which its place can be seen.
Stage stage_of_finding(const Finding& finding, Stage shown);

/// The finding that is marked, in the newest board; null when there is none or it has gone.
const Finding* marked_finding(const Desk& desk);
/// Marks a finding and sets out to its place.
void fly_to(Desk& desk, const Finding& finding);
/// Marks the one after (+1) or before (-1) the marked one, round and round.
void step_finding(Desk& desk, int direction);

}  // namespace sagitta::viewer
