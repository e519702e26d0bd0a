#pragma once

/// The drawing of the face that is glued to the neck.

#include "drawing/Drawing.hpp"
#include "neck/MatingFace.hpp"

namespace sagitta {

/// The board's mating face for whoever draws or cuts the neck. The layers: outline, nut-line, joint, pins, channel.
Drawing mating_drawing(const Board& board, const MatingFace& face);

}  // namespace sagitta
