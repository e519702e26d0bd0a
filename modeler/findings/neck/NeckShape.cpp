#include "neck/NeckShape.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Stations along the neck between its corners.
constexpr int stations = 64;
/// How far from a corner to look: at the corner itself the outline has two places across. mm.
constexpr double beside = 1e-3;
/// A side further than this from the board's edge belongs to the body or the headstock. mm.
constexpr double other_part = 12;
/// A face that leans more against every axis of its file is meant to. radians: half a degree.
constexpr double drawn_lean = 0.0087;
/// A gap shorter than this along the neck, or narrower, is no rod channel. mm.
constexpr double shortest_channel = 20, narrowest_channel = 0.5;
/// A hole's outline stays this close to its circle. mm.
constexpr double round = 0.02;

struct Reach {
  double low = std::numeric_limits<double>::infinity(), high = -std::numeric_limits<double>::infinity();
  void add(double value) { low = std::min(low, value), high = std::max(high, value); }
};

Reach along(const NeckShape& shape) {
  Reach reach;
  for (const auto& outline : shape.outlines)
    for (const Place3& place : outline) reach.add(place[0]);
  return reach;
}

/// The stretch of x where both board and neck have straight sides.
Reach shared(const NeckShape& shape, const Layout& layout) {
  Reach reach = along(shape);
  for (const LineSegment& edge : layout.edges) {
    reach.low = std::max(reach.low, std::min(edge.a.x, edge.b.x));
    reach.high = std::min(reach.high, std::max(edge.a.x, edge.b.x));
  }
  reach.low += beside, reach.high -= beside;
  return reach;
}

std::optional<FoundHole> hole_of(const std::vector<Place3>& outline) {
  constexpr std::size_t fewest = 8;
  constexpr double widest = 20;
  if (outline.size() < fewest) return {};
  Box box;
  for (const Place3& p : outline) box.add({p[0], p[1]});
  const Point centre = between(box.low, box.high, 0.5);
  const double radius = (box.high.x - box.low.x) / 2;
  if (2 * radius > widest) return {};
  for (const Place3& p : outline)
    if (std::abs(distance({p[0], p[1]}, centre) - radius) > round) return {};
  return FoundHole{centre, 2 * radius};
}

/// The outlines without round holes.
NeckOutlines without_holes(const NeckShape& shape) {
  NeckOutlines rest;
  for (const auto& outline : shape.outlines)
    if (!hole_of(outline)) rest.push_back(outline);
  return rest;
}

/// The two sides at one x: lower and upper, each the end of a stretch nearest to the board's edge.
struct Sides {
  double low = 0, high = 0, low_z = 0, high_z = 0;
};
std::optional<Sides> sides_at(const NeckShape& shape, const Layout& layout, double x) {
  const double edges[] = {-layout.edge(0, x), layout.edge(1, x)};
  std::optional<Sides> best;
  double low_off = other_part, high_off = other_part;
  Sides sides;
  for (const FaceSpan& span : spans_at(shape.outlines, x)) {
    if (std::abs(span.low - edges[0]) < low_off)
      low_off = std::abs(span.low - edges[0]), sides.low = span.low, sides.low_z = span.low_z;
    if (std::abs(span.high - edges[1]) < high_off)
      high_off = std::abs(span.high - edges[1]), sides.high = span.high, sides.high_z = span.high_z;
  }
  if (low_off < other_part && high_off < other_part) best = sides;
  return best;
}

}  // namespace

bool is_measured(const NeckShape& shape) {
  return shape.place.sure && !shape.place.other_hand && shape.place.compared >= least_compared;
}

std::optional<Lean> lean_in_file(const NeckShape& shape) {
  const Place3& up = shape.place.up;
  const auto axis = static_cast<std::size_t>(
      std::max_element(up.begin(), up.end(), [](double a, double b) { return std::abs(a) < std::abs(b); }) -
      up.begin());
  if (std::abs(up[axis]) < std::cos(drawn_lean)) return {};
  // The file's axis seen from the glue face: its level plane rises there by minus its slope.
  Place3 level{};
  level[axis] = up[axis] < 0 ? -1 : 1;
  const Place3 from_face = moved(shape.place, {shape.place.origin[0] + level[0], shape.place.origin[1] + level[1],
                                               shape.place.origin[2] + level[2]});
  return Lean{from_face[0] / from_face[2], from_face[1] / from_face[2]};
}

