#pragma once

/// What the pointer holds on the board: an inlay, or a grip of its frame.

#include <imgui.h>

#include <string>

#include "board/Board.hpp"
#include "overlay/InlayFrame.hpp"
#include "polygon/Region.hpp"
#include "scene/Vec.hpp"

namespace sagitta::viewer {

/// The side of a piece, before it is turned, that its turning grip stands off from.
enum class GripSide { none, up, down, heel, nut };

/// The grip of an inlay's frame that a hand holds, and how everything was when it took hold.
struct GripHold {
  bool turns = false;              ///< else it sizes
  GripSide side = GripSide::none;  ///< of the turning grip, whichever is held
  InlayFrame frame;                ///< as drawn, a little off the piece
  Inlay inlay;
  Region outline;       ///< of the piece, before it is turned
  bool moved = false;   ///< far enough to be meant
  std::string reading;  ///< the figure, in words
};

/// What a hand is doing on the board's picture.
struct BoardHand {
  enum class What { none, orbit, pan, plane, lift, click, inlay, grip } what = What::none;
  ImVec2 start, last;  ///< pointer, pixels of the window
  bool menu = false;   ///< the right button is down and has not moved: letting go opens the menu
  double start_cut = 0;
  float start_apart = 0;
  int inlay = -1;     ///< being dragged: index into the board's inlays
  Point start_shift;  ///< its shift along and across when the drag began
  Vec grabbed;        ///< where it, or its frame's grip, was taken hold of, mm
  GripHold grip;
};

}  // namespace sagitta::viewer
