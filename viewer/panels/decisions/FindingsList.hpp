#pragma once

/// The list of findings, and what the column of checks works with.

#include "document/Document.hpp"
#include "document/OtherVersions.hpp"
#include "jobs/Results.hpp"
#include "view/View.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// What the column of checks works with.
struct CheckState {
  Ui& ui;
  Document& document;
  View& view;
  FieldRows& rows;
  Unopened& unopened;
  const Results& results;
  Manner manner;
};

/// What would go wrong with the board as it stands, the costliest first. A press flies to the place; the finding that
/// is marked offers its decision and, where the remedy is a number, the remedy itself.
void draw_findings(const CheckState& state);

/// ": 1 stop, 2 looks"; "" when there is nothing.
std::string finding_count(const Results& results);

}  // namespace sagitta::viewer
