#pragma once

/// Where things stand in an SVG: lengths with units, transforms, viewBox.

#include <optional>
#include <string_view>

#include "artwork/Affine.hpp"

namespace sagitta {

/// The size that percentages are of, user units.
struct Viewport {
  double width = 100, height = 100;
};

enum class Along { x, y, both };

/// A length in user units (SVG 1.1, section 4.2; 96 px to the inch, as CSS has it): px, mm, cm, in, pt, pc, %. Nothing
/// for what is no length or depends on a font.
std::optional<double> svg_length(std::string_view text, const Viewport& viewport, Along along);

/// The product of a transform list (section 7.6). Nothing when it cannot be read.
std::optional<Affine> read_transform(std::string_view text);

struct ViewBox {
  double x = 0, y = 0, width = 0, height = 0;
};
/// Four numbers; nothing when there are not four or a size is negative.
std::optional<ViewBox> read_view_box(std::string_view text);

/// From viewBox units to the viewport, its corner at the origin (section 7.8). The sizes of the box must be positive.
Affine fit_view_box(const ViewBox& box, const Viewport& viewport, std::string_view preserve_aspect_ratio);

}  // namespace sagitta
