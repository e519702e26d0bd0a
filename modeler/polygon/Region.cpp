#include "polygon/Region.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "plane/ParallelFor.hpp"
#include "polygon/Clusters.hpp"
#include "polygon/Frame.hpp"
#include "polygon/MovedPath.hpp"
#include "polygon/Neighbours.hpp"
#include "polygon/PolygonFigures.hpp"
#include "polygon/TiledBoolean.hpp"

namespace sagitta {
namespace {

constexpr double sliver = 0.00005;  // mm; tips nearer to the outline than it was moved, by more than this, are none
constexpr double speck = 0.05;      // mm; and whole polygons up to this size
constexpr double frame_margin = 1;  // mm; between a question and the frame that stands for what goes round it
constexpr double offset_noise = 0.00002;  // mm; points that an offset leaves within this of a line say nothing

/// Whether a polygon turns back at b by nearly a half turn.
bool sharp(Point a, Point b, Point c) {
  const Point in = a - b, out = c - b;
  const double along = dot(in, out);
  return along > 0 && along * along > 0.8 * dot(in, in) * dot(out, out);
}

/// The larger side.
double size(const Box& box) { return std::max(box.high.x - box.low.x, box.high.y - box.low.y); }

/// The answers to so many questions, one after the other; side by side where they are of many points.
template <class Answer>
Region gathered(int count, std::size_t points, Answer answer) {
  std::vector<Region> answers(count);
  parallel_for(count, points, [&](int i) { answers[i] = answer(i); });
  Region all;
  for (Region& part : answers) std::move(part.begin(), part.end(), std::back_inserter(all));
  return all;
}

std::size_t points(const Region& region) {
  std::size_t sum = 0;
  for (const Polygon& polygon : region) sum += polygon.size();
  return sum;
}

std::vector<const Polygon*> all_of(const Region& region) {
  std::vector<const Polygon*> all;
  for (const Polygon& polygon : region) all.push_back(&polygon);
  return all;
}

/// Clipper gets only groups of polygons that are near each other: its sweep line crosses everything that it is given.
class Clipping {
 public:
  Clipping(const Region& a, const Region& b, SetOperation how)
      : count_(static_cast<int>(a.size())), how_(how), all_(all_of(a)) {
    for (const Polygon& polygon : b) all_.push_back(&polygon);
  }

  Region run(std::size_t points, const Cancel& cancel) {
    const std::vector<Neighbours> groups = neighbours(all_, 2 / fine_grid.per_mm);
    return gathered(static_cast<int>(groups.size()), points,
                    [&](int i) { return cancel.wanted() ? Region{} : answer(groups[i], cancel); });
  }

 private:
  bool of_a(int i) const { return i < count_; }

  Region answer(const Neighbours& group, const Cancel& cancel) const {
    int about_a = 0, about_b = 0;
    for (const int i : group.about) (of_a(i) ? about_a : about_b) += area(*all_[i]) > 0 ? 1 : -1;
    const auto ours = std::count_if(group.members.begin(), group.members.end(), [&](int i) { return of_a(i); });
    Region answer;
    if (about_a == 0 && about_b == 0 && (ours == 0 || ours == static_cast<std::ptrdiff_t>(group.members.size()))) {
      if (how_ == SetOperation::united || (how_ == SetOperation::without && ours > 0))
        for (const int i : group.members) answer.push_back(*all_[i]);
      return answer;
    }
    ClipJob job{{}, {}, how_, FillRule::nonzero};
    Box box;
    for (const int i : group.members) {
      (of_a(i) ? job.subject : job.clip).push_back(fine_grid.path(*all_[i]));
      add(*all_[i], box);
    }
    if (about_a == 0 && about_b == 0) return fine_grid.polygons(tiled_boolean(job, cancel));
    const Frame frame(box.grown(frame_margin), fine_grid);
    frame.add(about_a, job.subject);
    frame.add(about_b, job.clip);
    GridPaths paths = tiled_boolean(job, cancel);
    frame.take_off(paths);
    return fine_grid.polygons(paths);
  }

