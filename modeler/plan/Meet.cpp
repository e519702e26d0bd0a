#include "plan/Meet.hpp"

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

bool within(double t, double size, double reach) { return t * size >= -reach && (t - 1) * size <= reach; }
double clamped(double t) { return t < 0 ? 0 : t > 1 ? 1 : t; }

/// Parameter of the point of `segment` nearest to p along its carrier (line or circle), unclamped.
double parameter(const CurveSegment& segment, Point p) {
  if (!segment.is_arc()) {
    const Point d = segment.b - segment.a;
    return dot(p - segment.a, d) / dot(d, d);
  }
  const Point d = p - segment.centre;
  double turn = (std::atan2(d.y, d.x) - segment.start) / segment.sweep;
  const double full = 2 * pi / std::abs(segment.sweep);
  turn -= full * std::floor(turn / full);
  const double past_end = turn - 1, before_start = full - turn;  // of the two ways round, the shorter
  return turn > 1 && before_start < past_end ? turn - full : turn;
}

/// Distance from p to the carrier.
double off(const CurveSegment& segment, Point p) {
  if (segment.is_arc()) return std::abs(distance(p, segment.centre) - segment.radius);
  const Point d = segment.b - segment.a;
  return std::abs(cross(d, p - segment.a)) / length(d);
}

/// Finds where two segments meet.
struct Meeter {
  double reach;
  std::vector<Meeting>& out;

  void add(const CurveSegment& first, const CurveSegment& second, Point p) const {
    const double s = parameter(first, p), t = parameter(second, p);
    if (within(s, first.length(), reach) && within(t, second.length(), reach))
      out.push_back({clamped(s), clamped(t), p});
  }

  /// Ends of one segment that lie on the other.
  void meet_at_ends(const CurveSegment& first, const CurveSegment& second) const {
    for (const Point p : {first.a, first.b})
      if (off(second, p) <= reach) add(first, second, p);
    for (const Point p : {second.a, second.b})
      if (off(first, p) <= reach) add(first, second, p);
  }

  void meet_lines(const CurveSegment& first, const CurveSegment& second) const {
    const Point d = first.b - first.a, e = second.b - second.a;
    const double turn = cross(d, e);
    constexpr double parallel = 1e-14;  // sine of the angle: rounding of doubles
    if (std::abs(turn) <= parallel * length(d) * length(e)) return;
    const double s = cross(second.a - first.a, e) / turn;
    const double t = cross(second.a - first.a, d) / turn;
    if (within(s, length(d), reach) && within(t, length(e), reach))
      out.push_back({clamped(s), clamped(t), between(first.a, first.b, s)});
  }

  void meet_line_arc(const CurveSegment& straight, const CurveSegment& round, bool swapped) const {
    const Point d = unit(straight.b - straight.a);
    const Point foot = straight.a + dot(round.centre - straight.a, d) * d;
    const double away = distance(foot, round.centre);
    if (away > round.radius + reach) return;
    const auto put = [&](Point p) { swapped ? add(round, straight, p) : add(straight, round, p); };
    if (away >= round.radius - tolerance::same) return put(foot);
    const double half_chord = std::sqrt((round.radius - away) * (round.radius + away));
    put(foot - half_chord * d);
    put(foot + half_chord * d);
  }

  void meet_arcs(const CurveSegment& first, const CurveSegment& second) const {
    const double r = first.radius, q = second.radius;
    const Point across = second.centre - first.centre;
    const double apart = length(across);
    if (apart <= tolerance::same || apart > r + q + reach || apart < std::abs(r - q) - reach) return;
    const Point n = (1 / apart) * across;
    const bool outside = std::abs(apart - (r + q)) <= tolerance::same || apart > r + q;
    const bool inside = std::abs(apart - std::abs(r - q)) <= tolerance::same || apart < std::abs(r - q);
    if (outside) return add(first, second, first.centre + r * n);
    if (inside) return add(first, second, first.centre + (r > q ? r : -r) * n);
    const double along = (apart * apart + (r - q) * (r + q)) / (2 * apart);
    const double half_chord = std::sqrt(std::max(0.0, (r - along) * (r + along)));
    const Point m = first.centre + along * n;
    add(first, second, m + half_chord * left_of(n));
    add(first, second, m - half_chord * left_of(n));
  }
};

}  // namespace

void meet(const CurveSegment& first, const CurveSegment& second, std::vector<Meeting>& out, double reach) {
  const Meeter meeter{reach, out};
  meeter.meet_at_ends(first, second);
  if (!first.is_arc() && !second.is_arc()) return meeter.meet_lines(first, second);
  if (first.is_arc() && second.is_arc()) return meeter.meet_arcs(first, second);
  if (first.is_arc()) return meeter.meet_line_arc(second, first, true);
  meeter.meet_line_arc(first, second, false);
}

std::optional<double> passes_near(const CurveSegment& segment, Point p, double reach) {
  for (const double end : {0.0, 1.0})
    if (distance(p, end == 0 ? segment.a : segment.b) <= reach) return end;
  if (off(segment, p) > reach) return std::nullopt;
  const double t = parameter(segment, p);
  if (t <= 0 || t >= 1) return std::nullopt;
  return t;
}

}  // namespace sagitta
