#include "inlay/ArcSplineFit.hpp"

#include <algorithm>

#include "inlay/Biarc.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/RolledArcSpline.hpp"
#include "plane/ParallelFor.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/PolygonFigures.hpp"

namespace sagitta {
namespace {

/// Polygons for curves stray by less: what cuts off more is a line or a corner. mm.
constexpr double drawn_fine = 3 * tolerance::flattening;
constexpr double sharp = 0.6;         // radians; no curve's polygon turns as much at a point
constexpr double noise = 0.0001;      // mm; points nearer to a line than this say nothing
constexpr double look = 0.2;          // mm to both sides, over which a direction is taken
constexpr double least_look = 0.005;  // mm
constexpr int most_neighbours = 24;
constexpr double most_lean = 0.92;  // cosine of what a curve may turn there
constexpr double station = 0.03;    // mm between points that arcs are held to: no arc can bulge between them
constexpr int most_stations = 64;   // on one side of the polygon

Polygon apart(const Polygon& polygon) {
  Polygon kept;
  for (const Point p : polygon)
    if (kept.empty() || distance(p, kept.back()) > 5 * noise) kept.push_back(p);
  while (kept.size() > 1 && distance(kept.front(), kept.back()) <= 5 * noise) kept.pop_back();
  return kept;
}

/// Tangent at b of the circle through a, b and c.
Point circle_tangent(Point a, Point b, Point c) {
  const Point u = b - a, v = c - b;
  const double p = length(u), q = length(v);
  return unit((q / p) * u + (p / q) * v);
}

class LoopFit {
 public:
  /// Each side of the polygon is followed as closely as `follow` says.
  LoopFit(Polygon polygon, std::vector<double> follow, double least_radius, double least_hollow)
      : p_(std::move(polygon)),
        n_(static_cast<int>(p_.size())),
        follow_(std::move(follow)),
        least_radius_(least_radius),
        least_hollow_(least_hollow) {
    classify();
  }

  Loop run() {
    if (auto round = whole_circle(); !round.empty()) return round;
    const int start = first_break();
    if (start < 0) return closed_run();
    std::vector<Stretch> stretches;
    for (int at = start; at < start + n_;) {
      Stretch stretch{at, straight_[wrapped(at)] != 0, {}};
      if (stretch.straight) {
        ++at;
      } else {
        const int from = at;
        for (++at; at < start + n_ && !corner_[wrapped(at)] && !straight_[wrapped(at)];) ++at;
        stretch.chain = fit_rolled_arc_spline(smooth_run(from, at));
      }
      stretches.push_back(std::move(stretch));
    }
    Loop loop = joined(stretches);
    merge_lines(loop);
    return loop;
  }

 private:
  int wrapped(int i) const { return ((i % n_) + n_) % n_; }
  Point at(int i) const { return p_[wrapped(i)]; }
  Point side(int i) const { return at(i + 1) - at(i); }
  double follow(int i) const { return follow_[wrapped(i)]; }

  void classify() {
    std::vector<double> turn(n_), size(n_);
    for (int i = 0; i < n_; ++i) {
      size[i] = length(side(i));
      turn[i] = std::abs(std::atan2(cross(side(i - 1), side(i)), dot(side(i - 1), side(i))));
    }
    corner_.resize(n_);
    straight_.resize(n_);
    for (int i = 0; i < n_; ++i) {
      const double cut_off = std::min(size[wrapped(i - 1)], size[i]) * turn[i] / 8;
      corner_[i] = turn[i] > sharp || cut_off > drawn_fine;
      straight_[i] = size[i] * std::max(turn[i], turn[wrapped(i + 1)]) / 8 > drawn_fine;
    }
  }

  /// Points that take part in a run: no corner, and no straight side next to it.
  bool smooth(int i) const { return !corner_[wrapped(i)] && !straight_[wrapped(i)] && !straight_[wrapped(i - 1)]; }

