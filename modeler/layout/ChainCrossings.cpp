#include "layout/ChainCrossings.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

double side_of(Point p, Point on, Point along) { return cross(along, p - on) / length(along); }

/// Where a piece is at the distance 0 from the line; its own ends are looked at apart.
std::vector<double> inner_roots(const CurveSegment& piece, Point on, Point along) {
  const double a = side_of(piece.a, on, along), b = side_of(piece.b, on, along);
  std::vector<double> roots;
  if (!piece.is_arc()) {
    if ((a < 0) != (b < 0) && a != b) roots.push_back(a / (a - b));
    return roots;
  }
  const double away = side_of(piece.centre, on, along);
  if (std::abs(away) > piece.radius) return roots;
  // At the angle f the distance is away + radius sin(f - direction of the line).
  const double lean = std::atan2(along.y, along.x), rise = std::asin(-away / piece.radius);
  constexpr double full = 2 * std::numbers::pi;
  for (const double angle : {lean + rise, lean + std::numbers::pi - rise}) {
    const double turn = piece.sweep > 0 ? angle - piece.start : piece.start - angle;
    roots.push_back((turn - full * std::floor(turn / full)) / std::abs(piece.sweep));
  }
  std::sort(roots.begin(), roots.end());
  return roots;
}

/// The place as one number along the chain.
double number_of(const ChainPlace& place) { return static_cast<double>(place.piece) + place.t; }

Point point_at(const Loop& chain, double number) {
  const auto piece = std::min(static_cast<std::size_t>(number), chain.size() - 1);
  return chain[piece].at(number - static_cast<double>(piece));
}

}  // namespace

std::vector<ChainPlace> meetings(const Loop& chain, Point on, Point along) {
  std::vector<ChainPlace> found;
  const auto add = [&](std::size_t piece, double t, Point at) {
    if (found.empty() || distance(found.back().at, at) > tolerance::same) found.push_back({piece, t, at});
  };
  for (std::size_t i = 0; i < chain.size(); ++i) {
    if (std::abs(side_of(chain[i].a, on, along)) <= tolerance::same) add(i, 0, chain[i].a);
    for (const double t : inner_roots(chain[i], on, along))
      if (t > 0 && t < 1) add(i, t, chain[i].at(t));
    if (std::abs(side_of(chain[i].b, on, along)) <= tolerance::same) add(i, 1, chain[i].b);
  }
  return found;
}

std::vector<ChainPlace> crossings(const Loop& chain, Point on, Point along) {
  const std::vector<ChainPlace> met = meetings(chain, on, along);
  std::vector<ChainPlace> crossed;
  double before = chain.empty() ? 0 : side_of(chain.front().a, on, along);
  if (std::abs(before) <= tolerance::same) before = 0;
  for (std::size_t i = 0; i < met.size(); ++i) {
    const double next = i + 1 < met.size() ? number_of(met[i + 1]) : static_cast<double>(chain.size());
    const double after = side_of(point_at(chain, (number_of(met[i]) + next) / 2), on, along);
    if (std::abs(after) <= tolerance::same) continue;
    if (before != 0 && (before < 0) != (after < 0)) crossed.push_back(met[i]);
    before = after;
  }
  return crossed;
}

Loop part_of(const Loop& chain, const ChainPlace& from, const ChainPlace& to) {
  Loop part;
  for (std::size_t i = from.piece; i <= to.piece; ++i) {
    const double first = i == from.piece ? from.t : 0, last = i == to.piece ? to.t : 1;
    if (last <= first) continue;
    CurveSegment piece = chain[i];
    piece.start += first * piece.sweep;
    piece.sweep *= last - first;
    if (i == from.piece) piece.a = from.at;
    if (i == to.piece) piece.b = to.at;
    if (distance(piece.a, piece.b) > tolerance::same || std::abs(piece.sweep) > 1) part.push_back(piece);
  }
  return part;
}

}  // namespace sagitta