  int count_;
  SetOperation how_;
  std::vector<const Polygon*> all_;
};

Region clipped(const Region& a, const Region& b, SetOperation how, const Cancel& cancel) {
  return Clipping(a, b, how).run(points(a) + points(b), cancel);
}

/// Distance from p to the line through a and b, or to a where the two are one point.
double off_line(Point p, Point a, Point b) {
  const Point d = b - a;
  const double size = std::sqrt(dot(d, d));
  return size > 0 ? std::abs(cross(d, p - a)) / size : distance(p, a);
}

Polygon thinned(const Polygon& polygon, double tolerance) {
  constexpr std::size_t window = 64;  // points that one line may stand for
  const std::size_t n = polygon.size();
  if (n < 4) return polygon;
  Polygon kept;
  kept.reserve(n);
  kept.push_back(polygon.front());
  std::size_t last = 0;
  for (std::size_t next = 2; next <= n; ++next) {
    bool serves = next - last < window;
    for (std::size_t i = last + 1; i < next && serves; ++i)
      serves = off_line(polygon[i], polygon[last], polygon[next < n ? next : 0]) <= tolerance;
    if (serves) continue;
    last = next - 1;
    kept.push_back(polygon[last]);
  }
  return kept.size() < 3 ? polygon : kept;
}

bool has_sharp(const Polygon& polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i)
    if (sharp(polygon[i], polygon[i + 1 < n ? i + 1 : i + 1 - n], polygon[i + 2 < n ? i + 2 : i + 2 - n])) return true;
  return false;
}

/// An outline's sides, so many under a box: quick to make, for few questions.
class SideBoxes {
 public:
  explicit SideBoxes(const Region& outline) {
    constexpr std::size_t most = 64;  // sides under a box
    for (const Polygon& polygon : outline)
      for (std::size_t first = 0; first < polygon.size(); first += most) {
        Stretch stretch{&polygon, first, std::min(first + most, polygon.size()), {}};
        for (std::size_t i = first; i <= stretch.last; ++i) stretch.box.add(polygon[i < polygon.size() ? i : 0]);
        stretches_.push_back(stretch);
      }
  }

  bool reaches(Point p, double reach) const {
    const Box box = Box{p, p}.grown(reach);
    return std::any_of(stretches_.begin(), stretches_.end(), [&](const Stretch& s) {
      if (!s.box.overlaps(box)) return false;
      for (std::size_t i = s.first; i < s.last; ++i) {
        const Point a = (*s.polygon)[i], way = (*s.polygon)[i + 1 < s.polygon->size() ? i + 1 : 0] - a;
        const double size = dot(way, way), part = size > 0 ? std::clamp(dot(p - a, way) / size, 0.0, 1.0) : 0;
        const Point off = p - a - part * way;
        if (dot(off, off) <= reach * reach) return true;
      }
      return false;
    });
  }

 private:
  struct Stretch {
    const Polygon* polygon;
    std::size_t first, last;
    Box box;
  };
  std::vector<Stretch> stretches_;
};

/// A point inside: the middle of the longest stretch that the level line through the middle of its box has in it.
Point inner_point(const Polygon& polygon) {
  const Box box = bounds(polygon);
  const double y = (box.low.y + box.high.y) / 2;
  std::vector<double> xs;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    if ((a.y <= y) != (b.y <= y)) xs.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
  }
  std::sort(xs.begin(), xs.end());
  double longest = -1;
  Point p = polygon.front();
  for (std::size_t i = 0; i + 1 < xs.size(); i += 2)
    if (xs[i + 1] - xs[i] > longest) longest = xs[i + 1] - xs[i], p = {(xs[i] + xs[i + 1]) / 2, y};
  return p;
}

/// Where many moved sides cross at small angles, Clipper's whole numbers leave slivers between them: sharp tips, and
/// specks of which the inside is nearer to the outline than it was moved.
Region without_slivers(Region moved, const Region& outline, double by) {
  std::optional<SideBoxes> sides;
  const auto true_tip = [&](Point p) {
    if (!sides) sides.emplace(outline);
    return !sides->reaches(p, by - sliver);
  };
  Region kept;
  for (Polygon& polygon : moved) {
    if (!has_sharp(polygon) && size(bounds(polygon)) > speck) {
      kept.push_back(std::move(polygon));
      continue;
    }
    const std::size_t n = polygon.size();
    Polygon own;
    own.reserve(n);
    for (std::size_t i = 0; i < n; ++i) {
      own.push_back(polygon[i]);
      while (own.size() > 2 && sharp(own[own.size() - 3], own[own.size() - 2], own.back()) &&
             !true_tip(own[own.size() - 2]))
        own.erase(own.end() - 2);
    }
    while (own.size() > 2 && sharp(own[own.size() - 2], own.back(), own.front()) && !true_tip(own.back()))
      own.pop_back();
    while (own.size() > 2 && sharp(own.back(), own.front(), own[1]) && !true_tip(own.front())) own.erase(own.begin());
    const bool tiny = size(bounds(own)) <= speck;
    if (own.size() < 3 || (tiny && !true_tip(inner_point(own)))) continue;
    kept.push_back(std::move(own));
  }
  return kept;
}

