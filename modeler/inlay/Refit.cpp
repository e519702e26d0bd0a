#include "inlay/Refit.hpp"

#include <algorithm>

#include "inlay/Biarc.hpp"
#include "inlay/Narrowest.hpp"

namespace sagitta {
namespace {

constexpr double drawn_fine = 0.0015;  // mm; polygons for curves stray by less: what cuts off more is a line or a corner
constexpr double sharp = 0.6;          // radians; no curve's polygon turns as much at a point
constexpr double noise = 0.0001;       // mm; points nearer to a line than this say nothing
constexpr double same_way = 0.01;      // radians; how well an arc must keep the polygon's own direction
constexpr double look = 0.2;           // mm to both sides, over which a direction is taken
constexpr double least_look = 0.005;   // mm
constexpr double scatter = 0.0005;     // mm; of points about their curve
constexpr int most_neighbours = 24;
constexpr double most_lean = 0.92;     // cosine of what a curve may turn there
constexpr double most_turn = 2.5;      // radians, of an arc
constexpr double least_follow = 0.00005;  // mm

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
  LoopFit(Polygon polygon, double tolerance) : p_(std::move(polygon)), n_(static_cast<int>(p_.size())), tolerance_(tolerance) {
    classify();
  }

  Loop run() {
    if (const auto round = whole_circle(); !round.empty()) return round;
    int start = 0;
    for (int i = 0; i < n_; ++i)
      if (corner_[i] || straight_[i]) {
        start = i;
        break;
      }
    Loop loop;
    closing_ = start;
    for (int at = start; at < start + n_;) at = straight_[wrapped(at)] ? add_line(loop, at) : add_run(loop, at, start + n_);
    if (straight_[wrapped(start)] && !corner_[wrapped(start)]) loop.front() = line(loop.back().b, loop.front().b);
    merge_ends(loop);
    return loop;
  }

