#pragma once

#include <utility>

#include "board/Board.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// How far the cutters named stay away from the sharpest corner of a simple shape about `centre`, and where: an inside
/// corner of angle a keeps the middle of a cutter of radius r r / sin(a/2) away from its point. 0 for one without
/// corners. mm.
std::pair<double, Point> off_corners(const Board& board, const Inlay& inlay, Point centre);

}  // namespace sagitta
