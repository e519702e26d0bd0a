#pragma once

/// The column of checks.

#include "decisions/FindingsList.hpp"
#include "requests/Request.hpp"

namespace sagitta::viewer {

/// The right column: what is wrong with the board, each line leading to the decision that causes it; notes of cuts that
/// only touch; the exact solid's figures; while comparing, what differs.
Requests draw_checks(const CheckState& state, ImVec2 low, ImVec2 size);

/// How much there is to see there, to stand behind the word Check: ": 9 problems", ": 2 stops, one look"; may be empty.
std::string check_count(const Unopened& unopened, const Results& results);

/// Everything that keeps this board from being built, and what is wrong with a file that could not be opened.
std::vector<Problem> problems_of(const Unopened& unopened, const Results& results);

}  // namespace sagitta::viewer
