#pragma once

/// Curves through a function's values, slopes and second derivatives: quintic Hermite pieces, joined as one B-spline
/// that is continuous to the second derivative.

#include <array>
#include <functional>
#include <vector>

#include "solid/Jet.hpp"

namespace sagitta {

template <std::size_t N>
struct Fitted {
  double first = 0, last = 1;
  int pieces = 1;                           ///< of equal length; interior knots have multiplicity 3
  std::vector<std::array<double, N>> poles; ///< 3 pieces + 3
  double deviation = 0;                     ///< largest measured between the pieces' ends, weighted
};

/// Doubles the number of pieces until the deviation, each coordinate times its weight, is at most `aim`, or 64 pieces.
template <std::size_t N>
Fitted<N> fit(const std::function<std::array<Jet, N>(double)>& f, double first, double last,
              const std::array<double, N>& weight, double aim);

extern template Fitted<2> fit<2>(const std::function<std::array<Jet, 2>(double)>&, double, double,
                                 const std::array<double, 2>&, double);
extern template Fitted<3> fit<3>(const std::function<std::array<Jet, 3>(double)>&, double, double,
                                 const std::array<double, 3>&, double);

}  // namespace sagitta
