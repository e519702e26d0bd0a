#include "artwork/Polygons.hpp"

#include <algorithm>
#include <cmath>
#include <polyclipping/clipper.hpp>

namespace sagitta {
namespace {

using ClipperLib::Clipper;
using ClipperLib::Path;
using ClipperLib::Paths;

/// The polygon library counts in whole numbers; this many to the drawing's larger side.
constexpr double steps = 9e8;

/// A box of whole numbers.
struct Extent {
  ClipperLib::cInt left, low, right, high;
  bool holds(const Extent& other) const {
    return left <= other.left && low <= other.low && right >= other.right && high >= other.high;
  }
};

Extent extent_of(const Path& path) {
  Extent extent{path[0].X, path[0].Y, path[0].X, path[0].Y};
  for (const auto& p : path)
    extent = {std::min(extent.left, p.X), std::min(extent.low, p.Y), std::max(extent.right, p.X),
              std::max(extent.high, p.Y)};
  return extent;
}

/// Whether a path lies inside another that it does not cross: its first corner or middle of a side decides that does
/// not lie on the other.
bool lies_in(const Path& inner, const Path& outer) {
  for (std::size_t i = 0; i < inner.size(); ++i) {
    const auto &a = inner[i], &b = inner[i + 1 < inner.size() ? i + 1 : 0];
    for (const ClipperLib::IntPoint& p : {a, ClipperLib::IntPoint((a.X + b.X) / 2, (a.Y + b.Y) / 2)})
      if (const int side = ClipperLib::PointInPolygon(p, outer); side != -1) return side == 1;
  }
  return false;
}

/// Outer outlines counter-clockwise and holes clockwise: the library turns some the other way where sides lie on each
/// other.
void orient(Paths& paths) {
  std::erase_if(paths, [](const Path& path) { return path.size() < 3; });
  std::vector<Extent> extents;
  for (const Path& path : paths) extents.push_back(extent_of(path));
  for (std::size_t i = 0; i < paths.size(); ++i) {
    bool hole = false;
    for (std::size_t k = 0; k < paths.size(); ++k)
      if (k != i && extents[k].holds(extents[i]) && lies_in(paths[i], paths[k])) hole = !hole;
    if (ClipperLib::Orientation(paths[i]) == hole) ClipperLib::ReversePath(paths[i]);
  }
}

class Table {
 public:
  Table(const Box& box, const Grain& grain)
      : low_(box.low), scale_(steps / std::max({box.high.x - box.low.x, box.high.y - box.low.y, 1e-9})), grain_(grain) {
    const double margin = 1 / scale_ * steps / 10;
    const Box big = box.grown(margin);
    frame_ = {to(big.low), to({big.high.x, big.low.y}), to(big.high), to({big.low.x, big.high.y})};
  }

  /// The area of a part within the frame.
  Paths area_of(const ClusterPart& part) const {
    Clipper clipper;
    clipper.StrictlySimple(true);
    for (const Outline* outline : part.outlines) {
      Path path;
      for (const Point corner : outline->corners) path.push_back(to(corner));
      clipper.AddPath(path, ClipperLib::ptSubject, true);
    }
    Path frame = frame_;
    if (part.around < 0) ClipperLib::ReversePath(frame);
    const int turns = part.rule == FillRule::nonzero ? std::abs(part.around) : std::abs(part.around) % 2;
    for (int i = 0; i < turns; ++i) clipper.AddPath(frame, ClipperLib::ptSubject, true);
    const auto rule = part.rule == FillRule::nonzero ? ClipperLib::pftNonZero : ClipperLib::pftEvenOdd;
    Paths result;
    clipper.Execute(ClipperLib::ctUnion, result, rule, rule);
    orient(result);
    return result;
  }

  static Paths combined(const Paths& a, const Paths& b, ClipperLib::ClipType type) {
    Clipper clipper;
    clipper.StrictlySimple(true);
    clipper.AddPaths(a, ClipperLib::ptSubject, true);
    clipper.AddPaths(b, ClipperLib::ptClip, true);
    Paths result;
    clipper.Execute(type, result, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    orient(result);
    return result;
  }

  /// Without the frame and without slivers that the chords alone account for.
  Outlines outlines(const Paths& paths) const {
    Outlines all;
    for (const Path& path : paths) {
      if (path.size() < 3 || is_frame(path)) continue;
      Outline outline = made(path);
      double around = 0;
      for (const Stroke& stroke : outline.strokes) around += distance(start_of(stroke), end_of(stroke));
      if (std::abs(outline.area) > 2 * grain_.chord * around) all.push_back(std::move(outline));
    }
    return all;
  }

 private:
  ClipperLib::IntPoint to(Point p) const {
    return {static_cast<ClipperLib::cInt>(std::llround((p.x - low_.x) * scale_)),
            static_cast<ClipperLib::cInt>(std::llround((p.y - low_.y) * scale_))};
  }
  Point from(const ClipperLib::IntPoint& p) const {
    return {low_.x + static_cast<double>(p.X) / scale_, low_.y + static_cast<double>(p.Y) / scale_};
  }
  bool is_frame(const Path& path) const {
    for (const auto& corner : path)
      if (corner == frame_[0]) return true;
    return false;
  }
  Outline made(const Path& path) const {
    StrokeLoop strokes;
    Point at = from(path.back());
    for (const auto& corner : path) {
      const Point next = from(corner);
      strokes.push_back(line(at, next));
      at = next;
    }
    return make_outline(std::move(strokes), grain_.chord);
  }

  Point low_;
  double scale_;
  Grain grain_;
  Path frame_;
};

}  // namespace

std::optional<Outlines> cut_polygons(const std::vector<ClusterPart>& parts, Keep keep, const Box& box,
                                     const Grain& grain) {
  const Table table(box, grain);
  Paths kept = table.area_of(parts.front()), others;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const Paths area = table.area_of(parts[i]);
    if (keep == Keep::any) kept = Table::combined(kept, area, ClipperLib::ctUnion);
    if (keep == Keep::both) kept = Table::combined(kept, area, ClipperLib::ctIntersection);
    if (keep == Keep::first) others = Table::combined(others, area, ClipperLib::ctUnion);
  }
  if (keep == Keep::first) {
    if (table.outlines(Table::combined(kept, others, ClipperLib::ctIntersection)).empty()) return std::nullopt;
    kept = Table::combined(kept, others, ClipperLib::ctDifference);
  }
  return table.outlines(kept);
}

}  // namespace sagitta
