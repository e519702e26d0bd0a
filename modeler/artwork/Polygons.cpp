#include "artwork/Polygons.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"
#include "polygon/Clip.hpp"
#include "polygon/Frame.hpp"

namespace sagitta {
namespace {

/// Whole numbers to the drawing's larger side. With the frame they stay under 2^30, where Clipper is quick.
constexpr double steps = 9e8;

/// The drawing's areas on one grid.
class Table {
 public:
  Table(const Box& box, const Resolution& resolution)
      : grid_{box.low, steps / std::max({box.high.x - box.low.x, box.high.y - box.low.y, tolerance::same})},
        frame_(box.grown(1 / grid_.per_mm * steps / 10), grid_),
        resolution_(resolution) {}

  /// The area of a part within the frame.
  GridPaths area_of(const ClusterPart& part) const {
    ClipJob job;
    job.fill = part.rule;
    for (const Outline* outline : part.outlines) job.subject.push_back(grid_.path(outline->corners));
    frame_.add(part.rule == FillRule::evenodd ? part.around % 2 : part.around, job.subject);
    return clipped_strictly(job);
  }

  static GridPaths combined(const GridPaths& a, const GridPaths& b, SetOperation how) {
    return clipped_strictly({a, b, how, FillRule::nonzero});
  }

  /// Without the frame and without slivers that the chords alone account for.
  Outlines outlines(GridPaths paths) const {
    frame_.take_off(paths);
    Outlines all;
    for (const GridPath& path : paths) {
      Outline outline = made(path);
      double around = 0;
      for (const PathSegment& stroke : outline.strokes) around += distance(start_of(stroke), end_of(stroke));
      if (std::abs(outline.area) > 2 * resolution_.chord * around) all.push_back(std::move(outline));
    }
    return all;
  }

 private:
  Outline made(const GridPath& path) const {
    PathLoop strokes;
    Point at = grid_.point(path.back());
    for (const GridPoint& corner : path) {
      const Point next = grid_.point(corner);
      strokes.push_back(line(at, next));
      at = next;
    }
    return make_outline(std::move(strokes), resolution_.chord);
  }

  Grid grid_;
  Frame frame_;
  Resolution resolution_;
};

}  // namespace

std::optional<Outlines> cut_polygons(const std::vector<ClusterPart>& parts, Keep keep, const Box& box,
                                     const Resolution& resolution) {
  const Table table(box, resolution);
  GridPaths kept = table.area_of(parts.front()), others;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const GridPaths area = table.area_of(parts[i]);
    if (keep == Keep::any) kept = Table::combined(kept, area, SetOperation::united);
    if (keep == Keep::both) kept = Table::combined(kept, area, SetOperation::common);
    if (keep == Keep::first) others = Table::combined(others, area, SetOperation::united);
  }
  if (keep == Keep::first) {
    if (table.outlines(Table::combined(kept, others, SetOperation::common)).empty()) return std::nullopt;
    kept = Table::combined(kept, others, SetOperation::without);
  }
  return table.outlines(kept);
}

}  // namespace sagitta
