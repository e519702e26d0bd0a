#pragma once

#include "document/Document.hpp"
#include "panels/PictureState.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// What a hand on the board's picture works with: it moves the view, chooses, and edits inlays.
struct HandState {
  Ui& ui;
  Document& document;
  View& view;
  FieldRows& rows;
  BoardHand& hand;
  const Results& results;
  Manner manner;
  bool sound = true;  ///< nothing keeps the board from being built
  ImVec2 low = {};    ///< the picture's corner in the window, pixels

  PictureState seen() const { return {ui, document.board(), view, hand, results, manner, sound, low}; }
  /// The stage shown, as far as it has been made.
  const StageModel* shown() const { return results.at(view.stage); }
};

}  // namespace sagitta::viewer
