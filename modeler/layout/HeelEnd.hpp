#pragma once

/// The end at the body: straight, an arc or drawn, with its two corners rounded or not.

#include <optional>

#include "layout/DrawnEnd.hpp"
#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// The end's pieces from the edge at negative y to the one at positive y, corner arcs included.
struct HeelEnd {
  Point low, high;  ///< where the edges end and the heel begins
  Loop pieces;      ///< with rounded corners, the first and the last are the corners' arcs
};

/// Where the edges begin.
struct NutCorners {
  Point low, high;
};

/// Empty, with faults added, when the end does not reach both edges or the corners do not fit. `drawn`: the line of a
/// drawn end; may be null. With a tongue the end runs from the edge at negative y to the tongue's side.
std::optional<HeelEnd> heel_end(const Board& board, const Layout& layout, const Taper& taper, const DrawnEnd* drawn,
                                NutCorners nut, Faults& faults);

/// Unit vector along a straight heel end, toward +y: square, along the last fret, or slanted.
Point straight_heel(const Board& board, const Layout& layout);

/// A corner rounded between two straight lines: where the arc begins and ends, and its centre.
struct RoundedCorner {
  Point begin, centre, end;
};
/// The corner at `at` of a line that comes along `u` and goes on along `v`, counter-clockwise (unit vectors). Without
/// rounding all three points are one.
RoundedCorner rounded_corner(Point at, Point u, Point v, double rounding);

}  // namespace sagitta
