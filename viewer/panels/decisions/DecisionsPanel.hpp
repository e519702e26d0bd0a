#pragma once

/// The column of decisions.

#include "decisions/DrawerMenu.hpp"
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
  DrawerForm& drawer;
};

/// The left column: the groups of decisions in shop order, one open at a time, with its values.
Requests draw_decisions(const DecisionState& state, ImVec2 low, ImVec2 size);

/// Opens the group of a key and brings its row into view, ready to be typed over.
void lead_to_key(Ui& ui, View& view, FieldRows& rows, const std::string& key);
/// Opens the group of a key and brings its row into view with the keyboard on it; Enter then types over it.
void show_key(Ui& ui, View& view, FieldRows& rows, const std::string& key);
/// Opens the group of a key and brings its row into view, no more.
void reveal_key(Ui& ui, View& view, FieldRows& rows, const std::string& key);

}  // namespace sagitta::viewer
