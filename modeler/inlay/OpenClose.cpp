#include "inlay/OpenClose.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/FitTolerance.hpp"
#include "inlay/NarrowPlaces.hpp"
#include "polygon/AddedPlaces.hpp"
#include "polygon/HausdorffDistance.hpp"

namespace sagitta {
namespace {

constexpr int most_rounds = 24;  // of which each second one may widen or fill what is left
constexpr int most_choices = 8;  // rounds after which gaps are only widened: that comes to an end

/// What closing adds and is nowhere thicker is left by whole numbers and chords. mm.
constexpr double sliver = 0.00025;

/// What an opening or a closing made is exactly as wide as the cutter, and would come and go with each round: the next
/// one spares it by this much. mm.
constexpr double spared = 0.0001;

constexpr double tighter = 1.1;       // times the cutter's curvature: so much is no noise
constexpr double least_side = 0.002;  // mm; beside it a turn says nothing

double total(const std::vector<Region>& parts) {
  double sum = 0;
  for (const Region& part : parts) sum += area(part);
  return sum;
}

/// The middle of the largest part.
Point place_of(const std::vector<Region>& parts) {
  const auto most =
      std::max_element(parts.begin(), parts.end(), [](const Region& a, const Region& b) { return area(a) < area(b); });
  const Box box = bounds(*most);
  return between(box.low, box.high, 0.5);
}

/// Whether an outline turns in more tightly than a disc of `radius` somewhere, so that closing by it adds something.
/// Where it does not, closing may still add something.
bool turns_in(const Region& region, double radius) {
  for (const Polygon& polygon : region) {
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Point p = polygon[i], d = p - polygon[i > 0 ? i - 1 : n - 1], e = polygon[i + 1 < n ? i + 1 : 0] - p;
      const double sine = cross(d, e);
      if (sine >= 0) continue;
      const double before = length(d), after = length(e);
      if (std::min(before, after) < least_side) continue;
      if (-std::atan2(sine, dot(d, e)) * radius > tighter * std::min((before + after) / 2, radius)) return true;
    }
  }
  return false;
}

}  // namespace

Region opened(const Region& region, double radius, const Cancel& cancel) {
  return radius > 0 ? offset(offset(region, -radius, cancel), radius, cancel) : region;
}

Region closed(const Region& region, double radius, const Cancel& cancel) {
  return radius > 0 ? offset(offset(region, radius, cancel), -radius, cancel) : region;
}

OpenClosed open_close(const Region& drawn, double radius, const Region& taken, const Cancel& cancel) {
  if (radius <= 0) return {drawn, {}};
  const double less = std::min(spared, radius / 8);
  OpenClosed made{opened(drawn, radius, cancel), {}};
  const bool hollow = turns_in(drawn, radius);
  for (int round = 0; round < most_rounds && !cancel.wanted(); ++round) {
    const double closing = radius - (round > 0 ? less : 0), opening = closing - less;
    const Region whole = closed(made.region, closing, cancel);
    std::vector<Region> gaps;
    // At a tight turn it is known without a look.
    if (round > 0 || !hollow) {
      gaps = true_parts(added_places(whole, made.region, sliver, radius, cancel));
      if (total(gaps) < tolerance::left_open) return {std::move(made.region), {}};
      made.narrow = place_of(gaps);
    }
    // Closing and opening in turn is done once and for all: what closing adds after that, opening takes away again.
    made.region = round % 2 == 0 ? opened(whole, opening, cancel)
                                 : with_room(made.region, gaps, radius, opening, taken,
                                             round < most_choices ? Remedy::either : Remedy::widen, cancel);
  }
  return made;
}

double largest_radius(const Region& drawn, double limit, double most, const Cancel& cancel) {
  const auto serves = [&](double radius) {
    const OpenClosed made = open_close(drawn, radius, {}, cancel);
    return !made.narrow && !made.region.empty() && hausdorff_distance(drawn, made.region).distance <= limit;
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
