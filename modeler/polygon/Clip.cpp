#include "polygon/Clip.hpp"

#include <algorithm>
#include <polyclipping/clipper.hpp>

namespace sagitta {
namespace {

using namespace ClipperLib;

Path to_clipper(const GridPath& path) {
  Path own;
  own.reserve(path.size());
  for (const GridPoint& p : path) own.emplace_back(p.x, p.y);
  return own;
}

GridPaths from_clipper(const Paths& paths) {
  GridPaths own;
  own.reserve(paths.size());
  for (const Path& path : paths) {
    GridPath& last = own.emplace_back();
    last.reserve(path.size());
    for (const IntPoint& p : path) last.push_back({p.X, p.Y});
  }
  return own;
}

ClipType to_clipper(SetOperation how) {
  if (how == SetOperation::united) return ctUnion;
  return how == SetOperation::common ? ctIntersection : ctDifference;
}

PolyFillType to_clipper(FillRule rule) {
  if (rule == FillRule::positive) return pftPositive;
  return rule == FillRule::nonzero ? pftNonZero : pftEvenOdd;
}

Paths executed(const ClipJob& job, bool strictly) {
  Clipper clipper;
  clipper.StrictlySimple(strictly);
  for (const GridPath& path : job.subject) clipper.AddPath(to_clipper(path), ptSubject, true);
  for (const GridPath& path : job.clip) clipper.AddPath(to_clipper(path), ptClip, true);
  Paths result;
  clipper.Execute(to_clipper(job.how), result, to_clipper(job.fill), to_clipper(job.fill));
  return result;
}

/// A box of whole numbers.
struct Extent {
  cInt left, low, right, high;
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
    for (const IntPoint& p : {a, IntPoint((a.X + b.X) / 2, (a.Y + b.Y) / 2)})
      if (const int side = PointInPolygon(p, outer); side != -1) return side == 1;
  }
  return false;
}

/// Outer outlines counter-clockwise and holes clockwise: Clipper turns some the other way where sides lie on each
/// other.
void orient(Paths& paths) {
  std::erase_if(paths, [](const Path& path) { return path.size() < 3; });
  std::vector<Extent> extents;
  for (const Path& path : paths) extents.push_back(extent_of(path));
  for (std::size_t i = 0; i < paths.size(); ++i) {
    bool hole = false;
    for (std::size_t k = 0; k < paths.size(); ++k)
      if (k != i && extents[k].holds(extents[i]) && lies_in(paths[i], paths[k])) hole = !hole;
    if (Orientation(paths[i]) == hole) ReversePath(paths[i]);
  }
}

}  // namespace

GridPaths clipped(const ClipJob& job) { return from_clipper(executed(job, false)); }

GridPaths clipped_strictly(const ClipJob& job) {
  Paths paths = executed(job, true);
  orient(paths);
  return from_clipper(paths);
}

double area(const GridPath& path) { return Area(to_clipper(path)); }

}  // namespace sagitta
