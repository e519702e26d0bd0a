#pragma once

/// The frame around the chosen piece as it stands in the window, and its grips.

#include <vector>

#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

struct SeenGrip {
  bool turns = false;  ///< else it sizes
  GripSide side = GripSide::none;
  ImVec2 at;    ///< in the window, pixels
  ImVec2 foot;  ///< where the turning grip's stem leaves the frame
};

/// The chosen piece's frame as it is drawn: a little off the piece, and never too small for its grips to be held apart.
/// While a grip is held it follows the hand.
std::optional<InlayFrame> seen_frame(const PictureState& state);
/// Its grips: one at each corner, and one that stands off from a side; none for turning a dot.
std::vector<SeenGrip> grips_of(const PictureState& state, const InlayFrame& frame);
/// The grip under the pointer.
std::optional<SeenGrip> grip_at_pointer(const PictureState& state);

/// Draws frame and grips, and the figure while one is held; says whether there is a frame. `free`: the pointer is over
/// the picture and holds nothing.
bool draw_inlay_frame(const PictureState& state, Labels& labels, bool free);

}  // namespace sagitta::viewer
