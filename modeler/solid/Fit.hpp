#pragma once

/// Curves through a function's values, slopes and second derivatives: quintic Hermite pieces, joined as one B-spline
/// that is continuous to the second derivative, or to the first where the function's own second derivative jumps.

#include <array>
#include <functional>
#include <vector>

#include "solid/Jet.hpp"

namespace sagitta {

/// N coordinates over a parameter, with their derivatives. The second argument says in which span the parameter is
/// meant to lie where two of them meet: the second derivative may jump there.
template <std::size_t N>
using Course = std::function<std::array<Jet, N>(double, std::size_t)>;

/// A B-spline of degree 5.
template <std::size_t N>
struct Fitted {
  std::vector<double> knots;        ///< each once
  std::vector<int> multiplicities;  ///< 6 at the ends, 4 between spans, else 3
  std::vector<std::array<double, N>> poles;
  double deviation = 0;  ///< largest measured between the knots, weighted
};

/// Over spans[0] to spans.back(), at least two and rising. Doubles the number of pieces of a span until the deviation,
/// each coordinate times its weight, is at most `aim`, or 64 pieces.
template <std::size_t N>
Fitted<N> fit(const Course<N>& f, const std::vector<double>& spans, const std::array<double, N>& weight, double aim);

extern template Fitted<2> fit<2>(const Course<2>&, const std::vector<double>&, const std::array<double, 2>&, double);
extern template Fitted<3> fit<3>(const Course<3>&, const std::vector<double>&, const std::array<double, 3>&, double);

}  // namespace sagitta
