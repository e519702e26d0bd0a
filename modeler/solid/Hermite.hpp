#pragma once

/// Quintic Hermite segments: the polynomial of degree five with given values, slopes and second derivatives at both
/// ends.

#include <array>

#include "solid/Jet.hpp"

namespace sagitta {

/// Bezier points of the segment between jets a and b, whose parameters lie h apart.
inline std::array<double, 6> bezier(const Jet& a, const Jet& b, double h) {
  return {a.v,
          a.v + h * a.d / 5,
          a.v + 2 * h * a.d / 5 + h * h * a.dd / 20,
          b.v - 2 * h * b.d / 5 + h * h * b.dd / 20,
          b.v - h * b.d / 5,
          b.v};
}

/// The segment at t in [0, 1], with its derivatives by the parameter of the jets.
inline Jet hermite(const Jet& a, const Jet& b, double h, double t) {
  const std::array<double, 6> c = bezier(a, b, h);
  const Jet p{t, 1 / h, 0}, q = 1 - p;
  const Jet p2 = p * p, q2 = q * q;
  return c[0] * (q2 * q2 * q) + 5 * c[1] * (q2 * q2 * p) + 10 * c[2] * (q2 * q * p2) + 10 * c[3] * (q2 * p2 * p) +
         5 * c[4] * (q * p2 * p2) + c[5] * (p2 * p2 * p);
}

}  // namespace sagitta
