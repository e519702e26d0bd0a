#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

/// The kernel's name for values that stay where they are.
template <class Value>
NCollection_Array1<Value> seen(const std::vector<Value>& values) {
  return {values.front(), 1, static_cast<int>(values.size())};
}

}  // namespace

Handle(Geom2d_BSplineCurve) pcurve_of(const HermiteSpline<2>& fitted) {
  std::vector<gp_Pnt2d> poles;
  poles.reserve(fitted.poles.size());
  for (const auto& [u, v] : fitted.poles) poles.emplace_back(u, v);
  return new Geom2d_BSplineCurve(seen(poles), seen(fitted.knots), seen(fitted.multiplicities), 5);
}

Handle(Geom_BSplineCurve) spline_of(const HermiteSpline<3>& fitted) {
  std::vector<gp_Pnt> poles;
  poles.reserve(fitted.poles.size());
  for (const auto& [x, y, z] : fitted.poles) poles.emplace_back(x, y, z);
  return new Geom_BSplineCurve(seen(poles), seen(fitted.knots), seen(fitted.multiplicities), 5);
}

Handle(Geom2d_BSplineCurve) height_pcurve(const Handle(Geom_BSplineCurve) & spline, double from) {
  const int degree = spline->Degree();
  TColStd_Array1OfReal flat(1, spline->NbPoles() + degree + 1);
  spline->KnotSequence(flat);
  TColgp_Array1OfPnt2d poles(1, spline->NbPoles());
  for (int i = 1; i <= spline->NbPoles(); ++i) {
    double abscissa = 0;
    for (int k = 1; k <= degree; ++k) abscissa += flat(i + k) / degree;
    poles(i) = gp_Pnt2d(from + abscissa, spline->Pole(i).Z());
  }
  TColStd_Array1OfReal knots(1, spline->NbKnots());
  TColStd_Array1OfInteger multiplicities(1, spline->NbKnots());
  spline->Knots(knots);
  spline->Multiplicities(multiplicities);
  return new Geom2d_BSplineCurve(poles, knots, multiplicities, degree);
}

}  // namespace sagitta
