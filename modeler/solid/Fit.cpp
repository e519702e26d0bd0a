#include "solid/Fit.hpp"

#include <algorithm>

namespace sagitta {
namespace {

/// Bezier points of the quintic with the given jets at its ends, h apart.
std::array<double, 6> bezier(const Jet& a, const Jet& b, double h) {
  return {a.v, a.v + h * a.d / 5, a.v + 2 * h * a.d / 5 + h * h * a.dd / 20,
          b.v - 2 * h * b.d / 5 + h * h * b.dd / 20, b.v - h * b.d / 5, b.v};
}

double value(const std::array<double, 6>& c, double t) {
  const double s = 1 - t;
  const double s2 = s * s, t2 = t * t;
  return s2 * s2 * s * c[0] + 5 * s2 * s2 * t * c[1] + 10 * s2 * s * t2 * c[2] + 10 * s2 * t2 * t * c[3] +
         5 * s * t2 * t2 * c[4] + t2 * t2 * t * c[5];
}

template <std::size_t N>
Fitted<N> fit_with(const std::function<std::array<Jet, N>(double)>& f, double first, double last,
                   const std::array<double, N>& weight, int pieces) {
  Fitted<N> fitted{first, last, pieces, {}, 0};
  const double h = (last - first) / pieces;
  std::array<Jet, N> start = f(first);
  for (int i = 0; i < pieces; ++i) {
    const double from = first + i * h;
    const std::array<Jet, N> end = f(i + 1 == pieces ? last : from + h);
    std::array<std::array<double, 6>, N> control;
    for (std::size_t k = 0; k < N; ++k) control[k] = bezier(start[k], end[k], h);
    const auto add = [&](auto pick) {
      std::array<double, N> pole;
      for (std::size_t k = 0; k < N; ++k) pole[k] = pick(control[k]);
      fitted.poles.push_back(pole);
    };
    using Control = std::array<double, 6>;
    if (i == 0) {
      add([](const Control& c) { return c[0]; });
      add([](const Control& c) { return c[1]; });
    } else {
      add([](const Control& c) { return 2 * c[1] - c[2]; });  // the blossom across a triple knot
    }
    add([](const Control& c) { return c[2]; });
    add([](const Control& c) { return c[3]; });
    if (i + 1 == pieces) {
      add([](const Control& c) { return c[4]; });
      add([](const Control& c) { return c[5]; });
    }
    for (const double t : {0.25, 0.5, 0.75}) {
      const std::array<Jet, N> exact = f(from + t * h);
      for (std::size_t k = 0; k < N; ++k)
        fitted.deviation = std::max(fitted.deviation, weight[k] * std::abs(value(control[k], t) - exact[k].v));
    }
    start = end;
  }
  return fitted;
}

}  // namespace

template <std::size_t N>
Fitted<N> fit(const std::function<std::array<Jet, N>(double)>& f, double first, double last,
              const std::array<double, N>& weight, double aim) {
  for (int pieces = 1;; pieces *= 2) {
    Fitted<N> fitted = fit_with<N>(f, first, last, weight, pieces);
    if (fitted.deviation <= aim || pieces >= 64) return fitted;
  }
}

template Fitted<2> fit<2>(const std::function<std::array<Jet, 2>(double)>&, double, double,
                          const std::array<double, 2>&, double);
template Fitted<3> fit<3>(const std::function<std::array<Jet, 3>(double)>&, double, double,
                          const std::array<double, 3>&, double);

}  // namespace sagitta
