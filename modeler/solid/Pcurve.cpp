#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

struct Knots {
  TColStd_Array1OfReal values;
  TColStd_Array1OfInteger multiplicities;
};

template <std::size_t N>
Knots knots_of(const HermiteSpline<N>& fitted) {
  const int n = static_cast<int>(fitted.knots.size());
  Knots knots{{1, n}, {1, n}};
  for (int i = 0; i < n; ++i) {
    knots.values(i + 1) = fitted.knots[i];
    knots.multiplicities(i + 1) = fitted.multiplicities[i];
  }
  return knots;
}

}  // namespace

Handle(Geom2d_BSplineCurve) pcurve_of(const HermiteSpline<2>& fitted) {
  TColgp_Array1OfPnt2d poles(1, static_cast<int>(fitted.poles.size()));
  for (int i = 1; i <= poles.Length(); ++i) poles(i) = gp_Pnt2d(fitted.poles[i - 1][0], fitted.poles[i - 1][1]);
  const Knots knots = knots_of(fitted);
  return new Geom2d_BSplineCurve(poles, knots.values, knots.multiplicities, 5);
}

Handle(Geom_BSplineCurve) spline_of(const HermiteSpline<3>& fitted) {
  TColgp_Array1OfPnt poles(1, static_cast<int>(fitted.poles.size()));
  for (int i = 1; i <= poles.Length(); ++i) {
    const auto& p = fitted.poles[i - 1];
    poles(i) = gp_Pnt(p[0], p[1], p[2]);
  }
  const Knots knots = knots_of(fitted);
  return new Geom_BSplineCurve(poles, knots.values, knots.multiplicities, 5);
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
