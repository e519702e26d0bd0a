#pragma once

/// The board from above as outlines and lines on layers, one layer for each operation, named in the trade's words.
/// What DXF, SVG and PDF write; the writers only choose how. Lengths in mm.

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plane/Ellipse.hpp"

namespace sagitta {

/// How far slots, nut seat and binding lines run past the finished edge, so that none ends short. mm. Less than the
/// margin that the radius is cut beyond the board.
inline constexpr double drawing_overrun = 2;

/// Characters that a layer's name has at most: what the narrowest format allows.
inline constexpr std::size_t longest_layer_name = 31;

/// Lines and arcs head to tail: a closed outline, counter-clockwise round its inside (clockwise
/// round a hole), or an open line.
struct Figure {
  std::string name;  ///< "slot of fret 7"
  Loop pieces;
  bool closed = true;
  std::optional<Ellipse> ellipse{};  ///< what the arcs stand for, where that is one
  friend bool operator==(const Figure&, const Figure&) = default;
};

/// True when the figure is a whole circle, in however many arcs about one centre.
bool is_circle(const Figure& figure);

/// An operation's outlines and lines. The name holds letters, digits, "-" and "_", at most 31 of them: what the
/// narrowest format allows.
struct Layer {
  std::string name;
  std::string colour;  ///< "#rrggbb"
  std::vector<Figure> figures;
  friend bool operator==(const Layer&, const Layer&) = default;
};

struct Drawing {
  std::string title;
  std::vector<std::string> notes;  ///< what whoever opens the file must know, a sentence each
  Box page;                        ///< what the drawing is of: the board, the blank
  std::vector<Layer> layers;       ///< none of them empty
  friend bool operator==(const Drawing& a, const Drawing& b) {
    return a.title == b.title && a.notes == b.notes && a.layers == b.layers && a.page.low == b.page.low &&
           a.page.high == b.page.high;
  }
};

/// Null when the drawing has nothing on this layer.
const Layer* layer_named(const Drawing& drawing, std::string_view name);

/// The layers that work from below needs (cuts from below and right through, pins, dowels, outline, blank and their
/// centre lines), seen from below: the blank is turned over about its long axis, so that x stays and y changes its
/// sign.
Drawing from_below(const Drawing& drawing);

Drawing moved(Drawing drawing, Point by);
Drawing mirrored(Drawing drawing);

/// A name for a layer, a file or a folder: what is not a letter, a digit, "-" or "_" becomes "_"; at most 31 long.
std::string plain_name(std::string_view text);

}  // namespace sagitta
