#pragma once

/// A drawing written as an SVG file.

#include <string>

#include "drawing/Drawing.hpp"

namespace sagitta {

/// The drawing as an SVG file (SVG 1.1) in true size: width and height are the page's in mm, and one unit of the
/// viewBox is one mm. x is the drawing's x; y is the drawing's y with its sign changed, as SVG's y runs downward. One
/// group a layer with the layer's name as its id; one path a figure with its name as title; a whole circle is a circle,
/// arcs stay arcs. What reaches past the page (slots' overrun, the blank) is in the file all the same.
std::string svg_text(const Drawing& drawing);

}  // namespace sagitta
