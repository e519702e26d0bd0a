#pragma once

/// Curves through a function's values, slopes and second derivatives: quintic Hermite segments, joined as one B-spline
/// that is continuous to the second derivative, or to the first where the function's own second derivative jumps.

#include <array>
#include <functional>
#include <vector>

#include "solid/Jet.hpp"

namespace sagitta {

/// N coordinates over a parameter, with their derivatives. The second argument says in which span the parameter is
/// meant to lie where two of them meet: the second derivative may jump there.
template <std::size_t N>
using ParametricCurve = std::function<std::array<Jet, N>(double, std::size_t)>;

/// A B-spline of degree 5.
template <std::size_t N>
struct HermiteSpline {
  std::vector<double> knots;        ///< each once
  std::vector<int> multiplicities;  ///< 6 at the ends, 4 between spans, else 3
  std::vector<std::array<double, N>> poles;
  double deviation = 0;  ///< largest measured between the knots, weighted
};

/// Over spans[0] to spans.back(), at least two and rising. Doubles the number of segments of a span until the
/// deviation, each coordinate times its weight, is at most `aim`, or 64 segments.
template <std::size_t N>
HermiteSpline<N> fit_hermite_spline(const ParametricCurve<N>& f, const std::vector<double>& spans,
                                    const std::array<double, N>& weight, double aim);

extern template HermiteSpline<2> fit_hermite_spline<2>(const ParametricCurve<2>&, const std::vector<double>&,
                                                       const std::array<double, 2>&, double);
extern template HermiteSpline<3> fit_hermite_spline<3>(const ParametricCurve<3>&, const std::vector<double>&,
                                                       const std::array<double, 3>&, double);

}  // namespace sagitta