/// The least outer polygon about a hole; -1: none.
int round_about(const Polygon& hole, const std::vector<Region>& outer, const std::vector<Box>& boxes,
                const std::vector<double>& areas) {
  const Box box = bounds(hole);
  std::vector<int> about;
  for (int i = 0; i < static_cast<int>(outer.size()); ++i)
    if (boxes[i].low.x <= box.low.x && boxes[i].low.y <= box.low.y && boxes[i].high.x >= box.high.x &&
        boxes[i].high.y >= box.high.y)
      about.push_back(i);
  std::sort(about.begin(), about.end(), [&](int a, int b) { return areas[a] < areas[b]; });
  for (const int i : about) {
    if (i == about.back()) return i;
    // The hole may touch the outer polygon: most of three of its points decide.
    int inside = 0;
    for (const std::size_t k : {std::size_t{0}, hole.size() / 3, 2 * hole.size() / 3})
      inside += contains(outer[i].front(), hole[k]) ? 1 : 0;
    if (inside >= 2) return i;
  }
  return -1;
}

}  // namespace

double area(const Region& region) {
  double sum = 0;
  for (const Polygon& polygon : region) add_area(polygon, sum);
  return sum;
}

Box bounds(const Region& region) {
  Box box;
  for (const Polygon& polygon : region) add(polygon, box);
  return box;
}

Region offset(const Region& region, double by, const Cancel& cancel) {
  if (region.empty() || by == 0) return region;
  const std::vector<Neighbours> groups = neighbours(all_of(region), 2 * std::abs(by) + 0.001);
  Region result = gathered(static_cast<int>(groups.size()), points(region), [&](int g) {
    if (cancel.wanted()) return Region{};
    int about = 0;
    for (const int i : groups[g].about) about += area(region[i]) > 0 ? 1 : -1;
    ClipJob job;
    Box box;
    for (const int i : groups[g].members) {
      job.subject.push_back(moved_out(region[i], by));
      add(region[i], box);
    }
    if (about == 0) return fine_grid.polygons(tiled_boolean(job, cancel));
    const Frame frame(box.grown(std::abs(by)).grown(frame_margin), fine_grid);
    frame.add(about, job.subject);
    GridPaths paths = tiled_boolean(job, cancel);
    frame.take_off(paths);
    return fine_grid.polygons(paths);
  });
  return cancel.wanted() ? Region{} : thinned(without_slivers(std::move(result), region, std::abs(by)), offset_noise);
}

Region difference(const Region& a, const Region& b, const Cancel& cancel) {
  return clipped(a, b, SetOperation::without, cancel);
}
Region union_of(const Region& a, const Region& b, const Cancel& cancel) {
  return clipped(a, b, SetOperation::united, cancel);
}
Region intersection(const Region& a, const Region& b, const Cancel& cancel) {
  return clipped(a, b, SetOperation::common, cancel);
}

Region filled(const Region& polygons, const Cancel& cancel) {
  std::vector<Box> boxes;
  for (const Polygon& polygon : polygons) boxes.push_back(bounds(polygon));
  const std::vector<std::vector<int>> groups = clusters(boxes, 2 / fine_grid.per_mm);
  return gathered(static_cast<int>(groups.size()), points(polygons), [&](int g) {
    ClipJob job;
    for (const int i : groups[g]) job.subject.push_back(fine_grid.path(polygons[i]));
    return cancel.wanted() ? Region{} : fine_grid.polygons(tiled_boolean(job, cancel));
  });
}

std::vector<Region> parts(const Region& region) {
  std::vector<Region> found;
  std::vector<Box> boxes;
  std::vector<double> areas;
  for (const Polygon& polygon : region) {
    if (area(polygon) <= 0) continue;
    found.push_back({polygon});
    boxes.push_back(bounds(polygon));
    areas.push_back(area(polygon));
  }
  for (const Polygon& hole : region) {
    if (area(hole) >= 0) continue;
    const int own = round_about(hole, found, boxes, areas);
    if (own >= 0) found[own].push_back(hole);
  }
  return found;
}

Region thinned(const Region& region, double tolerance) {
  Region result;
  result.reserve(region.size());
  for (const Polygon& polygon : region) result.push_back(thinned(polygon, tolerance));
  return result;
}

bool contains(const Polygon& polygon, Point p) {
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    if ((a.y <= p.y) == (b.y <= p.y)) continue;
    if (a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x) inside = !inside;
  }
  return inside;
}

bool contains(const Region& region, Point p) {
  return std::count_if(region.begin(), region.end(), [&](const Polygon& polygon) { return contains(polygon, p); }) %
             2 ==
         1;
}

}  // namespace sagitta
