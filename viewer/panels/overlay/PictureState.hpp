#pragma once

/// What the marks over the board's picture, and the pointer on it, work with.

#include <imgui.h>

#include "board/Board.hpp"
#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "overlay/BoardHand.hpp"
#include "view/View.hpp"
#include "widgets/FieldRow.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What marks over the board's picture are drawn from. They change none of it.
struct PictureState {
  Ui& ui;
  const Board& board;  ///< the document's; the results may be a step behind
  const View& view;
  const BoardHand& hand;
  const Results& results;
  Manner manner;
  bool sound = true;  ///< nothing keeps the board from being built
  ImVec2 low;         ///< the picture's corner in the window, pixels
};

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
