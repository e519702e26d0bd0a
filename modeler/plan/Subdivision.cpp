#include "plan/Subdivision.hpp"

#include <algorithm>
#include <map>
#include <span>

#include "plane/Tolerance.hpp"
#include "polygon/BoxIndex.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

/// The point of the half-edge's curve at (straight) distance s from its origin.
Point at_distance(const Subdivision& map, HalfEdge h, double s) {
  const PlanEdge& edge = map.edges[h >> 1];
  const Point from = map.vertices[map.origin(h)], to = map.vertices[map.target(h)];
  if (edge.crossing >= 0 && !map.crossings[edge.crossing].straight) {
    double low = 0, high = 1;
    for (int i = 0; i < 48; ++i) {
      const double mid = (low + high) / 2;
      (distance(from, map.crossings[edge.crossing].at(from, to, mid)) < s ? low : high) = mid;
    }
    return map.crossings[edge.crossing].at(from, to, high);
  }
  if (!edge.segment.is_arc()) return from + s * unit(to - from);
  const double turn = 2 * std::asin(std::min(1.0, s / (2 * edge.segment.radius)));
  const bool counter_clockwise = (edge.segment.sweep > 0) != ((h & 1) != 0);
  return edge.segment.centre + turned(from - edge.segment.centre, counter_clockwise ? turn : -turn);
}

double chord(const Subdivision& map, HalfEdge h) {
  return distance(map.vertices[map.origin(h)], map.vertices[map.target(h)]);
}

/// How far out the curves about a vertex are sorted first: a quarter of the shortest chord.
double sorting_distance(const Subdivision& map, std::span<const HalfEdge> star) {
  double s = 1e300;
  for (const HalfEdge h : star) {
    s = std::min(s, chord(map, h));
    s = std::min(s, distance(map.vertices[map.origin(h)], map.at(map.edges[h >> 1], 0.5)));
  }
  return s / 4;
}

struct Leaving {
  double angle = 0;
  HalfEdge h = -1;
};

/// Half-edges that leave a vertex nearer to each other than this may cross within the snap of it. radians
constexpr double side_by_side = 0.1;

/// Whether b leaves the common origin clockwise of a, judged where the two are furthest apart: rounding drops a second
/// meeting within the snap of a common end, so nearer to it the order may be the other way round.
bool leaves_clockwise_of(const Subdivision& map, HalfEdge b, HalfEdge a) {
  const Point v = map.vertices[map.origin(a)];
  const double reach = std::min(chord(map, a), chord(map, b));
  double widest = 0;
  for (const double part : {0.25, 0.5, 1.0}) {
    const double apart = cross(at_distance(map, a, part * reach) - v, at_distance(map, b, part * reach) - v) / part;
    if (std::abs(apart) > std::abs(widest)) widest = apart;
  }
  return widest < 0;
}

/// Sorts a star counter-clockwise. It begins after its widest gap, so that no neighbours stand at its two ends.
void sort_star(const Subdivision& map, std::vector<Leaving>& star) {
  std::sort(star.begin(), star.end(),
            [](const Leaving& a, const Leaving& b) { return std::pair(a.angle, a.h) < std::pair(b.angle, b.h); });
  std::size_t first = 0;
  double widest = star.front().angle + 2 * pi - star.back().angle;
  for (std::size_t i = 1; i < star.size(); ++i)
    if (const double gap = star[i].angle - star[i - 1].angle; gap > widest) widest = gap, first = i;
  for (std::size_t i = 0; i < first; ++i) star[i].angle += 2 * pi;
  std::rotate(star.begin(), star.begin() + static_cast<std::ptrdiff_t>(first), star.end());
  for (std::size_t i = 1; i < star.size(); ++i)
    for (std::size_t k = i; k > 0 && std::abs(star[k].angle - star[k - 1].angle) < side_by_side; --k) {
      if (!leaves_clockwise_of(map, star[k].h, star[k - 1].h)) break;
      std::swap(star[k], star[k - 1]);
    }
}

/// The half-edges that leave each vertex.
class Stars {
 public:
  explicit Stars(const Subdivision& map) : begin_(map.vertices.size() + 1), all_(2 * map.edges.size()) {
    const int count = static_cast<int>(all_.size());
    for (HalfEdge h = 0; h < count; ++h) ++begin_[map.origin(h) + 1];
    for (std::size_t v = 1; v < begin_.size(); ++v) begin_[v] += begin_[v - 1];
    std::vector<std::size_t> next(begin_.begin(), begin_.end() - 1);
    for (HalfEdge h = 0; h < count; ++h) all_[next[map.origin(h)]++] = h;
  }

