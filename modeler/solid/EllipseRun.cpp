#include "solid/EllipseRun.hpp"

#include <Geom_Ellipse.hxx>

#include "solid/Height.hpp"
#include "solid/WithinTurn.hpp"

namespace sagitta {
namespace {

constexpr double turn = 2 * std::numbers::pi;
}  // namespace

EllipseRun::EllipseRun(const OffsetEllipse& whole, const std::vector<CurveSegment>& run)
    : ellipse(whole.ellipse), off(whole.off), reversed(run.front().sweep < 0) {
  const Point from = reversed ? run.back().b : run.front().a, to = reversed ? run.front().a : run.back().b;
  first = within_turn(ellipse.nearest(from));
  last = first + within_turn(ellipse.nearest(to) - first);
  if (last <= turn + one_angle) return;
  ellipse = ellipse.from_other_end();
  first -= turn / 2;
  last -= turn / 2;
}

std::vector<double> EllipseRun::spans() const {
  constexpr double half = turn / 2, least = 1e-3;  // radians
  std::vector<double> all{first};
  const double reach = std::min(2 * ellipse.ratio, half / 4);
  for (double tip = half * std::floor(first / half); tip <= last + half; tip += half)
    for (const double t : {tip - reach, tip, tip + reach})
      if (off > 0 && t > all.back() + least && t < last - least) all.push_back(t);
  all.push_back(last);
  return all;
}

gp_Ax2 EllipseRun::axes(double z) const {
  return {gp_Pnt(ellipse.centre.x, ellipse.centre.y, z), gp::DZ(), gp_Dir(ellipse.major.x, ellipse.major.y, 0)};
}

EdgeCurve over_ellipse(const Surface& surface, const BoundingSurface& bound, const EllipseRun& arc) {
  const Ellipse e = arc.ellipse;
  const auto place = [e, off = arc.off, surface, bound](double t, std::size_t) {
    const Jet at{t, 1, 0}, c = cos(at), s = sin(at);
    Jet x = e.centre.x + e.major.x * c + e.minor().x * s, y = e.centre.y + e.major.y * c + e.minor().y * s;
    if (off > 0) {
      const Jet along = e.minor().x * c - e.major.x * s, up = e.minor().y * c - e.major.y * s;
      const Jet far = sqrt(along * along + up * up);
      x = x + off * (up / far);
      y = y - off * (along / far);
    }
    return std::array<Jet, 3>{x, y, height(surface, bound, x, y)};
  };
  EdgeCurve result;
  if (bound.kind == BoundingSurface::Kind::level && arc.off == 0) {
    result.curve = new Geom_Ellipse(arc.axes(bound.value), arc.major(), arc.minor());
    result.place = place;
    result.first = arc.first;
    result.last = arc.last;
  } else {
    result = fitted_curve(place, arc.spans());
  }
  result.reversed = arc.reversed;
  return result;
}

}  // namespace sagitta
