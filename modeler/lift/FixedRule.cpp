#include "lift/FixedRule.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace sagitta {
namespace {

constexpr int points = 61;
struct Rule {
  std::array<double, points> at{}, weight{};  ///< on [0, 1]
};

/// Nodes and weights by Newton's method on the Legendre recurrence.
/// Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29.
Rule gauss_legendre() {
  Rule rule;
  for (int i = 0; i < points; ++i) {
    double x = std::cos(std::numbers::pi * (i + 0.75) / (points + 0.5)), slope = 1;
    for (int step = 0; step < 100; ++step) {
      double p0 = 1, p1 = x;
      for (int k = 2; k <= points; ++k) p0 = std::exchange(p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k);
      slope = points * (x * p1 - p0) / (x * x - 1);
      const double move = p1 / slope;
      x -= move;
      constexpr double resolved = 1e-16;  // a double tells no more
      if (std::abs(move) < resolved) break;
    }
    rule.at[static_cast<std::size_t>(i)] = (1 - x) / 2;
    rule.weight[static_cast<std::size_t>(i)] = 1 / ((1 - x * x) * slope * slope);
  }
  return rule;
}

/// Twice the area swept about the middle, and the way from end to end.
struct Moments {
  double swept = 0;
  Point way;
};

Moments exact(std::span<const CurveSegment> run, Point middle) {
  Moments sum;
  for (const CurveSegment& segment : run) {
    sum.swept += cross(segment.a - middle, segment.b - middle);
    if (segment.is_arc()) sum.swept += segment.radius * segment.radius * (segment.sweep - std::sin(segment.sweep));
    sum.way = sum.way + (segment.b - segment.a);
  }
  return sum;
}

/// The same by the rule, over the run's length.
Moments by_rule(std::span<const CurveSegment> run, Point middle, double whole) {
  static const Rule rule = gauss_legendre();
  Moments sum;
  std::size_t i = 0;
  double before = 0;
  for (std::size_t k = 0; k < points; ++k) {
    const double place = rule.at[k] * whole;
    while (i + 1 < run.size() && place > before + run[i].length()) before += run[i++].length();
    const double t = std::min(1.0, (place - before) / run[i].length());
    const Point step = rule.weight[k] * whole * unit(run[i].slope(t));
    sum.swept += cross(run[i].at(t) - middle, step);
    sum.way = sum.way + step;
  }
  return sum;
}

}  // namespace

bool integrates(std::span<const CurveSegment> run, double reach, double beside) {
  double whole = 0;
  for (const CurveSegment& segment : run) whole += segment.length();
  const Point middle = between(run.front().a, run.back().b, 0.5);
  const Moments is = exact(run, middle), seen = by_rule(run, middle, whole);
  const double off = std::abs(seen.swept - is.swept) / 2 + reach * length(seen.way - is.way);
  return off <= beside * whole;
}

std::vector<ArcSpan> spans_that_integrate(const std::vector<CurveSegment>& run, double reach, double beside,
                                          std::size_t least) {
  struct Best {
    std::size_t walls = 0;  ///< from here to the end
    std::size_t next = 0;   ///< the first arc of the next wall
  };
  std::vector<Best> best(run.size() + 1);
  for (std::size_t i = run.size(); i-- > 0;) {
    best[i] = {best[i + 1].walls + 1, i + 1};
    for (std::size_t end = i + least; end <= run.size(); ++end) {
      if (!integrates({run.begin() + static_cast<std::ptrdiff_t>(i), run.begin() + static_cast<std::ptrdiff_t>(end)},
                      reach, beside))
        break;
      if (best[end].walls + 1 < best[i].walls) best[i] = {best[end].walls + 1, end};
    }
  }
  std::vector<ArcSpan> spans;
  for (std::size_t i = 0; i < run.size(); i = best[i].next)
    if (best[i].next > i + 1) spans.push_back({i, best[i].next});
  return spans;
}

}  // namespace sagitta
