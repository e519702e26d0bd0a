#pragma once

#include <imgui.h>

#include "board/Board.hpp"
#include "jobs/Results.hpp"
#include "panels/BoardHand.hpp"
#include "view/View.hpp"
#include "widgets/Figures.hpp"
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

}  // namespace sagitta::viewer