  std::span<const HalfEdge> of(std::size_t v) const {
    return std::span(all_).subspan(begin_[v], begin_[v + 1] - begin_[v]);
  }

 private:
  std::vector<std::size_t> begin_;
  std::vector<HalfEdge> all_;
};

void order_about_vertices(Subdivision& map) {
  const Stars stars(map);
  map.next_around_vertex.assign(2 * map.edges.size(), -1);
  std::vector<Leaving> star;
  for (std::size_t v = 0; v < map.vertices.size(); ++v) {
    if (stars.of(v).empty()) continue;
    const double s = sorting_distance(map, stars.of(v));
    star.clear();
    for (const HalfEdge h : stars.of(v)) {
      const Point d = at_distance(map, h, s) - map.vertices[v];
      star.push_back({std::atan2(d.y, d.x), h});
    }
    sort_star(map, star);
    for (std::size_t i = 0; i < star.size(); ++i) map.next_around_vertex[star[i].h] = star[(i + 1) % star.size()].h;
  }
  map.next.assign(2 * map.edges.size(), -1);
  for (HalfEdge h = 0; h < static_cast<int>(map.next_around_vertex.size()); ++h)
    map.next[map.next_around_vertex[h] ^ 1] = h;
}

/// Signed area under one half-edge (x dy - y dx over two), exact for lines and arcs, sampled for intersection curves.
double swept_area(const Subdivision& map, HalfEdge h) {
  const PlanEdge& edge = map.edges[h >> 1];
  const double sign = h & 1 ? -1 : 1;
  const Point a = map.vertices[edge.from], b = map.vertices[edge.to];
  double twice = cross(a, b);
  if (edge.segment.is_arc()) {
    const double r = edge.segment.radius, w = edge.segment.sweep;
    twice += r * r * (w - std::sin(w));
  } else if (edge.crossing >= 0) {
    twice = 0;
    Point last = a;
    for (int i = 1; i <= 32; ++i) {
      const Point p = map.at(edge, i / 32.0);
      twice += cross(last, p);
      last = p;
    }
  }
  return sign * twice / 2;
}

/// Number of times a ray from p straight up crosses the monotone curve from a to b whose height at p.x is y.
int crossed(Point p, Point a, Point b, double y) {
  if ((a.x <= p.x) == (b.x <= p.x)) return 0;
  return y > p.y ? (b.x < a.x ? 1 : -1) : 0;
}

int crossed_by_arc(const CurveSegment& arc, Point p) {
  int count = 0;
  double t = 0;
  Point last = arc.a;
  const double step = pi / std::abs(arc.sweep);
  double to_wall = arc.start / pi;  // in half turns; the arc is cut where it stands upright
  to_wall = arc.sweep > 0 ? std::ceil(to_wall + tolerance::share) - to_wall
                          : to_wall - std::floor(to_wall - tolerance::share);
  for (double cut = to_wall * step;; cut += step) {
    const double end = std::min(cut, 1.0);
    const Point here = end < 1 ? arc.at(end) : arc.b;
    const double lift =
        std::sqrt(std::max(0.0, (arc.radius - (p.x - arc.centre.x)) * (arc.radius + (p.x - arc.centre.x))));
    const bool upper = std::sin(arc.start + arc.sweep * (t + end) / 2) > 0;
    count += crossed(p, last, here, arc.centre.y + (upper ? lift : -lift));
    if (end >= 1) return count;
    t = end;
    last = here;
  }
}

int crossed_by_edge(const Subdivision& map, HalfEdge h, Point p) {
  const PlanEdge& edge = map.edges[h >> 1];
  const int sign = h & 1 ? -1 : 1;
  if (edge.segment.is_arc()) return sign * crossed_by_arc(edge.segment, p);
  const Point a = map.vertices[edge.from], b = map.vertices[edge.to];
  if ((a.x <= p.x) == (b.x <= p.x)) return 0;
  const bool bent = edge.crossing >= 0 && !map.crossings[edge.crossing].straight;
  const double y = bent ? map.crossings[edge.crossing].y(a, b, p.x) : a.y + (p.x - a.x) / (b.x - a.x) * (b.y - a.y);
  return sign * crossed(p, a, b, y);
}

struct TracedLoop {
  HalfEdge start = -1;
  double area = 0;
  int component = -1;
  Box box;
};

