#include "inlay/Region.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "inlay/Clusters.hpp"
#include "inlay/OutlineIndex.hpp"
#include "inlay/Sweep.hpp"

namespace sagitta {
namespace {

using namespace ClipperLib;

constexpr double units = 1e6;              // Clipper's whole numbers, per mm
constexpr double arc_tolerance = 0.00005;  // mm between an offset's arc and its chords: where a strip is nearly as wide
                                           // as the cutter, an opening shifts its end ten times as far
constexpr double sliver = 0.00005;     // mm; tips nearer to the outline than it was moved, by more than this, are none
constexpr double speck = 0.05;         // mm; and whole polygons up to this size
constexpr double one_point = 0.00002;  // mm; points of a moved path nearer to each other are one
constexpr double offset_noise = 0.00002;  // mm; points that an offset leaves within this of a line say nothing

cInt whole(double mm) { return static_cast<cInt>(mm * units + (mm < 0 ? -0.5 : 0.5)); }
IntPoint placed(Point p) { return {whole(p.x), whole(p.y)}; }

Path path_of(const Polygon& polygon) {
  Path path;
  path.reserve(polygon.size());
  for (const Point& p : polygon) path.push_back(placed(p));
  return path;
}

Polygon polygon_of(const Path& path) {
  Polygon polygon;
  polygon.reserve(path.size());
  for (const IntPoint& p : path)
    polygon.push_back({static_cast<double>(p.X) / units, static_cast<double>(p.Y) / units});
  return polygon;
}

/// Whether a polygon turns back at b by nearly a half turn.
bool sharp(Point a, Point b, Point c) {
  const Point in = a - b, out = c - b;
  const double along = dot(in, out);
  return along > 0 && along * along > 0.8 * dot(in, in) * dot(out, out);
}

void append(const Paths& paths, Region& region) {
  for (const Path& path : paths) region.push_back(polygon_of(path));
}

Box box_of(const Polygon& polygon) {
  Box box;
  for (const Point p : polygon) box.add(p);
  return box;
}

/// The larger side.
double size(const Box& box) { return std::max(box.high.x - box.low.x, box.high.y - box.low.y); }

/// Those of a and those of b that may have to do with each other, by their boxes: Clipper looks along a whole line of
/// the drawing at each step, so that few polygons at a time are quick.
Region clipped(const Region& a, const Region& b, ClipType how, const Cancel& cancel) {
  std::vector<Box> boxes;
  for (const Region* region : {&a, &b})
    for (const Polygon& polygon : *region) boxes.push_back(box_of(polygon));
  Region result;
  for (const std::vector<int>& cluster : clusters(boxes, 2 / units)) {
    const auto of_a = [&](int i) { return i < static_cast<int>(a.size()); };
    const auto polygon = [&](int i) -> const Polygon& { return of_a(i) ? a[i] : b[i - a.size()]; };
    const auto ours = std::count_if(cluster.begin(), cluster.end(), of_a);
    const bool alone = ours == 0 || ours == static_cast<std::ptrdiff_t>(cluster.size());
    if (alone) {
      if (how == ctUnion || (how == ctDifference && ours > 0))
        for (const int i : cluster) result.push_back(polygon(i));
      continue;
    }
    ClipJob job{{}, {}, how, pftNonZero};
    for (const int i : cluster) (of_a(i) ? job.subject : job.clip).push_back(path_of(polygon(i)));
    append(swept(job, cancel), result);
  }
  return result;
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
  Polygon kept{polygon.front()};
  std::size_t last = 0;
  for (std::size_t next = 2; next <= n; ++next) {
    bool serves = next - last < window;
    for (std::size_t i = last + 1; i < next && serves; ++i)
      serves = off_line(polygon[i], polygon[last], polygon[next % n]) <= tolerance;
    if (serves) continue;
    last = next - 1;
    kept.push_back(polygon[last]);
  }
  return kept.size() < 3 ? polygon : kept;
}

double square(Point a) { return dot(a, a); }

Polygon without_repeats(const Polygon& polygon) {
  constexpr double repeat = 2 / units;
  Polygon kept;
  kept.reserve(polygon.size());
  for (const Point p : polygon)
    if (kept.empty() || square(p - kept.back()) > repeat * repeat) kept.push_back(p);
  while (kept.size() > 1 && square(kept.front() - kept.back()) <= repeat * repeat) kept.pop_back();
  return kept;
}

/// A moved path as it grows. What an arc of the very radius that it is moved by shrinks to is one point of it.
class MovedPath {
 public:
  explicit MovedPath(std::size_t points) { path_.reserve(points); }
  void add(Point p) {
    const IntPoint own = placed(p);
    if (path_.empty() || !near(own, path_.back())) path_.push_back(own);
  }
  /// An arc about p from p + m to p + o.
  void add_round(Point p, Point m, Point o, double turn, double step) {
    const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step)));
    const double further = (1 - std::cos(turn / steps / 2)) / 2;
    add(p + m);
    for (int k = 1; k < steps; ++k) add(p + (1 + further) * turned(m, turn * k / steps));
    add(p + o);
  }
  Path closed() {
    while (path_.size() > 1 && near(path_.front(), path_.back())) path_.pop_back();
    return std::move(path_);
  }

 private:
  static bool near(const IntPoint& a, const IntPoint& b) {
    return std::max(std::abs(a.X - b.X), std::abs(a.Y - b.Y)) <= static_cast<cInt>(one_point * units);
  }
  Path path_;
};

