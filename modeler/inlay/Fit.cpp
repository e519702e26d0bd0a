#include "inlay/Fit.hpp"

#include <algorithm>

#include "inlay/OutlineIndex.hpp"

namespace sagitta {
namespace {

constexpr int most_rounds = 8;

bool within(const Region& region, const OutlineIndex& other) {
  for (const Polygon& polygon : region)
    for (const Point p : polygon)
      if (!other.reaches(p, fit_settled)) return false;
  return true;
}

/// Whether no point of either outline lies further than fit_settled from the other.
bool same(const Region& a, const Region& b) {
  if (a.empty() || b.empty()) return a.empty() == b.empty();
  return within(a, OutlineIndex(b)) && within(b, OutlineIndex(a));
}

/// What an opening or a closing made is exactly as wide as the cutter, and would come and go with each round: the next
/// one spares it by this much. mm.
constexpr double spared = 0.0001;

/// Closed, then opened: taking off twice in a row is taking off once.
Region closed_and_opened(const Region& region, double closing, double opening, const Cancel& cancel) {
  return grown(grown(grown(region, closing, cancel), -closing - opening, cancel), opening, cancel);
}

/// Looks along an outline, at points that lie on it no further apart than a quarter of a side.
template <class Look>
void along(const Region& outline, Look look) {
  for (const Polygon& polygon : outline)
    for (std::size_t i = 0; i < polygon.size(); ++i)
      for (const double s : {0.0, 0.25, 0.5, 0.75})
        look(between(polygon[i], polygon[i + 1 < polygon.size() ? i + 1 : 0], s));
}

void judge(Point p, const OutlineIndex& other, Departure& worst) {
  if (worst.distance > 0 && other.reaches(p, worst.distance)) return;
  const double way = other.nearest(p).distance;
  if (way > worst.distance) worst = {way, p};
}

/// Of the outline's points outside of the other region only those are looked for that lie further off than any yet.
void judge_outside(const Region& outline, const Region& other, Departure& worst) {
  constexpr std::size_t few = 256;
  const OutlineIndex index(other);
  std::vector<Point> far;
  along(outline, [&](Point p) {
    if (far.size() < few && !index.reaches(p, worst.distance)) far.push_back(p);
  });
  if (far.size() < few) {
    for (const Point p : far)
      if (!index.reaches(p, worst.distance) && !contains(other, p)) judge(p, index, worst);
  } else {
    along(without(outline, other), [&](Point p) { judge(p, index, worst); });
  }
}

}  // namespace

Region opened(const Region& region, double radius, const Cancel& cancel) {
  return radius > 0 ? grown(grown(region, -radius, cancel), radius, cancel) : region;
}

std::optional<Region> fit(const Region& drawn, double radius, const Cancel& cancel) {
  if (radius <= 0) return drawn;
  const double less = std::min(spared, radius / 8);
  Region piece = opened(drawn, radius, cancel);
  for (int round = 0; round < most_rounds && !cancel.wanted(); ++round) {
    Region next =
        closed_and_opened(piece, radius - (round > 0 ? less : 0), radius - (round > 0 ? 2 : 1) * less, cancel);
    const bool still = same(piece, next);
    piece = std::move(next);
    if (still) return piece;
  }
  return std::nullopt;
}

Departure departure(const Region& drawn, const Region& made) { return departure(drawn, made, without(drawn, made)); }

Departure departure(const Region& drawn, const Region& made, const Region& lost) {
  Departure worst;
  if (!lost.empty()) {
    const OutlineIndex index(made);
    along(lost, [&](Point p) { judge(p, index, worst); });
  }
  judge_outside(made, drawn, worst);
  return worst;
}

double largest_radius(const Region& drawn, double limit, double most, const Cancel& cancel) {
  const auto serves = [&](double radius) {
    const auto made = fit(drawn, radius, cancel);
    return made && !made->empty() && departure(drawn, *made).distance <= limit;
  };
  if (serves(most)) return most;
  double good = 0, bad = most;
  while (bad - good > 0.001 && !cancel.wanted()) {
    const double middle = (good + bad) / 2;
    (serves(middle) ? good : bad) = middle;
  }
  return good;
}

}  // namespace sagitta
