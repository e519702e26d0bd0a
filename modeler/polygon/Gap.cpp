#include "polygon/Gap.hpp"

#include <algorithm>

#include "polygon/BoxIndex.hpp"

namespace sagitta {
namespace {

constexpr double full_turn = 2 * std::numbers::pi;

/// Whether the arc passes through the direction from its centre.
bool faces(const CurveSegment& arc, Point direction) {
  const double angle = std::atan2(direction.y, direction.x);
  double ahead = std::fmod(arc.sweep > 0 ? angle - arc.start : arc.start - angle, full_turn);
  if (ahead < 0) ahead += full_turn;
  return ahead <= std::abs(arc.sweep);
}

void take(Gap& best, Point a, Point b) {
  if (const double width = distance(a, b); width < best.width) best = {width, a, b};
}

Point foot(const CurveSegment& line, Point p) {
  const Point along = line.b - line.a;
  const double square = dot(along, along);
  return square == 0 ? line.a : between(line.a, line.b, std::clamp(dot(p - line.a, along) / square, 0.0, 1.0));
}

/// The nearest point of a piece.
Point nearest(const CurveSegment& segment, Point p) {
  if (!segment.is_arc()) return foot(segment, p);
  const Point out = p - segment.centre;
  if (length(out) > 0 && faces(segment, out)) return segment.centre + segment.radius * unit(out);
  return distance(p, segment.a) < distance(p, segment.b) ? segment.a : segment.b;
}

void take_ends(Gap& best, const CurveSegment& a, const CurveSegment& b) {
  for (const Point p : {a.a, a.b}) take(best, p, nearest(b, p));
  for (const Point p : {b.a, b.b}) take(best, nearest(a, p), p);
}

void cross_lines(Gap& best, const CurveSegment& a, const CurveSegment& b) {
  const Point u = a.b - a.a, v = b.b - b.a, w = b.a - a.a;
  const double turn = cross(u, v);
  if (turn == 0) return;
  const double s = cross(w, v) / turn, t = cross(w, u) / turn;
  if (s < 0 || s > 1 || t < 0 || t > 1) return;
  const Point p = between(a.a, a.b, s);
  best = {0, p, p};
}

/// Where a line crosses an arc, or is parallel to it at its nearest.
void line_to_arc(Gap& best, const CurveSegment& line, const CurveSegment& arc) {
  const double whole = distance(line.a, line.b);
  if (whole == 0) return;
  const Point along = unit(line.b - line.a);
  const double middle = dot(arc.centre - line.a, along);
  const Point square = line.a + middle * along;
  const double off = distance(square, arc.centre), inside = arc.radius * arc.radius - off * off;
  const auto look = [&](double at) {
    const Point p = line.a + at * along;
    if (at >= 0 && at <= whole && faces(arc, p - arc.centre))
      take(best, p, arc.centre + arc.radius * unit(p - arc.centre));
  };
  if (inside < 0) return look(middle);
  const double half = std::sqrt(inside);
  for (const double at : {middle - half, middle + half}) {
    const Point p = line.a + at * along;
    if (at >= 0 && at <= whole && faces(arc, p - arc.centre)) best = {0, p, p};
  }
}

/// Where two arcs cross, or have one normal.
void arc_to_arc(Gap& best, const CurveSegment& a, const CurveSegment& b) {
  const double apart = distance(a.centre, b.centre);
  if (apart == 0) return;  // an end of one of them is nearest, as every point between is
  const Point u = unit(b.centre - a.centre);
  const double along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const double square = a.radius * a.radius - along * along;
  if (square >= 0)
    for (const double side : {1.0, -1.0}) {
      const Point p = a.centre + along * u + side * std::sqrt(square) * left_of(u);
      if (faces(a, p - a.centre) && faces(b, p - b.centre)) best = {0, p, p};
    }
  for (const double i : {1.0, -1.0})
    for (const double k : {1.0, -1.0})
      if (faces(a, i * u) && faces(b, k * u)) take(best, a.centre + (i * a.radius) * u, b.centre + (k * b.radius) * u);
}

Gap turned_round(const Gap& gap) { return {gap.width, gap.b, gap.a}; }

std::vector<CurveSegment> all_of(const std::vector<Loop>& loops) {
  std::vector<CurveSegment> all;
  for (const Loop& loop : loops) all.insert(all.end(), loop.begin(), loop.end());
  return all;
}

}  // namespace

Gap gap(const CurveSegment& a, const CurveSegment& b) {
  if (a.is_arc() && !b.is_arc()) return turned_round(gap(b, a));
  Gap best;
  take_ends(best, a, b);
  if (!b.is_arc()) {
    cross_lines(best, a, b);
  } else if (a.is_arc()) {
    arc_to_arc(best, a, b);
  } else {
    line_to_arc(best, a, b);
  }
  return best;
}

Gap gap(const std::vector<Loop>& a, const std::vector<Loop>& b, double most) {
  const std::vector<CurveSegment> of_a = all_of(a), of_b = all_of(b);
  std::vector<Box> boxes;
  for (const CurveSegment& segment : of_b) boxes.push_back(bounds(segment));
  const BoxIndex index(boxes);
  Gap best;
  for (const CurveSegment& segment : of_a) {
    const Box box = bounds(segment);
    for (const int i : index.near(box, std::min(most, best.width))) {
      const Gap own = gap(segment, of_b[static_cast<std::size_t>(i)]);
      if (own.width < best.width) best = own;
    }
    if (best.width == 0) break;
  }
  return best;
}

Reach reach(const std::vector<Loop>& loops, Point n) {
  Reach found;
  const auto look = [&](double so_far, Point p) {
    if (so_far < found.low) found.low = so_far, found.low_at = p;
    if (so_far > found.high) found.high = so_far, found.high_at = p;
  };
  for (const Loop& loop : loops)
    for (const CurveSegment& segment : loop) {
      look(dot(n, segment.a), segment.a);
      if (!segment.is_arc()) continue;
      for (const double side : {1.0, -1.0})
        if (faces(segment, side * n))
          look(dot(n, segment.centre) + side * segment.radius, segment.centre + (side * segment.radius) * n);
    }
  return found;
}

bool holds(const std::vector<Loop>& loops, Point p) {
  int turns = 0;
  for (const Loop& loop : loops) turns += winding(loop, p);
  return turns > 0;
}

}  // namespace sagitta
