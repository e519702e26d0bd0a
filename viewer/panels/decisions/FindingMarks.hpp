#pragma once

/// A finding's title, place and decision.

#include <string>
#include <vector>

#include "decisions/Dimensions.hpp"
#include "jobs/Results.hpp"
#include "view/View.hpp"

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
const Finding* marked_finding(const View& view, const Results& results);
/// Marks a finding of the model and sets out to its place; `now` in seconds, of the frame.
void fly_to(View& view, const Model& model, const Finding& finding, double now);
/// Marks the one after (+1) or before (-1) the marked one, round and round.
void step_finding(View& view, const Results& results, int direction, double now);

}  // namespace sagitta::viewer
