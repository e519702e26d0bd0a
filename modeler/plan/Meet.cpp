#include "plan/Meet.hpp"

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
constexpr double reach = tolerance::vertex;

bool within(double t, double size) { return t * size >= -reach && (t - 1) * size <= reach; }
double clamped(double t) { return t < 0 ? 0 : t > 1 ? 1 : t; }

/// Parameter of the point of `piece` nearest to p along its carrier (line or circle), unclamped.
double parameter(const Piece& piece, Point p) {
  if (!piece.is_arc()) {
    const Point d = piece.b - piece.a;
    return dot(p - piece.a, d) / dot(d, d);
  }
  const Point d = p - piece.centre;
  double turn = (std::atan2(d.y, d.x) - piece.start) / piece.sweep;
  const double full = 2 * pi / std::abs(piece.sweep);
  turn -= full * std::floor(turn / full);
  const double past_end = turn - 1, before_start = full - turn;  // of the two ways round, the shorter
  return turn > 1 && before_start < past_end ? turn - full : turn;
}

/// Distance from p to the carrier.
double off(const Piece& piece, Point p) {
  if (piece.is_arc()) return std::abs(distance(p, piece.centre) - piece.radius);
  const Point d = piece.b - piece.a;
  return std::abs(cross(d, p - piece.a)) / length(d);
}

void add(const Piece& first, const Piece& second, Point p, std::vector<Meeting>& out) {
  const double s = parameter(first, p), t = parameter(second, p);
  if (within(s, first.length()) && within(t, second.length())) out.push_back({clamped(s), clamped(t), p});
}

/// Ends of one piece that lie on the other.
void meet_at_ends(const Piece& first, const Piece& second, std::vector<Meeting>& out) {
  for (const Point p : {first.a, first.b})
    if (off(second, p) <= reach) add(first, second, p, out);
  for (const Point p : {second.a, second.b})
    if (off(first, p) <= reach) add(first, second, p, out);
}

void meet_lines(const Piece& first, const Piece& second, std::vector<Meeting>& out) {
  const Point d = first.b - first.a, e = second.b - second.a;
  const double turn = cross(d, e);
  if (std::abs(turn) <= 1e-14 * length(d) * length(e)) return;
  const double s = cross(second.a - first.a, e) / turn;
  const double t = cross(second.a - first.a, d) / turn;
  if (within(s, length(d)) && within(t, length(e)))
    out.push_back({clamped(s), clamped(t), between(first.a, first.b, s)});
}

void meet_line_arc(const Piece& straight, const Piece& round, std::vector<Meeting>& out, bool swapped) {
  const Point d = unit(straight.b - straight.a);
  const Point foot = straight.a + dot(round.centre - straight.a, d) * d;
  const double away = distance(foot, round.centre);
  if (away > round.radius + reach) return;
  const auto put = [&](Point p) { swapped ? add(round, straight, p, out) : add(straight, round, p, out); };
  if (away >= round.radius - tolerance::same) return put(foot);
  const double half_chord = std::sqrt((round.radius - away) * (round.radius + away));
  put(foot - half_chord * d);
  put(foot + half_chord * d);
}

void meet_arcs(const Piece& first, const Piece& second, std::vector<Meeting>& out) {
  const double r = first.radius, q = second.radius;
  const Point across = second.centre - first.centre;
  const double apart = length(across);
  if (apart <= tolerance::same || apart > r + q + reach || apart < std::abs(r - q) - reach) return;
  const Point n = (1 / apart) * across;
  const bool outside = std::abs(apart - (r + q)) <= tolerance::same || apart > r + q;
  const bool inside = std::abs(apart - std::abs(r - q)) <= tolerance::same || apart < std::abs(r - q);
  if (outside) return add(first, second, first.centre + r * n, out);
  if (inside) return add(first, second, first.centre + (r > q ? r : -r) * n, out);
  const double along = (apart * apart + (r - q) * (r + q)) / (2 * apart);
  const double half_chord = std::sqrt(std::max(0.0, (r - along) * (r + along)));
  const Point m = first.centre + along * n;
  add(first, second, m + half_chord * left_of(n), out);
  add(first, second, m - half_chord * left_of(n), out);
}

}  // namespace

void meet(const Piece& first, const Piece& second, std::vector<Meeting>& out) {
  meet_at_ends(first, second, out);
  if (!first.is_arc() && !second.is_arc()) return meet_lines(first, second, out);
  if (first.is_arc() && second.is_arc()) return meet_arcs(first, second, out);
  if (first.is_arc()) return meet_line_arc(second, first, out, true);
  meet_line_arc(first, second, out, false);
}

}  // namespace sagitta
