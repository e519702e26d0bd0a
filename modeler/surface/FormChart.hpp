#pragma once

/// The parameters of a form's patch: each form of the playing surface as a map from two parameters, in mm.

#include <array>
#include <cmath>
#include <variant>

#include "surface/Surface.hpp"

namespace sagitta {

/// A rectangle of the parameter plane.
struct ParameterBox {
  double u_low = 0, u_high = 1, v_low = 0, v_high = 1;
};

/// Along the space, its share times its length on the centre line, and y.
struct SpaceChart {
  ScallopedSpace space;
  double length = 1;

  Point at(double u, double v) const { return {space.x(u / length, v), v}; }
  double rise(double) const { return 0; }
  template <class T>
  std::array<T, 2> parameters(T x, T y, T) const {
    return {length * space.share(x, y), y};
  }
  ParameterBox over(const Surface& surface, const Box& reach) const;
};

/// x, and y less the edge's.
struct BevelChart {
  WorkedEdge edge;

  Point at(double u, double v) const { return {u, v + edge.side * edge.reach(u)}; }
  double rise(double) const { return 0; }
  template <class T>
  std::array<T, 2> parameters(T x, T y, T) const {
    return {x, y - double(edge.side) * edge.reach(x)};
  }
  ParameterBox over(const Surface& surface, const Box& reach) const;
};

/// x, and the way about the axis from the upright.
struct RollChart {
  WorkedEdge edge;

  Point at(double u, double v) const {
    return {u, edge.side * (edge.reach(u) - edge.roll) + edge.roll * std::sin(v / edge.roll)};
  }
  double rise(double v) const { return edge.roll * std::cos(v / edge.roll); }
  template <class T>
  std::array<T, 2> parameters(T x, T y, T above) const {
    using std::atan2;
    return {x, edge.roll * atan2(y - double(edge.side) * (edge.reach(x) - T{edge.roll}), above)};
  }
  ParameterBox over(const Surface& surface, const Box& reach) const;
};

/// `at`: the place from above. `rise`: its height over the foot, which is the axis of a roll and else the form itself.
/// `parameters`: of a place `above` its foot; T is double or a jet. `over`: a rectangle a little larger than what lies
/// over the box.
using FormChart = std::variant<SpaceChart, BevelChart, RollChart>;

/// The chart of a scalloped space (form > 0) or a bevel (form < 0), as in FormBend; of the roll of a worked edge.
FormChart chart_of_form(const Surface& surface, int form);
FormChart chart_of_roll(const Surface& surface, int edge);

}  // namespace sagitta
