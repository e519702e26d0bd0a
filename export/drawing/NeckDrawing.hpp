#pragma once

/// The drawing that a neck is made from.

#include "drawing/Drawing.hpp"
#include "neck/NeckPlan.hpp"

namespace sagitta {

/// The glue face as it lies face up, x = 0 at the nut. The layers: outline (the board's), neck-sides (with
/// neck.allowance), nut-line, nut-end, joint, pins, channel, deep-cuts.
Drawing neck_drawing(const Board& board, const NeckPlan& plan);

/// The same as it lies face down: mirrored in y.
Drawing neck_drawing_face_down(const Board& board, const NeckPlan& plan);

}  // namespace sagitta
