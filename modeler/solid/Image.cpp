#include "solid/Image.hpp"

namespace sagitta {

Handle(Geom2d_BSplineCurve) image_of(const Fitted<2>& fitted) {
  TColgp_Array1OfPnt2d poles(1, static_cast<int>(fitted.poles.size()));
  for (int i = 1; i <= poles.Length(); ++i) poles(i) = gp_Pnt2d(fitted.poles[i - 1][0], fitted.poles[i - 1][1]);
  TColStd_Array1OfReal knots(1, fitted.pieces + 1);
  TColStd_Array1OfInteger multiplicities(1, fitted.pieces + 1);
  for (int i = 0; i <= fitted.pieces; ++i) {
    const double share = static_cast<double>(i) / fitted.pieces;
    knots(i + 1) = i == fitted.pieces ? fitted.last : fitted.first + (fitted.last - fitted.first) * share;
    multiplicities(i + 1) = i == 0 || i == fitted.pieces ? 6 : 3;
  }
  return new Geom2d_BSplineCurve(poles, knots, multiplicities, 5);
}

}  // namespace sagitta
