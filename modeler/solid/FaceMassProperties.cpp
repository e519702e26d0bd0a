#include "solid/FaceMassProperties.hpp"

#include <BRepAdaptor_Curve2d.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <TColStd_Array1OfReal.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <array>
#include <cmath>
#include <gp_Vec.hxx>
#include <math.hxx>
#include <math_Vector.hxx>
#include <memory>
#include <vector>

namespace sagitta {
namespace {

/// Area, volume and moment of the cone: what is integrated together.
using Sums = std::array<double, 5>;

void add(Sums& to, const Sums& more, double weight = 1) {
  for (std::size_t i = 0; i < to.size(); ++i) to[i] += weight * more[i];
}

/// Points and weights on [-1, 1].
struct Rule {
  explicit Rule(int points) : at(1, points), weight(1, points) {
    math::GaussPoints(points, at);
    math::GaussWeights(points, weight);
  }
  math_Vector at, weight;
};

const Rule& rule_of(int points) {
  constexpr int most = 24;
  static const std::vector<Rule> rules = [] {
    std::vector<Rule> all;
    for (int n = 1; n <= most; ++n) all.emplace_back(n);
    return all;
  }();
  return rules[static_cast<std::size_t>(std::clamp(points, 1, most) - 1)];
}

/// Points of a rule that is exact along u: the integrand is a product of four places and derivatives. An arc of half a
/// turn, and a rational span, are smooth enough for as many as are here.
int points_along_u(const BRepAdaptor_Surface& surface) {
  constexpr int for_arcs = 16;
  switch (surface.GetType()) {
    case GeomAbs_Plane:
      return 1;
    case GeomAbs_BSplineSurface:
    case GeomAbs_BezierSurface:
      return surface.IsURational() ? for_arcs : 2 * surface.UDegree() + 1;
    default:
      return for_arcs;
  }
}

class Integral {
 public:
  Integral(const TopoDS_Face& face, const gp_XYZ& from)
      : face_(TopoDS::Face(face.Oriented(TopAbs_FORWARD))),
        surface_(face_, false),
        from_(from),
        across_(rule_of(points_along_u(surface_))) {
    TColStd_Array1OfReal knots(1, surface_.NbUIntervals(GeomAbs_CN) + 1);
    surface_.UIntervals(knots, GeomAbs_CN);
    knots_.assign(knots.begin(), knots.end());
  }

  Sums run() {
    for (TopExp_Explorer it(face_, TopAbs_EDGE); it.More(); it.Next()) take(TopoDS::Edge(it.Current()));
    double area = 0, reach = 0;
    for (const Stretch& stretch : stretches_) {
      area += std::abs(stretch.sums[0]);
      reach = std::max(reach, distance_of(stretch));
    }
    const double volume = area * reach, moment = volume * reach;
    scale_ = {area, volume, moment, moment, moment};
    Sums all{};
    for (const Stretch& stretch : stretches_) add(all, stretch.exact ? stretch.sums : agreed(stretch, 0), stretch.sign);
    return all;
  }

 private:
  /// A part of an edge's pcurve without knots.
  struct Stretch {
    const BRepAdaptor_Curve2d* pcurve = nullptr;
    double from = 0, to = 0;
    Sums sums{};
    double sign = 1;
    bool exact = false;  ///< the sums are right as they are
  };

  static constexpr int few_points = 7, points = 10, points_of_quadratic = 2;

  void take(const TopoDS_Edge& edge) {
    const auto& pcurve = pcurves_.emplace_back(std::make_unique<BRepAdaptor_Curve2d>(edge, face_));
    if (stretches_.empty()) start_ = pcurve->Value(pcurve->FirstParameter()).X();
    if (runs_along_u(*pcurve)) return;
    const bool exact = is_quadratic(*pcurve);
    TColStd_Array1OfReal ends(1, pcurve->NbIntervals(GeomAbs_CN) + 1);
    pcurve->Intervals(ends, GeomAbs_CN);
    for (int i = 1; i < ends.Upper(); ++i) {
      const double sign = edge.Orientation() == TopAbs_REVERSED ? -1.0 : 1.0;
      Stretch stretch{pcurve.get(), ends(i), ends(i + 1), {}, sign, exact};
      stretch.sums = along(*stretch.pcurve, stretch.from, stretch.to, exact ? points_of_quadratic : points);
      stretches_.push_back(stretch);
    }
  }