/// The polygon with every side moved out by `by` and joined to the next: by an arc round an outer corner; where the two
/// sides meet at an inner one, or straight across where one is too short for that. Corners of what stands for an arc
/// are joined where the sides' lines meet, outer and inner ones. The path may wind about itself; what it winds about
/// counter-clockwise is the grown region.
Path moved_out(const Polygon& drawn, double by) {
  const Polygon polygon = without_repeats(drawn);
  const std::size_t n = polygon.size();
  if (n < 3) return {};
  // The arcs' points lie as far outside of them as their chords lie inside.
  const double radius = std::abs(by), step = 2 * std::acos(std::max(0.0, 1 - 2 * arc_tolerance / radius));
  const auto least_cosine = [&](double off) { return 2 / square({1 + off / radius, 0}) - 1; };
  // Greater turns of outer corners need an arc; greater ones of inner corners are none of an arc of about this radius.
  const double mitre = least_cosine(arc_tolerance), smooth = least_cosine(2 * arc_tolerance);
  // How often the path winds about a point is, about the outline's own, the outline's nearest places within reach less
  // its furthest ones between them: one at least for each stretch within reach, unless all of the outline is.
  const bool small = size(box_of(polygon)) <= 2 * radius;
  MovedPath path(2 * n);
  double before = std::sqrt(square(polygon[0] - polygon[n - 1]));
  Point d = (1 / before) * (polygon[0] - polygon[n - 1]);
  for (std::size_t i = 0; i < n; ++i) {
    const Point p = polygon[i], side = polygon[i + 1 < n ? i + 1 : 0] - p;
    const double after = std::sqrt(square(side));
    const Point e = (1 / after) * side;
    const Point m = -by * left_of(d), o = -by * left_of(e);
    const double sine = cross(d, e), cosine = dot(d, e);
    const bool outer = (sine > 0) == (by > 0);
    // At an inner corner the moved sides meet |by| tan(turn / 2) from their ends.
    const bool room = !outer && cosine > -0.98 && 2 * radius * std::abs(sine) <= std::min(before, after) * (1 + cosine);
    if (room || cosine >= (outer ? mitre : small ? 1 : smooth)) {
      path.add(p + (1 / (1 + cosine)) * (m + o));
    } else if (outer) {
      path.add_round(p, m, o, std::atan2(sine, cosine), step);
    } else {
      path.add(p + m);
      if (small) path.add(p);
      path.add(p + o);
    }
    d = e;
    before = after;
  }
  return path.closed();
}