  /// The furthest point from i that still belongs to its curve: within `window` and `most_lean` of it.
  int neighbour(int i, int step, double window) const {
    int far = i + step;
    while (smooth(far) && distance(at(i), at(far)) < window && std::abs(far - i) < most_neighbours) {
      const Point first = at(i + step) - at(i), last = at(far + step) - at(far);
      if (dot(first, last) < most_lean * length(first) * length(last)) break;
      far += step;
    }
    return far;
  }

  /// Direction of the circle through i and its neighbours on both sides: as far off as the bend allows, so that the
  /// points' scatter counts for little.
  Point tangent(int i) const {
    Point best = circle_tangent(at(i - 1), at(i), at(i + 1));
    double nearer = least_look;
    for (double window = 2 * least_look; window <= look; window *= 2) {
      const int before = neighbour(i, -1, window), after = neighbour(i, 1, window);
      const double reach = std::min(distance(at(before), at(i)), distance(at(i), at(after)));
      if (reach < nearer) break;
      const Point wide = circle_tangent(at(neighbour(i, -1, reach)), at(i), at(neighbour(i, 1, reach)));
      if (std::abs(cross(best, wide)) > tolerance::flattening / nearer) break;
      best = wide;
      nearer = reach;
    }
    return best;
  }

  /// A corner, or where a straight side begins; -1: the outline is smooth all round.
  int first_break() const {
    for (int i = 0; i < n_; ++i)
      if (corner_[i] || straight_[i]) return i;
    return -1;
  }

  SmoothRun run_of(int from, int to) const {
    SmoothRun run;
    run.least_left = least_radius_;
    run.least_right = least_hollow_;
    for (int i = from; i < to; ++i) {
      const int n = std::clamp(static_cast<int>(length(side(i)) / station), 2, most_stations);
      for (int k = 0; k < n; ++k) run.stations.push_back(between(at(i), at(i + 1), 1.0 * k / n));
      run.follow.insert(run.follow.end(), n, std::min({follow(i - 1), follow(i), follow(i + 1)}));
    }
    run.stations.push_back(at(to));
    run.follow.push_back(std::min(follow(to - 1), follow(to)));
    return run;
  }

  SmoothRun smooth_run(int from, int to) const {
    SmoothRun run = run_of(from, to);
    if (straight_[wrapped(from - 1)] && !corner_[wrapped(from)]) {
      run.way_in = unit(side(from - 1));
      run.slack_in = 0.45 * length(side(from - 1));
    }
    if (straight_[wrapped(to)] && !corner_[wrapped(to)]) {
      run.way_out = unit(side(to));
      run.slack_out = 0.45 * length(side(to));
    }
    return run;
  }

  /// Smooth all round: it must close with one tangent, which some places allow better than others.
  Loop closed_run() const {
    Loop best;
    double least = 1e300;
    for (const int start : {0, n_ / 3, 2 * n_ / 3, n_ / 2}) {
      SmoothRun run = run_of(start, start + n_);
      run.way_in = run.way_out = tangent(start);
      Loop loop = fit_rolled_arc_spline(run);
      const double kink = sharpest(loop);
      if (kink < least) least = kink, best = std::move(loop);
      if (least < tolerance::one_tangent) break;
    }
    return best;
  }

  /// The greatest turn between two pieces. Radians.
  static double sharpest(const Loop& loop) {
    double most = 0;
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Point in = end_direction(loop[i]), out = unit(loop[i + 1 < loop.size() ? i + 1 : 0].slope(0));
      most = std::max(most, std::abs(std::atan2(cross(in, out), dot(in, out))));
    }
    return most;
  }

  struct Stretch {
    int from = 0;
    bool straight = false;
    std::vector<CurveSegment> chain;  ///< of a smooth one
  };

  /// Straight sides reach from the arcs before to those after.
  Loop joined(const std::vector<Stretch>& stretches) const {
    Loop loop;
    const std::size_t n = stretches.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Stretch &own = stretches[i], &before = stretches[i > 0 ? i - 1 : n - 1],
                    &after = stretches[i + 1 < n ? i + 1 : 0];
      if (own.straight) {
        loop.push_back(line(before.chain.empty() ? at(own.from) : before.chain.back().b,
                            after.chain.empty() ? at(own.from + 1) : after.chain.front().a));
      } else {
        loop.insert(loop.end(), own.chain.begin(), own.chain.end());
      }
    }
    return loop;
  }

