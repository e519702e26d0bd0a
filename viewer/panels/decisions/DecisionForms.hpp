#pragma once

/// The choice between several ways to give the same quantity.

#include "jobs/Results.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// Several ways of saying one thing: one scale or a fan, equal steps or cents, what gives the width. Draws the choice
/// above the rows of its block; rows of the ways not chosen are hidden by shows().
void draw_forms(Ui& ui, const Results& results, Board& draft, std::string_view table, Edit& edit, std::string& what);

/// Whether a row belongs to the way of saying it that the board uses.
bool shows(const Board& board, std::string_view key);

}  // namespace sagitta::viewer
