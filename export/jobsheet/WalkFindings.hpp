#pragma once

/// Findings put at the steps that they matter to.

#include <vector>

#include "jobsheet/Walk.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Takes out of `open` what belongs to a step that the walk has, and puts its lines there.
void put_at_steps(const Board& board, std::vector<WalkStep>& walk, std::vector<const Finding*>& open);

/// A line for each stop and each look. Notes of one kind with one remedy are one line: it counts them, names all
/// places, and says the text of the one that is furthest over its limit.
std::vector<std::string> finding_lines(const std::vector<const Finding*>& findings);

/// What a finding says and what to change.
std::string text_of(const Finding& finding);

}  // namespace sagitta