/// Which vertices are connected by edges.
DisjointSets components_of(const Subdivision& map) {
  DisjointSets components(map.vertices.size());
  for (const PlanEdge& edge : map.edges) components.join(edge.from, edge.to);
  return components;
}

std::vector<TracedLoop> trace_loops(const Subdivision& map, std::vector<int>& loop_of) {
  DisjointSets components = components_of(map);
  std::vector<TracedLoop> loops;
  loop_of.assign(map.next.size(), -1);
  for (HalfEdge start = 0; start < static_cast<int>(map.next.size()); ++start) {
    if (loop_of[start] >= 0) continue;
    TracedLoop loop{start, 0, components.of(map.origin(start)), {}};
    HalfEdge h = start;
    do {
      loop_of[h] = static_cast<int>(loops.size());
      loop.area += swept_area(map, h);
      loop.box.add(map.vertices[map.origin(h)]);
      loop.box.add(map.at(map.edges[h >> 1], 0.5));
      h = map.next[h];
    } while (h != start);
    loops.push_back(loop);
  }
  return loops;
}

/// The edges of a map, made ready for rays that go straight up.
class Rays {
 public:
  explicit Rays(const Subdivision& map) : map_(map) {
    std::vector<Box> boxes;
    for (const PlanEdge& edge : map.edges) boxes.push_back(box_of(edge));
    index_ = BoxIndex(boxes);
  }

  /// The edges that a ray from p straight up may cross.
  std::vector<int> from(Point p) const { return index_.near({p, {p.x, far}}, tolerance::vertex); }

 private:
  static constexpr double far = 1e300;

  Box box_of(const PlanEdge& edge) const {
    const bool bent = edge.crossing >= 0 && !map_.crossings[edge.crossing].straight;
    if (edge.segment.is_arc()) return bounds(edge.segment);
    Box box;
    box.add(map_.vertices[edge.from]);
    box.add(map_.vertices[edge.to]);
    if (bent) box.low.y = -far, box.high.y = far;  // it may rise above both of its ends
    return box;
  }

  const Subdivision& map_;
  BoxIndex index_;
};

/// The smallest loop of another component around the given one; -1 when it lies in the open.
int enclosing(const Subdivision& map, const Rays& rays, const std::vector<TracedLoop>& loops,
              const std::vector<int>& loop_of, const TracedLoop& inner) {
  const Point p = map.vertices[map.origin(inner.start)];
  std::map<int, int> turns;  // of each loop about p
  for (const int e : rays.from(p)) {
    const int crossed = crossed_by_edge(map, 2 * e, p);
    turns[loop_of[2 * e]] += crossed;
    turns[loop_of[2 * e + 1]] -= crossed;
  }
  int best = -1;
  for (const auto& [i, count] : turns) {
    if (count == 0 || loops[i].area <= 0 || loops[i].component == inner.component) continue;
    if (best < 0 || loops[i].area < loops[best].area) best = i;
  }
  return best;
}

}  // namespace

Point Subdivision::at(const PlanEdge& edge, double t) const {
  const Point a = vertices[edge.from], b = vertices[edge.to];
  if (edge.crossing >= 0) return crossings[edge.crossing].at(a, b, t);
  return edge.segment.is_arc() ? edge.segment.at(t) : between(a, b, t);
}

bool Subdivision::winds_about(const std::vector<HalfEdge>& border, Point p) const {
  int count = 0;
  for (const HalfEdge h : border) count += crossed_by_edge(*this, h, p);
  return count != 0;
}

void Subdivision::build_faces() {
  order_about_vertices(*this);
  std::vector<int> loop_of;
  const std::vector<TracedLoop> loops = trace_loops(*this, loop_of);
  const Rays rays(*this);
  std::vector<int> face_of(loops.size(), 0);
  faces.assign(1, {});
  for (std::size_t i = 0; i < loops.size(); ++i)
    if (loops[i].area > 0) {
      face_of[i] = static_cast<int>(faces.size());
      faces.push_back({{loops[i].start}});
    }
  for (std::size_t i = 0; i < loops.size(); ++i)
    if (loops[i].area <= 0) {
      const int around = enclosing(*this, rays, loops, loop_of, loops[i]);
      face_of[i] = around < 0 ? 0 : face_of[around];
      faces[face_of[i]].loops.push_back(loops[i].start);
    }
  for (std::size_t e = 0; e < edges.size(); ++e) {
    edges[e].left = face_of[loop_of[2 * e]];
    edges[e].right = face_of[loop_of[2 * e + 1]];
  }
}

}  // namespace sagitta
