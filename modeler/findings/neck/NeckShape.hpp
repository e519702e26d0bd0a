#pragma once

/// A neck as its STEP file draws it, in plain values, moved to where the board lies on it: x from the nut toward the
/// bridge, x = 0 at the nut, the centre line at y = 0, the glue face at z = 0 and up. Lengths in mm.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"
#include "neck/NeckPlace.hpp"

namespace sagitta {

/// What was read.
struct NeckShape {
  std::string unit;          ///< of the file, as it says; everything here is in mm
  int solids = 0;            ///< bodies in the file, boards left out
  int faces = 0;             ///< faces of all of them
  bool planar = true;        ///< the glue face is a plane
  NeckOutlines outlines;     ///< of the glue face, its rounded edges seen from above added, within 0.001 mm; holes too
  double interference = 0;   ///< mm^3 of the neck that stand where the board will be
  NeckPlace place{};         ///< where in the file the board was laid
  double edge_rounding = 0;  ///< widest of the rounded edges, from above
  int boards = 0;            ///< bodies that lie on the glue face as the board would
  std::vector<double>
      depths{};  ///< of the neck under the glue face on the centre line, at BoardSeat::depth_at; 0: none
  std::vector<std::array<double, 2>> floors{};  ///< x and depth of the channel's floor under the glue face
  double times = 1;                   ///< so many times larger the neck fits the board, where it does not as it is
  std::optional<double> body_from{};  ///< x where the neck's wood is first wider than the board: the body's end
  friend bool operator==(const NeckShape&, const NeckShape&) = default;
};

/// A neck's file that was read, or why not.
struct NeckReading {
  std::optional<NeckShape> shape;
  std::string failure;  ///< in words for the builder; empty when there is a shape
  friend bool operator==(const NeckReading&, const NeckReading&) = default;
};

/// Whether what was measured may be told as a measurement: the place is sure, and least_compared of the board's length
/// lies on the glue face.
bool is_measured(const NeckShape& shape);

/// How much the glue face leans against the nearest axis of its file, as a rise for each mm along the board and across
/// it. Nothing where it leans by more than an error of drawing would: half a degree.
struct Lean {
  double along = 0, across = 0;
};
std::optional<Lean> lean_in_file(const NeckShape& shape);

/// How far one side stands higher than the other at the heel when the nut end lies level across: between the ends of
/// the board or of the face, whichever comes first.
double glue_twist(const NeckShape& shape, const Layout& layout);

/// How far the middle between the glue face's sides departs from the straight line between its ends. Positive: up.
double glue_bow(const NeckShape& shape, const Layout& layout);

/// The neck against the board at one x, on one side.
struct Overlap {
  double x = 0;
  int side = -1;   ///< -1: at negative y; +1: at positive y
  double out = 0;  ///< how far the neck stands out beyond the board; negative: the board beyond the neck
};
/// At every corner of the glue face and of the board and at stations between, where both have a side.
std::vector<Overlap> overlaps(const NeckShape& shape, const Layout& layout);

/// A channel found in the glue face.
struct FoundChannel {
  double width = 0, from = 0, to = 0;
  double across = 0;              ///< furthest that its middle lies from the centre line
  std::optional<double> depth{};  ///< where it is deepest
  bool open_at_nut = false, open_at_heel = false;
};
std::optional<FoundChannel> channel_in(const NeckShape& shape);

/// A round hole in the glue face.
struct FoundHole {
  Point centre;
  double diameter = 0;
};
std::vector<FoundHole> holes_in(const NeckShape& shape);

}  // namespace sagitta