  /// By Green's theorem the integral along such a line is nothing.
  static bool runs_along_u(const BRepAdaptor_Curve2d& pcurve) {
    return pcurve.GetType() == GeomAbs_Line && pcurve.Line().Direction().Y() == 0;
  }

  /// Whether what is integrated along it is a polynomial of no more than the third degree: a line on a plane, where the
  /// moment is linear and its integral along u quadratic, or a line beside the axis of a cylinder.
  bool is_quadratic(const BRepAdaptor_Curve2d& pcurve) const {
    if (pcurve.GetType() != GeomAbs_Line) return false;
    const GeomAbs_SurfaceType type = surface_.GetType();
    return type == GeomAbs_Plane || (type == GeomAbs_Cylinder && pcurve.Line().Direction().X() == 0);
  }

  /// From the point to where a stretch begins.
  double distance_of(const Stretch& stretch) const {
    const gp_Pnt2d p = stretch.pcurve->Value(stretch.from);
    return (surface_.Value(p.X(), p.Y()).XYZ() - from_).Modulus();
  }

  /// The stretch's integral, halved until a rule of fewer points says the same.
  Sums agreed(const Stretch& whole, int depth) const {
    constexpr int deepest = 24;
    constexpr double agreement = 1e-10;
    const Sums rough = along(*whole.pcurve, whole.from, whole.to, few_points);
    bool same = true;
    for (std::size_t i = 0; i < rough.size(); ++i)
      same = same && std::abs(rough[i] - whole.sums[i]) <= agreement * scale_[i];
    if (same || depth == deepest) return whole.sums;
    Sums both{};
    const double middle = (whole.from + whole.to) / 2;
    for (const auto& [from, to] : {std::pair{whole.from, middle}, std::pair{middle, whole.to}})
      add(both, agreed({whole.pcurve, from, to, along(*whole.pcurve, from, to, points), whole.sign}, depth + 1));
    return both;
  }

  Sums along(const BRepAdaptor_Curve2d& pcurve, double from, double to, int count) const {
    const Rule& rule = rule_of(count);
    Sums sums{};
    for (int i = 1; i <= count; ++i) {
      gp_Pnt2d p;
      gp_Vec2d slope;
      pcurve.D1((from + to) / 2 + rule.at(i) * (to - from) / 2, p, slope);
      if (slope.Y() != 0) add(sums, across(p.X(), p.Y()), rule.weight(i) * slope.Y() * (to - from) / 2);
    }
    return sums;
  }

  /// From the fixed u to the border.
  Sums across(double u, double v) const {
    const double low = std::min(start_, u), high = std::max(start_, u), sign = u < start_ ? -1 : 1;
    Sums sums{};
    double begin = low;
    for (auto knot = std::upper_bound(knots_.begin(), knots_.end(), low); begin < high; ++knot) {
      const double end = knot < knots_.end() ? std::min(*knot, high) : high;
      for (int i = across_.at.Lower(); i <= across_.at.Upper(); ++i)
        add(sums, there((begin + end) / 2 + across_.at(i) * (end - begin) / 2, v),
            sign * across_.weight(i) * (end - begin) / 2);
      begin = end;
      if (knot == knots_.end()) break;
    }
    return sums;
  }

  /// Of the surface a unit of its parameters. A cone's centroid lies three quarters of the way to its base.
  Sums there(double u, double v) const {
    gp_Pnt p;
    gp_Vec du, dv;
    surface_.D1(u, v, p, du, dv);
    const gp_XYZ normal = du.XYZ().Crossed(dv.XYZ()), way = p.XYZ() - from_;
    const double volume = way.Dot(normal) / 3;
    return {normal.Modulus(), volume, 0.75 * volume * way.X(), 0.75 * volume * way.Y(), 0.75 * volume * way.Z()};
  }

  TopoDS_Face face_;
  BRepAdaptor_Surface surface_;
  gp_XYZ from_;
  const Rule& across_;
  double start_ = 0;           ///< the fixed u
  std::vector<double> knots_;  ///< of the surface, along u
  std::vector<std::unique_ptr<BRepAdaptor_Curve2d>> pcurves_;
  std::vector<Stretch> stretches_;
  Sums scale_{};
};

}  // namespace

FaceMassProperties face_mass_properties(const TopoDS_Face& face, const gp_XYZ& from) {
  const Sums sums = Integral(face, from).run();
  const double sign = face.Orientation() == TopAbs_REVERSED ? -1 : 1;
  return {sums[0], sign * sums[1], sign * gp_XYZ(sums[2], sums[3], sums[4])};
}

}  // namespace sagitta
