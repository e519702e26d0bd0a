#pragma once

/// Values with their first and second derivatives (automatic differentiation).

#include <cmath>

namespace sagitta {

/// A value with its first and second derivative by one parameter: exact derivatives of whatever is computed with it.
struct Jet {
  double v = 0, d = 0, dd = 0;
};

inline Jet constant(double v) { return {v, 0, 0}; }
inline Jet operator+(Jet a, Jet b) { return {a.v + b.v, a.d + b.d, a.dd + b.dd}; }
inline Jet operator-(Jet a, Jet b) { return {a.v - b.v, a.d - b.d, a.dd - b.dd}; }
inline Jet operator*(Jet a, Jet b) {
  return {a.v * b.v, a.d * b.v + a.v * b.d, a.dd * b.v + 2 * a.d * b.d + a.v * b.dd};
}
inline Jet operator*(double s, Jet a) { return {s * a.v, s * a.d, s * a.dd}; }
inline Jet operator+(double s, Jet a) { return {s + a.v, a.d, a.dd}; }
inline Jet operator-(double s, Jet a) { return {s - a.v, -a.d, -a.dd}; }
/// f(a) from f, f' and f'' at a.v.
inline Jet chain(Jet a, double f, double f1, double f2) { return {f, f1 * a.d, f2 * a.d * a.d + f1 * a.dd}; }
inline Jet inverse(Jet a) {
  const double i = 1 / a.v;
  return chain(a, i, -i * i, 2 * i * i * i);
}
inline Jet operator/(Jet a, Jet b) { return a * inverse(b); }
inline Jet sqrt(Jet a) {
  const double r = std::sqrt(a.v);
  return chain(a, r, 0.5 / r, -0.25 / (r * a.v));
}
inline Jet cos(Jet a) { return chain(a, std::cos(a.v), -std::sin(a.v), -std::cos(a.v)); }
inline Jet sin(Jet a) { return chain(a, std::sin(a.v), std::cos(a.v), -std::sin(a.v)); }
inline Jet asin(Jet a) {
  const double c = 1 - a.v * a.v;
  return chain(a, std::asin(a.v), 1 / std::sqrt(c), a.v / (c * std::sqrt(c)));
}
/// The angle of (x, y) from the x axis.
inline Jet atan2(Jet y, Jet x) {
  const double square = x.v * x.v + y.v * y.v, sweep = (x.v * y.d - y.v * x.d) / square;
  return {std::atan2(y.v, x.v), sweep, (x.v * y.dd - y.v * x.dd - 2 * sweep * (x.v * x.d + y.v * y.d)) / square};
}

}  // namespace sagitta