double glue_twist(const NeckShape& shape, const Layout& layout) {
  const Reach reach = shared(shape, layout);
  if (reach.low >= reach.high) return 0;
  const auto nut = sides_at(shape, layout, reach.low), heel = sides_at(shape, layout, reach.high);
  if (!nut || !heel) return 0;
  const auto rise = [](const Sides& s) { return (s.high_z - s.low_z) / (s.high - s.low); };
  return (rise(*heel) - rise(*nut)) * (heel->high - heel->low);
}

double glue_bow(const NeckShape& shape, const Layout& layout) {
  const Reach reach = shared(shape, layout);
  std::vector<Point> middles;
  for (int i = 0; i <= stations && reach.low < reach.high; ++i) {
    const double x = reach.low + (reach.high - reach.low) * i / stations;
    if (const auto sides = sides_at(shape, layout, x)) middles.push_back({x, (sides->low_z + sides->high_z) / 2});
  }
  double most = 0;
  for (const Point& p : middles) {
    const Point &a = middles.front(), &b = middles.back();
    const double off = p.y - a.y - (b.y - a.y) * (p.x - a.x) / std::max(b.x - a.x, tolerance::snap);
    if (std::abs(off) > std::abs(most)) most = off;
  }
  return most;
}

std::vector<Overlap> overlaps(const NeckShape& shape, const Layout& layout) {
  const Reach reach = shared(shape, layout);
  std::vector<double> places;
  for (int i = 0; i <= stations; ++i) places.push_back(reach.low + (reach.high - reach.low) * i / stations);
  for (const auto& outline : shape.outlines)
    for (const Place3& p : outline)
      for (const double x : {p[0] - beside, p[0] + beside})
        if (x > reach.low && x < reach.high) places.push_back(x);
  std::vector<Overlap> found;
  if (reach.low >= reach.high) return found;
  for (const double x : places)
    if (const auto sides = sides_at(shape, layout, x)) {
      found.push_back({x, -1, -sides->low - layout.edge(0, x)});
      found.push_back({x, +1, sides->high - layout.edge(1, x)});
    }
  return found;
}

std::optional<FoundChannel> channel_in(const NeckShape& shape) {
  const NeckOutlines outlines = without_holes(shape);
  const Reach whole = along(shape);
  std::vector<double> places;
  for (const auto& outline : outlines)
    for (const Place3& p : outline)
      for (const double x : {p[0] - beside, p[0] + beside}) places.push_back(x);
  for (int i = 1; i < stations; ++i) places.push_back(whole.low + (whole.high - whole.low) * i / stations);
  FoundChannel found;
  Reach length;
  for (const double x : places) {
    const auto spans = spans_at(outlines, x);
    for (std::size_t i = 1; i < spans.size(); ++i) {
      const double low = spans[i - 1].high, high = spans[i].low;
      // Beside the centre line there are other things: the gap between two cutaways, a pocket.
      if (low > 0 || high < 0 || high - low < narrowest_channel) continue;
      length.add(x);
      found.width = std::max(found.width, high - low);
      found.across = std::max(found.across, std::abs(low + high) / 2);
    }
  }
  if (length.high - length.low < shortest_channel) return {};
  found.from = length.low - beside, found.to = length.high + beside;
  found.open_at_nut = found.from <= whole.low + 2 * beside, found.open_at_heel = found.to >= whole.high - 2 * beside;
  for (const auto& [x, depth] : shape.floors)
    if (x > found.from && x < found.to) found.depth = std::max(found.depth.value_or(0), depth);
  return found;
}

std::vector<FoundHole> holes_in(const NeckShape& shape) {
  std::vector<FoundHole> found;
  for (const auto& outline : shape.outlines)
    if (const auto hole = hole_of(outline)) found.push_back(*hole);
  return found;
}

}  // namespace sagitta
