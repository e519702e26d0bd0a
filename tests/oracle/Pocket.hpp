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

/// The outline of one of the builder's own cuts, counter-clockwise; not of a drawn one. Empty when the cutter named
/// pocket-clear does not enter it.
Loop cut_outline_of(const Board& board, const sagitta::Cut& cut);

/// All places that a disc of radius `cutter` reaches within an ellipse about the origin with half axes a (along x) and
/// b, moved out by `off`: arcs through three points each of the exact curve, whose area is wrong by less than 1e-9 of
/// it. Empty when the disc does not go in.
Loop oval_outline(double a, double b, double cutter, double off);

}  // namespace sagitta::oracle
