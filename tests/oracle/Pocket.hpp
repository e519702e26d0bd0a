#pragma once

#include "board/Board.hpp"
#include "layout/Layout.hpp"

namespace sagitta::oracle {

/// The part of a convex polygon (corners counter-clockwise) to the left of the line from a to b.
std::vector<Point> left_part(const std::vector<Point>& polygon, Point a, Point b);

/// Straight lines from corner to corner.
Loop polygon_loop(const std::vector<Point>& corners);

/// All points within `radius` of a convex polygon (counter-clockwise): sides moved out, an arc about each corner.
Loop grown(const std::vector<Point>& polygon, double radius);

/// The pocket of one marker, counter-clockwise: the piece, its corners as round as the cutter, grown by its clearance.
/// Empty when the cutter does not enter the piece.
Loop pocket_of(const Board& board, const Marker& marker);

}  // namespace sagitta::oracle
