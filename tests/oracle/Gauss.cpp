#include "oracle/Gauss.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace sagitta::oracle {
namespace {

constexpr int order = 10;
/// Of the integral of |f|: sums of ten products and the areas that are integrated carry about 1e-14.
constexpr double rounding = 1e-12;

struct Rule {
  std::array<double, order> at{}, weight{};
};

/// Gauss-Legendre nodes and weights on [-1, 1] by Newton's rule on the Legendre recurrence.
/// Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29.
Rule gauss_legendre() {
  Rule rule;
  for (int i = 0; i < order; ++i) {
    double x = std::cos(std::numbers::pi * (i + 0.75) / (order + 0.5)), slope = 1;
    for (int step = 0; step < 50; ++step) {
      double p0 = 1, p1 = x;
      for (int k = 2; k <= order; ++k) {
        const double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
        p0 = p1;
        p1 = p2;
      }
      slope = order * (x * p1 - p0) / (x * x - 1);
      const double move = p1 / slope;
      x -= move;
      if (std::abs(move) < 1e-16) break;
    }
    rule.at[i] = x;
    rule.weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return rule;
}

/// f over x = a + (b - a) sin^2 t: square-root ends become smooth in t.
struct Eased {
  const std::function<double(double)>& f;
  double a, b;

  double at(double t) const {
    const double s = std::sin(t), c = std::cos(t);
    const double x = s < c ? a + (b - a) * s * s : b - (b - a) * c * c;
    return f(x) * 2 * (b - a) * s * c;
  }
  double panel(double t0, double t1) const {
    static const Rule rule = gauss_legendre();
    double sum = 0;
    for (int i = 0; i < order; ++i) sum += rule.weight[i] * at(0.5 * (t0 + t1) + 0.5 * (t1 - t0) * rule.at[i]);
    return 0.5 * (t1 - t0) * sum;
  }
};

/// A stretch of t with the sums over its two halves, and how far those are from the sum over the whole.
struct Part {
  double t0, t1, first, second, change;

  Part(const Eased& eased, double from, double to, double whole) : t0(from), t1(to) {
    const double middle = 0.5 * (t0 + t1);
    first = eased.panel(t0, middle);
    second = eased.panel(middle, t1);
    change = std::abs(first + second - whole);
  }
  double value() const { return first + second; }
  friend bool operator<(const Part& a, const Part& b) { return a.change < b.change; }
};

/// Afresh, so that no error of running sums is left.
Integral sum_of(const std::vector<Part>& parts) {
  Integral sum;
  for (const Part& part : parts) {
    sum.value += part.value();
    sum.change += part.change;
  }
  return sum;
}

}  // namespace

Integral integral(const std::function<double(double)>& f, double a, double b, double tolerance) {
  if (!(b > a)) return {};
  const Eased eased{f, a, b};
  const double end = std::numbers::pi / 2;
  std::vector<Part> heap{{eased, 0, end, eased.panel(0, end)}};
  double change = heap.front().change, size = std::abs(heap.front().value());
  while (change > std::max(tolerance, rounding * size) && heap.size() < most_parts) {
    std::pop_heap(heap.begin(), heap.end());
    const Part part = heap.back();
    heap.pop_back();
    const double middle = 0.5 * (part.t0 + part.t1);
    change -= part.change;
    size -= std::abs(part.value());
    for (const Part& half : {Part(eased, part.t0, middle, part.first), Part(eased, middle, part.t1, part.second)}) {
      change += half.change;
      size += std::abs(half.value());
      heap.push_back(half);
      std::push_heap(heap.begin(), heap.end());
    }
  }
  return sum_of(heap);
}

}  // namespace sagitta::oracle