/// Where many moved sides cross at small angles, Clipper's whole numbers leave slivers between them: specks and sharp
/// tips that are nearer to the outline than it was moved.
Region without_slivers(const Region& moved, const Region& outline, double by) {
  std::optional<OutlineIndex> index;
  const auto true_tip = [&](Point p) {
    if (!index) index.emplace(outline);
    return !index->reaches(p, by - sliver);
  };
  Region kept;
  for (const Polygon& polygon : moved) {
    Polygon own;
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
      own.push_back(polygon[i]);
      while (own.size() > 2 && sharp(own[own.size() - 3], own[own.size() - 2], own.back()) &&
             !true_tip(own[own.size() - 2]))
        own.erase(own.end() - 2);
    }
    while (own.size() > 2 && sharp(own[own.size() - 2], own.back(), own.front()) && !true_tip(own.back()))
      own.pop_back();
    while (own.size() > 2 && sharp(own.back(), own.front(), own[1]) && !true_tip(own.front())) own.erase(own.begin());
    const bool tiny = size(box_of(own)) <= speck;
    if (own.size() < 3 || (tiny && !std::all_of(own.begin(), own.end(), true_tip))) continue;
    kept.push_back(std::move(own));
  }
  return kept;
}

/// The least outer polygon about a hole; -1: none.
int round_about(const Polygon& hole, const std::vector<Region>& outer, const std::vector<Box>& boxes,
                const std::vector<double>& areas) {
  const Box box = box_of(hole);
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
      inside += contains({outer[i].front()}, hole[k]) ? 1 : 0;
    if (inside >= 2) return i;
  }
  return -1;
}

}  // namespace

double area(const Region& region) {
  double sum = 0;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i)
      sum += cross(polygon[i] - polygon[0], polygon[(i + 1) % polygon.size()] - polygon[0]) / 2;
  return sum;
}

Box bounds(const Region& region) {
  Box box;
  for (const Polygon& polygon : region)
    for (const Point p : polygon) box.add(p);
  return box;
}

Region grown(const Region& region, double by, const Cancel& cancel) {
  if (region.empty() || by == 0) return region;
  std::vector<Box> boxes;
  for (const Polygon& polygon : region) boxes.push_back(box_of(polygon));
  Region result;
  for (const std::vector<int>& cluster : clusters(boxes, 2 * std::max(by, 0.0) + 0.001)) {
    if (cancel.wanted()) return {};
    ClipJob job;
    for (const int i : cluster) job.subject.push_back(moved_out(region[i], by));
    append(swept(job, cancel), result);
  }
  return thinned(without_slivers(result, region, std::abs(by)), offset_noise);
}

Region without(const Region& a, const Region& b, const Cancel& cancel) { return clipped(a, b, ctDifference, cancel); }
Region united(const Region& a, const Region& b, const Cancel& cancel) { return clipped(a, b, ctUnion, cancel); }
Region common(const Region& a, const Region& b, const Cancel& cancel) { return clipped(a, b, ctIntersection, cancel); }

Region filled(const Region& polygons, const Cancel& cancel) {
  std::vector<Box> boxes;
  for (const Polygon& polygon : polygons) boxes.push_back(box_of(polygon));
  Region result;
  for (const std::vector<int>& cluster : clusters(boxes, 2 / units)) {
    if (cancel.wanted()) return {};
    ClipJob job;
    for (const int i : cluster) job.subject.push_back(path_of(polygons[i]));
    append(swept(job, cancel), result);
  }
  return result;
}

std::vector<Region> parts(const Region& region) {
  std::vector<Region> found;
  std::vector<Box> boxes;
  std::vector<double> areas;
  for (const Polygon& polygon : region) {
    if (area({polygon}) <= 0) continue;
    found.push_back({polygon});
    boxes.push_back(box_of(polygon));
    areas.push_back(area({polygon}));
  }
  for (const Polygon& hole : region) {
    if (area({hole}) >= 0) continue;
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

bool contains(const Region& region, Point p) {
  bool inside = false;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
      if ((a.y <= p.y) == (b.y <= p.y)) continue;
      if (a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x) inside = !inside;
    }
  return inside;
}

}  // namespace sagitta
