#include "plan/Roots.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

struct Knot {
  double t = 0, value = 0;
};

/// Between two knots of opposite sign, by bisection with regula falsi steps (Illinois).
double root(const std::function<double(double)>& f, Knot a, Knot b) {
  double last = 0;
  constexpr double resolved = 1e-16;  // of t in [0, 1]: a double tells no more
  for (int i = 0; i < 100 && std::abs(b.t - a.t) > resolved; ++i) {
    double t = (a.t * b.value - b.t * a.value) / (b.value - a.value);
    if (i % 8 == 7 || !(t > std::min(a.t, b.t) && t < std::max(a.t, b.t))) t = (a.t + b.t) / 2;
    const double value = f(t);
    if (value == 0 || t == last) return t;
    last = t;
    if ((value > 0) == (b.value > 0)) {
      b = {t, value};
      a.value /= 2;
    } else {
      a = b;
      b = {t, value};
    }
  }
  return (a.t + b.t) / 2;
}

/// The extremum of sign * f (a maximum) within [low, high], by golden sections.
Knot extremum(const std::function<double(double)>& f, double low, double high, double sign) {
  const double golden = (std::sqrt(5.0) - 1) / 2;
  double a = high - golden * (high - low), b = low + golden * (high - low);
  double fa = sign * f(a), fb = sign * f(b);
  for (int i = 0; i < 60; ++i) {
    if (fa > fb) {
      high = b;
      b = a;
      fb = fa;
      a = high - golden * (high - low);
      fa = sign * f(a);
    } else {
      low = a;
      a = b;
      fa = fb;
      b = low + golden * (high - low);
      fb = sign * f(b);
    }
  }
  const double t = (low + high) / 2;
  return {t, f(t)};
}

/// Samples with the extrema added between which f is monotone, where they could matter for its zeros.
std::vector<Knot> knots_of(const std::function<double(double)>& f, double small, int samples) {
  std::vector<Knot> knots;
  for (int i = 0; i <= samples; ++i) knots.push_back({static_cast<double>(i) / samples, 0});
  for (Knot& knot : knots) knot.value = f(knot.t);
  double bend = 0;  // between two samples f strays from its chord by about an eighth of its second difference
  for (int i = 1; i < samples; ++i)
    bend = std::max(bend, std::abs(knots[i - 1].value - 2 * knots[i].value + knots[i + 1].value));
  std::vector<Knot> extra;
  for (int i = 0; i <= samples; ++i) {
    const Knot& before = knots[std::max(0, i - 1)];
    const Knot& after = knots[std::min(samples, i + 1)];
    const double here = knots[i].value;
    if (std::abs(here) > bend + small) continue;
    if (here >= before.value && here >= after.value) extra.push_back(extremum(f, before.t, after.t, 1));
    if (here <= before.value && here <= after.value) extra.push_back(extremum(f, before.t, after.t, -1));
  }
  knots.insert(knots.end(), extra.begin(), extra.end());
  std::sort(knots.begin(), knots.end(), [](const Knot& a, const Knot& b) { return a.t < b.t; });
  return knots;
}

}  // namespace

std::vector<double> contacts_of(const std::function<double(double)>& f, double small, int samples) {
  const std::vector<Knot> knots = knots_of(f, small, samples);
  std::vector<double> found;
  const Knot* last = nullptr;     // the last knot clearly off zero
  const Knot* nearest = nullptr;  // the smallest since then
  for (const Knot& knot : knots) {
    if (std::abs(knot.value) <= small) {
      if (last && (!nearest || std::abs(knot.value) < std::abs(nearest->value))) nearest = &knot;
      continue;
    }
    if (last && (last->value > 0) != (knot.value > 0)) {
      found.push_back(root(f, *last, knot));
    } else if (last && nearest) {
      found.push_back(nearest->t);
    }
    last = &knot;
    nearest = nullptr;
  }
  std::erase_if(found, [](double t) { return t <= 0 || t >= 1; });
  return found;
}

std::optional<double> root_between(const std::function<double(double)>& f, double low, double high) {
  const double at_low = f(low), at_high = f(high);
  if (at_low == 0) return low;
  if (at_high == 0) return high;
  if ((at_low > 0) == (at_high > 0)) return std::nullopt;
  return low + (high - low) * root([&](double t) { return f(low + t * (high - low)); }, {0, at_low}, {1, at_high});
}

}  // namespace sagitta
