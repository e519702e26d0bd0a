#pragma once

/// A neck as its STEP file draws it, in plain values, and how the board lies on it. The neck must be drawn as the board
/// lies: x from the nut toward the bridge, x = 0 at the nut, the centre line at y = 0, the glue face up. Lengths in mm.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"

namespace sagitta {

using Place3 = std::array<double, 3>;

/// What was read.
struct NeckShape {
  std::string unit;                           ///< of the file, as it says; everything here is in mm
  int solids = 0;                             ///< bodies in the file
  int faces = 0;                              ///< faces of all of them
  bool planar = true;                         ///< the glue face is a plane
  std::vector<std::vector<Place3>> outlines;  ///< of the glue face, closed polylines within 0.001 mm; holes too
  double interference = 0;                    ///< mm^3 of the neck that stand where the board will be
  friend bool operator==(const NeckShape&, const NeckShape&) = default;
};

/// A neck's file that was read, or why not.
struct NeckReading {
  std::optional<NeckShape> shape;
  std::string failure;  ///< in words for the builder; empty when there is a shape
  friend bool operator==(const NeckReading&, const NeckReading&) = default;
};

/// The plane through the glue face, by least squares over its corners: z = height + along x + across y.
struct GluePlane {
  double height = 0, along = 0, across = 0;
};
GluePlane glue_plane(const NeckShape& shape);

/// How far one side's end stands higher than a plane through the other three corners: the rise across the face at the
/// heel less that at the nut, between the ends of the board or of the face, whichever comes first.
double glue_twist(const NeckShape& shape, const Layout& layout);

/// The neck against the board at one x, on one side.
struct Overlap {
  double x = 0;
  int side = -1;   ///< -1: at negative y; +1: at positive y
  double out = 0;  ///< how far the neck stands out beyond the board; negative: the board beyond the neck
};
/// At every corner of the glue face and of the board and at stations between, where both have a straight side.
std::vector<Overlap> overlaps(const NeckShape& shape, const Layout& layout);

/// A channel found in the glue face.
struct FoundChannel {
  double width = 0, from = 0, to = 0;
};
std::optional<FoundChannel> channel_in(const NeckShape& shape);

}  // namespace sagitta
