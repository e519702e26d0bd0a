#pragma once

#include "export/Drawing.hpp"
#include "findings/MatingFace.hpp"

namespace sagitta {

/// The board's mating face for whoever draws or cuts the neck. The layers: outline, nut-line, joint, pins, channel.
Drawing mating_drawing(const Board& board, const MatingFace& face);

}  // namespace sagitta