  /// All points on one circle: two half circles.
  Loop whole_circle() const {
    if (n_ < 8) return {};
    Point sum{0, 0};
    double size = 0;
    for (int i = 0; i < n_; ++i) {
      const double part = length(side(i));
      sum = sum + part * between(at(i), at(i + 1), 0.5);
      size += part;
    }
    const Point centre = (1 / size) * sum;
    double radius = 0;
    for (const Point p : p_) radius += distance(p, centre) / n_;
    const bool ccw = area(p_) > 0;
    const double closest = *std::min_element(follow_.begin(), follow_.end());
    for (const Point p : p_)
      if (std::abs(distance(p, centre) - radius) > closest / 2) return {};
    const Loop round = circle(centre, radius);
    return ccw ? round : Loop{round[1].reversed(), round[0].reversed()};
  }

  /// Lines of one direction are one line.
  static void merge_lines(Loop& loop) {
    for (std::size_t i = 0; i + 1 < loop.size();) {
      CurveSegment& a = loop[i];
      const CurveSegment& b = loop[i + 1];
      const bool lines = !a.is_arc() && !b.is_arc() && std::abs(cross(unit(a.b - a.a), b.b - b.a)) < noise / 10 &&
                         dot(a.b - a.a, b.b - b.a) > 0;
      if (!lines) {
        ++i;
        continue;
      }
      a = line(a.a, b.b);
      loop.erase(loop.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    }
  }

  Polygon p_;
  int n_;
  std::vector<double> follow_;
  double least_radius_, least_hollow_;
  std::vector<char> corner_, straight_;
};

}  // namespace

Loops fit_arc_splines(const Region& region, double stray, double least_radius, double least_hollow) {
  Region clean;
  for (const Polygon& polygon : thinned(region, noise))
    if (Polygon points = apart(polygon); std::abs(area(points)) > tolerance::crumb) clean.push_back(std::move(points));
  auto follow = widths(clean, true, 4 * stray), outside = widths(clean, false, 4 * stray);
  Loops loops(clean.size());
  std::size_t points = 0;
  for (const Polygon& polygon : clean) points += polygon.size();
  parallel_for(static_cast<int>(clean.size()), points, [&](int i) {
    for (std::size_t k = 0; k < follow[i].size(); ++k)
      follow[i][k] = std::max(tolerance::least_follow, std::min({stray, follow[i][k] / 4, outside[i][k] / 4}));
    loops[i] = LoopFit(std::move(clean[i]), std::move(follow[i]), least_radius, least_hollow).run();
  });
  return loops;
}

Loops nudged(const Loops& loops, double by) {
  Loops result = loops;
  for (Loop& loop : result) {
    const std::size_t n = loop.size();
    std::vector<Point> ends(n);  // of the moved pieces' starts
    for (std::size_t i = 0; i < n; ++i) {
      const Point in = end_direction(loop[(i + n - 1) % n]), out = unit(loop[i].slope(0));
      const Point right = unit(-1.0 * left_of(in) - left_of(out));
      ends[i] = loop[i].a + (by / std::max(0.2, -dot(right, left_of(out)))) * right;
    }
    for (std::size_t i = 0; i < n; ++i) {
      CurveSegment& segment = loop[i];
      const Point a = ends[i], b = ends[(i + 1) % n];
      segment = segment.is_arc() ? arc_between(segment.centre, segment.radius + (segment.sweep > 0 ? by : -by), a, b,
                                               segment.sweep > 0)
                                 : line(a, b);
    }
  }
  return result;
}

double area(const Loops& loops) {
  double sum = 0;
  for (const Loop& loop : loops) sum += area(loop);
  return sum;
}

Box bounds(const Loops& loops) {
  Box box;
  for (const Loop& loop : loops) {
    const Box own = bounds(loop);
    box.add(own.low);
    box.add(own.high);
  }
  return box;
}

}  // namespace sagitta
