#include "scene/Slice.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

namespace {

/// Walls that lie exactly in the plane are cut at a small distance beside it.
constexpr double beside = 1e-5;

void cut_triangle(const Mesh& mesh, std::size_t t, double x, std::vector<SliceLine>& lines) {
  Point found[2];
  int count = 0;
  for (std::size_t i = 0; i < 3 && count < 2; ++i) {
    const auto& a = mesh.points[mesh.triangles[t][i]];
    const auto& b = mesh.points[mesh.triangles[t][(i + 1) % 3]];
    if ((a[0] < x) == (b[0] < x)) continue;
    const double s = (x - a[0]) / (static_cast<double>(b[0]) - a[0]);
    found[count++] = {a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
  }
  if (count == 2) lines.push_back({found[0], found[1]});
}

std::string place_name(const Layout& layout, double x) {
  for (const Slot& slot : layout.slots) {
    const double middle = (slot.bass_end.x + slot.treble_end.x) / 2;
    if (std::abs(x - middle) <= slot.width / 2) return "fret " + std::to_string(slot.fret) + " slot";
  }
  if (x < 0) return "behind the nut line";
  for (const FretLine& fret : layout.frets)
    if (fret.middle.x > x) return "fret space " + std::to_string(fret.fret);
  return "past the last fret";
}

}  // namespace

std::optional<double> top_at(const Slice& slice, double y) {
  std::optional<double> top;
  for (const SliceLine& line : slice.lines) {
    const double low = std::min(line.a.x, line.b.x), high = std::max(line.a.x, line.b.x);
    if (y < low || y > high || high <= low) continue;
    const double z = line.a.y + (y - line.a.x) / (line.b.x - line.a.x) * (line.b.y - line.a.y);
    if (!top || z > *top) top = z;
  }
  return top;
}

double uncut_at(const Slice& slice, const Surface& surface, double y) {
  return slice.shaped && surface.exists(slice.x, y) ? surface.height(slice.x, y) : slice.high_z;
}

Slice slice_of(const StageModel& stage, const Layout& layout, const Surface& surface, double x) {
  Slice slice;
  slice.x = x;
  for (std::size_t t = 0; t < stage.mesh.triangles.size(); ++t) cut_triangle(stage.mesh, t, x + beside, slice.lines);
  if (slice.lines.empty()) return slice;
  slice.low_y = slice.low_z = 1e300, slice.high_y = slice.high_z = -1e300;
  for (const SliceLine& line : slice.lines)
    for (const Point p : {line.a, line.b}) {
      slice.low_y = std::min(slice.low_y, p.x), slice.high_y = std::max(slice.high_y, p.x);
      slice.low_z = std::min(slice.low_z, p.y), slice.high_z = std::max(slice.high_z, p.y);
    }
  const bool shaped =
      stage.stage != Stage::blank && stage.stage != Stage::thicknessed && stage.stage != Stage::pocketed;
  slice.shaped = shaped;
  if (shaped && !surface.flat) slice.radius = surface.radius(x);
  const double edge = (slice.high_y - slice.low_y) * 1e-4;
  slice.middle = shaped && surface.exists(x, 0) ? surface.height(x, 0) : slice.high_z;
  slice.bass_edge = top_at(slice, slice.low_y + edge).value_or(0);
  slice.treble_edge = top_at(slice, slice.high_y - edge).value_or(0);
  slice.least_left = slice.high_z;
  double deepest = 0;
  for (const SliceLine& line : slice.lines)
    for (const Point p : {line.a, between(line.a, line.b, 0.5), line.b}) {
      const double inward = std::clamp(p.x, slice.low_y + edge, slice.high_y - edge);
      const double top = top_at(slice, inward).value_or(slice.high_z);
      slice.least_left = std::min(slice.least_left, top);
      const double uncut = uncut_at(slice, surface, inward);
      if (uncut - top > deepest) deepest = uncut - top, slice.cut_at = inward;
    }
  // An arc floor is as deep everywhere: then its depth is shown in the middle.
  constexpr double least_cut = 0.02;
  const double same = 2 * stage.deviation;
  if (deepest > least_cut) slice.cut_depth = deepest;
  if (std::abs(uncut_at(slice, surface, 0) - top_at(slice, 0).value_or(0) - deepest) < same) slice.cut_at = 0;
  slice.where = place_name(layout, x);
  return slice;
}

std::vector<double> slot_places(const Layout& layout) {
  std::vector<double> places;
  for (const FretLine& fret : layout.frets)
    if (fret.fret > 0) places.push_back(fret.middle.x);
  return places;
}

}  // namespace sagitta::viewer
