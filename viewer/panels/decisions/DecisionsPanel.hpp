#pragma once

/// The column of decisions.

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "view/View.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// What the column of decisions works with.
struct DecisionState {
  Ui& ui;
  Document& document;
  View& view;
  FieldRows& rows;
  const Results& results;
};

/// The left column: the groups of decisions in shop order, one open at a time, with its values.
Requests draw_decisions(const DecisionState& state, ImVec2 low, ImVec2 size);

/// Opens the group of a key and brings its row into view with the keyboard on it.
void lead_to_key(Ui& ui, View& view, FieldRows& rows, const std::string& key);

}  // namespace sagitta::viewer