 private:
  int wrapped(int i) const { return ((i % n_) + n_) % n_; }
  Point at(int i) const { return p_[wrapped(i)]; }
  Point side(int i) const { return at(i + 1) - at(i); }

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
  bool smooth(int i) const {
    return !corner_[wrapped(i)] && !straight_[wrapped(i)] && !straight_[wrapped(i - 1)];
  }

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
      if (std::abs(cross(best, wide)) > scatter / nearer) break;
      best = wide;
      nearer = reach;
    }
    return best;
  }

  /// The polygon's direction at point i, where the curve goes on (`out`) or comes in.
  Point direction(int i, bool out) const {
    const int w = wrapped(i);
    if (straight_[w] && (out || !corner_[w])) return unit(side(i));
    if (straight_[wrapped(i - 1)] && (!out || !corner_[w])) return unit(side(i - 1));
    if (!corner_[w]) return tangent(i);
    const int step = out ? 1 : -1;
    const int far = neighbour(i, step, look), middle = i + (far - i) / 2;
    if (middle == i) return unit(side(out ? i : i - 1));
    // On the circle through three points the direction at the first is its mirror in the chord's.
    const Point chord = unit(at(middle) - at(i)), there = circle_tangent(at(i), at(middle), at(far));
    const Point mirrored_ = 2 * dot(there, chord) * chord - there;
    return out ? mirrored_ : -1.0 * mirrored_;
  }

  int add_line(Loop& loop, int i) {
    const bool slid = !loop.empty() && !corner_[wrapped(i)];
    loop.push_back(line(slid ? loop.back().b : at(i), at(i + 1)));
    way_ = corner_[wrapped(i + 1)] ? direction(i + 1, true) : unit(side(i));
    return i + 1;
  }

  bool follows(const std::vector<Piece>& chain, int from, int to) const {
    for (int i = from; i <= to; ++i) {
      if (i > from && i < to && off_chain(chain, at(i)) > tolerance_) return false;
      if (i < to && off_chain(chain, between(at(i), at(i + 1), 0.5)) > tolerance_) return false;
    }
    return true;
  }

  /// What leads up to point j in the given way; empty when it does not serve.
  using Chain = std::vector<Piece>;

  Chain checked(Chain chain, int i, int j) const {
    for (const Piece& piece : chain)
      if (piece.is_arc() && std::abs(piece.sweep) > most_turn) return {};
    return !chain.empty() && follows(chain, i, j) ? chain : Chain{};
  }

  /// A line in direction `along` through p, then an arc that reaches q in direction u: where the arc begins follows.
  static Chain line_and_arc(Point start, Point p, Point along, Point q, Point u) {
    const double turn = cross(along, u);
    if (std::abs(turn) < 1e-3 || dot(along, u) < -0.9) return {};
    const double s = cross(q - p, u) / turn, leg = cross(q - p, along) / turn;  // q - leg u = p + s along
    const Point joint = p + (s - leg) * along;
    if (leg <= 0 || dot(joint - start, along) <= 0) return {};
    return {line(start, joint), arc_along(joint, along, q)};
  }

  /// Between two straight sides: the arc that touches both. Its radius follows from how near it comes to their corner.
  Chain fillet(const Piece& before, int i, int j) const {
    const Point t = unit(side(i - 1)), u = unit(side(j));
    const double turn = cross(t, u);
    if (std::abs(turn) < 0.02 || dot(t, u) < -0.95) return {};
    const Point tip = at(i) + (cross(at(j) - at(i), u) / turn) * t;
    const Point inward = unit(u - t);
    double nearest = 1e300;
    for (int k = i; k < j; ++k) {
      const double s = cross(at(k) - tip, inward), e = cross(at(k + 1) - tip, inward);
      if (s * e <= 0 && s != e) nearest = std::min(nearest, dot(between(at(k), at(k + 1), s / (s - e)) - tip, inward));
    }
    const double half_sine = std::sqrt((1 - dot(t, u)) / 2), half_cosine = std::sqrt((1 + dot(t, u)) / 2);
    if (nearest > 1e200 || nearest <= 0) return {};
    const double radius = nearest * half_cosine / (1 - half_cosine), leg = radius * half_sine / half_cosine;
    const Point a = tip - leg * t, b = tip + leg * u;
    if (dot(a - before.a, t) <= 0 || dot(at(j + 1) - b, u) <= 0) return {};
    return {line(before.a, a), arc_along(a, t, b), line(b, at(j + 1))};
  }

  /// From point i, reached with `loop`, to point j. The chain replaces the last line where it begins with one.
  struct Span {
    Chain chain;
    bool slides = false;  ///< the chain begins with the line before
  };

  Span span(const Loop& loop, int i, int j, bool end_fixed, bool single) const {
    const Point there = direction(j, false), from = i == first_ ? start_ : at(i);
    const bool after_line = i == first_ && !loop.empty() && !loop.back().is_arc() && !corner_[wrapped(i)];
    if (single && after_line) {
      if (end_fixed) {
        Chain round = fillet(loop.back(), i, j);
        if (!round.empty()) {
          round.pop_back();
          round = checked(std::move(round), i, j);
          if (!round.empty()) return {round, true};
        }
      }
      Chain bent = checked(line_and_arc(loop.back().a, at(i), way_, at(j), there), i, j);
      if (!bent.empty()) return {bent, true};
    }
    if (single && end_fixed) {  // the same from the other end: the arc ends where it touches the line that follows
      const Point far = at(j + 1);
      Chain bent = line_and_arc(far, at(j), -1.0 * there, from, -1.0 * way_);
      if (!bent.empty()) {
        bent = checked({bent[1].reversed(), bent[0].reversed()}, i, j);
        if (!bent.empty()) return {{bent.front()}, false};
      }
    }
    if (single) {
      const Piece one = arc_along(from, way_, at(j));
      const Point reached = end_direction(one);
      const double keep = wrapped(j) == closing_ && !corner_[closing_] ? same_way / 100 : same_way;
      if (end_fixed || dot(reached, there) < 0 || std::abs(cross(reached, there)) > keep) return {};
      return {checked({one}, i, j), false};
    }
    return {checked(biarc(from, way_, at(j), there), i, j), false};
  }

  /// The furthest point that one span reaches from i, and the span.
  std::pair<int, Span> furthest(const Loop& loop, int i, int end, bool end_fixed, bool single) const {
    const auto reach = [&](int j) { return span(loop, i, j, end_fixed && j == end, single); };
    int good = i, bad = end + 1;
    Span best;
    for (int step = end - i; step > 0; step /= 2) {  // the whole run first: it often serves
      Span found = reach(i + step);
      if (!found.chain.empty()) {
        good = i + step;
        best = std::move(found);
        break;
      }
      bad = i + step;
    }
    while (bad - good > 1) {
      const int j = (good + bad) / 2;
      Span found = reach(j);
      if (found.chain.empty()) {
        bad = j;
      } else {
        good = j;
        best = std::move(found);
      }
    }
    return {good, best};
  }

  int add_run(Loop& loop, int i, int whole_end) {
    int end = i + 1;
    while (end < whole_end && !corner_[wrapped(end)] && !straight_[wrapped(end)]) ++end;
    const bool end_fixed = !corner_[wrapped(end)] && straight_[wrapped(end)];
    if (loop.empty() || corner_[wrapped(i)]) way_ = direction(i, true);
    first_ = i;
    start_ = loop.empty() || corner_[wrapped(i)] ? at(i) : loop.back().b;
    while (i < end) {
      auto [one_to, one] = furthest(loop, i, end, end_fixed, true);
      auto [two_to, two] = furthest(loop, i, end, end_fixed, false);
      const bool take_one = !one.chain.empty() && (two.chain.empty() || 2 * (one_to - i) >= two_to - i);
      Span& taken = take_one ? one : two;
      int to = take_one ? one_to : two_to;
      if (taken.chain.empty()) {
        taken.chain = checked(biarc(start_, way_, at(i + 1), direction(i + 1, false)), i, i + 1);
        if (taken.chain.empty()) taken.chain = {line(start_, at(i + 1))};
        to = i + 1;
      }
      if (taken.slides) loop.pop_back();
      loop.insert(loop.end(), taken.chain.begin(), taken.chain.end());
      i = to;
      way_ = end_direction(loop.back());
      first_ = i;
      start_ = loop.back().b;
    }
    return end;
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
    const bool ccw = area(Region{p_}) > 0;
    for (const Point p : p_)
      if (std::abs(distance(p, centre) - radius) > tolerance_ / 2) return {};
    const Loop round = circle(centre, radius);
    return ccw ? round : Loop{round[1].reversed(), round[0].reversed()};
  }

  /// Where the walk round a smooth outline began, the last piece may run on into the first.
  static void merge_ends(Loop& loop) {
    for (std::size_t i = 0; i + 1 < loop.size();) {
      Piece& a = loop[i];
      const Piece& b = loop[i + 1];
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
  double tolerance_;
  std::vector<char> corner_, straight_;
  Point way_{1, 0};  ///< in which the outline goes on
  int closing_ = 0;  ///< point where the walk round began
  int first_ = 0;    ///< point from which it goes on, at start_
  Point start_;
};

}  // namespace

Loops refitted(const Region& region, double tolerance) {
  const Region clean = thinned(region, noise);
  const double narrow = std::min(narrowest(clean, true, 4 * tolerance).width, narrowest(clean, false, 4 * tolerance).width);
  const double follow = std::max(least_follow, std::min(tolerance, narrow / 4));
  Loops loops;
  for (const Polygon& polygon : clean) {
    Polygon points = apart(polygon);
    if (points.size() >= 3) loops.push_back(LoopFit(std::move(points), follow).run());
  }
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
      Piece& piece = loop[i];
      const Point a = ends[i], b = ends[(i + 1) % n];
      piece = piece.is_arc() ? arc_between(piece.centre, piece.radius + (piece.sweep > 0 ? by : -by), a, b, piece.sweep > 0)
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
