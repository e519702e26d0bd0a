#include "oracle/Gauss.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace sagitta::oracle {
namespace {

constexpr int order = 10;
constexpr int deepest = 40;

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
  void refine(double t0, double t1, double whole, double tolerance, int depth, Integral& out) const {
    const double middle = 0.5 * (t0 + t1);
    const double first = panel(t0, middle), second = panel(middle, t1);
    const double change = std::abs(first + second - whole);
    if (change <= tolerance || depth == deepest) {
      out.value += first + second;
      out.change += change;
      return;
    }
    refine(t0, middle, first, tolerance / 2, depth + 1, out);
    refine(middle, t1, second, tolerance / 2, depth + 1, out);
  }
};

}  // namespace

Integral integral(const std::function<double(double)>& f, double a, double b, double tolerance) {
  Integral out;
  if (!(b > a)) return out;
  const Eased eased{f, a, b};
  const double end = std::numbers::pi / 2;
  eased.refine(0, end, eased.panel(0, end), tolerance, 0, out);
  return out;
}

}  // namespace sagitta::oracle
