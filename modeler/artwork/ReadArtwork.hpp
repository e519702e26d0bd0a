#pragma once

/// The way in for drawings: SVG and DXF files become Artwork, or one open line.

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

#include "artwork/Artwork.hpp"
#include "board/Board.hpp"

namespace sagitta {

/// No drawing is larger. Bytes.
inline constexpr std::size_t largest_drawing = 16u << 20;
/// No drawing has more lines, arcs and curves, copies by `use` and blocks counted.
inline constexpr std::size_t most_segments = 200'000;
/// Groups, `use` and blocks go no deeper into each other.
inline constexpr int most_nested = 64;

/// A drawing, or why it cannot be used. The faults carry no key; what is wrong inside the file is said with its line.
using ArtworkOrFaults = std::variant<Artwork, Faults>;

/// Reads a drawing, by its ending (.svg, .dxf) or, with another ending, by how it begins. x to the right and y up, mm.
/// `units`: what notes and faults tell lengths in.
ArtworkOrFaults read_artwork(const std::string& path, Units units = Units::mm);

/// The same from text in memory.
ArtworkOrFaults svg_artwork(std::string_view text, Units units = Units::mm);
ArtworkOrFaults dxf_artwork(std::string_view text, Units units = Units::mm);

/// A line that is open at both ends: lines, arcs and Bezier curves, head to tail. mm, x to the right and y up.
using OpenLine = std::vector<PathSegment>;
using OpenLineOrFaults = std::variant<OpenLine, Faults>;

/// The one open line of a drawing in its true size (SVG in mm or 1/96 in, DXF by $INSUNITS, mm where it has none),
/// whatever its colour; ends up to tolerance::drawn_join apart are one. A fault when the drawing holds anything but one
/// open line; the faults carry no key.
OpenLineOrFaults read_open_line(const std::string& path, Units units = Units::mm);

/// The same from text in memory.
OpenLineOrFaults svg_open_line(std::string_view text, Units units = Units::mm);
OpenLineOrFaults dxf_open_line(std::string_view text, Units units = Units::mm);

}  // namespace sagitta
