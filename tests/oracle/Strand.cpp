#include "oracle/Strand.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sagitta::oracle {
namespace {

constexpr double pi = std::numbers::pi;

Strand straight(Point a, Point b) {
  if (a.x > b.x) std::swap(a, b);
  return {a.x, b.x, a, b, {}, 0, 1};
}

Strand half(const CurveSegment& segment, Point a, Point b, double middle_angle) {
  if (a.x > b.x) std::swap(a, b);
  return {a.x, b.x, a, b, segment.centre, segment.radius, std::sin(middle_angle) >= 0 ? 1.0 : -1.0};
}

/// Cut at every angle k pi, where the circle runs upright.
void add_arc(const CurveSegment& segment, std::vector<Strand>& out) {
  const double low = std::min(segment.start, segment.start + segment.sweep);
  const double high = std::max(segment.start, segment.start + segment.sweep);
  const Point low_end = segment.sweep >= 0 ? segment.a : segment.b,
              high_end = segment.sweep >= 0 ? segment.b : segment.a;
  double from = low;
  Point at = low_end;
  for (double k = std::floor(low / pi) + 1; k * pi < high; ++k) {
    const Point extreme{segment.centre.x + (std::llround(k) % 2 == 0 ? 1 : -1) * segment.radius, segment.centre.y};
    out.push_back(half(segment, at, extreme, 0.5 * (from + k * pi)));
    from = k * pi;
    at = extreme;
  }
  out.push_back(half(segment, at, high_end, 0.5 * (from + high)));
}

void add_within(const Strand& s, const Strand& t, double x, std::vector<double>& xs) {
  if (std::isfinite(x) && x > std::max(s.x0, t.x0) && x < std::min(s.x1, t.x1)) xs.push_back(x);
}

void line_with_line(const Strand& s, const Strand& t, std::vector<double>& xs) {
  const Point d = s.b - s.a, e = t.b - t.a;
  const double across = cross(d, e);
  if (across != 0) add_within(s, t, s.a.x + d.x * cross(t.a - s.a, e) / across, xs);
}

void line_with_circle(const Strand& line, const Strand& round, std::vector<double>& xs) {
  const Point d = unit(line.b - line.a);
  const double along = dot(round.centre - line.a, d), off = cross(d, round.centre - line.a);
  const double square = round.radius * round.radius - off * off;
  const double half_chord = std::sqrt(std::max(0.0, square));
  for (const double sign : {-1.0, 1.0}) add_within(line, round, line.a.x + (along + sign * half_chord) * d.x, xs);
}

void circle_with_circle(const Strand& s, const Strand& t, std::vector<double>& xs) {
  const double gap = distance(s.centre, t.centre);
  if (gap == 0 || gap > s.radius + t.radius + 1e-6) return;
  const Point d = (1 / gap) * (t.centre - s.centre);
  const double along = (gap * gap + s.radius * s.radius - t.radius * t.radius) / (2 * gap);
  const double half_chord = std::sqrt(std::max(0.0, s.radius * s.radius - along * along));
  for (const double sign : {-1.0, 1.0})
    add_within(s, t, s.centre.x + along * d.x + sign * half_chord * left_of(d).x, xs);
}

}  // namespace

double Strand::y(double x) const {
  if (radius == 0) return a.y + (b.y - a.y) * (x - x0) / (x1 - x0);
  const double dx = x - centre.x;
  return centre.y + sign * std::sqrt(std::max(0.0, (radius - dx) * (radius + dx)));
}

std::vector<Strand> strands_of(const Loop& loop) {
  std::vector<Strand> all;
  for (const CurveSegment& segment : loop) {
    if (segment.is_arc())
      add_arc(segment, all);
    else
      all.push_back(straight(segment.a, segment.b));
  }
  std::erase_if(all, [](const Strand& s) { return !(s.x1 > s.x0); });
  return all;
}

std::vector<double> crossings(const std::vector<Strand>& strands, double x) {
  std::vector<double> ys;
  for (const Strand& s : strands)
    if (s.over(x)) ys.push_back(s.y(x));
  std::sort(ys.begin(), ys.end());
  return ys;
}

std::optional<std::pair<double, double>> interval(const std::vector<Strand>& strands, double x) {
  double low = 1e300, high = -1e300;
  for (const Strand& s : strands) {
    if (!s.over(x)) continue;
    const double y = s.y(x);
    low = std::min(low, y);
    high = std::max(high, y);
  }
  if (low >= high) return std::nullopt;
  return std::pair{low, high};
}

bool inside(const std::vector<Strand>& strands, Point p) {
  bool in = false;
  for (const Strand& s : strands)
    if (s.x0 <= p.x && p.x < s.x1 && s.y(p.x) < p.y) in = !in;
  return in;
}

void add_meetings(const Strand& s, const Strand& t, std::vector<double>& xs) {
  if (s.x1 <= t.x0 || t.x1 <= s.x0) return;
  if (s.radius == 0 && t.radius == 0) return line_with_line(s, t, xs);
  if (s.radius == 0) return line_with_circle(s, t, xs);
  if (t.radius == 0) return line_with_circle(t, s, xs);
  circle_with_circle(s, t, xs);
}

}  // namespace sagitta::oracle
