#include "widgets/Pointers.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plane/Plane.hpp"

namespace sagitta::viewer {

namespace {

static_assert(turning_pointer >= ImGuiMouseCursor_COUNT);

constexpr double width = 24;             ///< pixels at scale 1
constexpr double reach = 7, head = 4.5;  ///< from the middle to an arrow's tip, and an arrow's barb
constexpr double ink = 0.9, rim = 2.1;   ///< half widths of the dark line and of the light one around it
constexpr int arc_steps = 24;

/// Lines that the shape is drawn with: x to the right, y down, the middle at the origin.
using Lines = std::vector<LineSegment>;

void add_arrow(Lines& lines, Point tip, Point direction) {
  for (const double side : {0.75, -0.75}) lines.push_back({tip, tip - head * turned(direction, side)});
}

Lines double_arrow(Point direction) {
  const Point tip = reach * direction;
  Lines lines{{-1.0 * tip, tip}};
  add_arrow(lines, tip, direction);
  add_arrow(lines, -1.0 * tip, -1.0 * direction);
  return lines;
}

/// An arc, open below, with an arrow at each end.
Lines round_arrow() {
  constexpr double from = 0.93 * std::numbers::pi, sweep = 1.14 * std::numbers::pi;
  const auto on = [](double s) { return turned({reach, 0}, from + s * sweep); };
  Lines lines;
  for (int i = 0; i < arc_steps; ++i) lines.push_back({on(1.0 * i / arc_steps), on((i + 1.0) / arc_steps)});
  add_arrow(lines, on(0), turned({0, -1}, from));
  add_arrow(lines, on(1), turned({0, 1}, from + sweep));
  return lines;
}

double distance_to(const LineSegment& line, Point p) {
  const Point d = line.b - line.a;
  return distance(p, line.a + std::clamp(dot(p - line.a, d) / dot(d, d), 0.0, 1.0) * d);
}

PointerPicture painted(const Lines& lines, double scale) {
  PointerPicture picture{static_cast<int>(std::lround(width * scale)) | 1, {}};
  const double middle = picture.side / 2.0;
  const auto cover = [&](double far, double half) { return std::clamp((half - far) * scale + 0.5, 0.0, 1.0); };
  for (int row = 0; row < picture.side; ++row)
    for (int column = 0; column < picture.side; ++column) {
      const Point p{(column + 0.5 - middle) / scale, (row + 0.5 - middle) / scale};
      double far = width;
      for (const LineSegment& line : lines) far = std::min(far, distance_to(line, p));
      const double all = cover(far, rim), dark = cover(far, ink);
      const auto shade = static_cast<std::uint8_t>(std::lround(255 * (all > 0 ? 1 - dark / all : 0)));
      for (const std::uint8_t v : {shade, shade, shade, static_cast<std::uint8_t>(std::lround(255 * all))})
        picture.pixels.push_back(v);
    }
  return picture;
}

}  // namespace

std::optional<PointerPicture> pointer_picture(int shape, float scale) {
  constexpr double slant = std::numbers::sqrt2 / 2;
  const auto size = static_cast<double>(scale);
  if (shape == ImGuiMouseCursor_ResizeNWSE) return painted(double_arrow({slant, slant}), size);
  if (shape == ImGuiMouseCursor_ResizeNESW) return painted(double_arrow({slant, -slant}), size);
  if (shape == turning_pointer) return painted(round_arrow(), size);
  return std::nullopt;
}

}  // namespace sagitta::viewer
