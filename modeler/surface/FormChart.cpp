#include "surface/FormChart.hpp"

#include <algorithm>
#include <numbers>

namespace sagitta {
namespace {

/// What a patch is drawn larger than its face, of its length and of its width.
constexpr double margin = 0.01;

/// How far inside the edge its face begins, at most, over the box.
double beginning(const Surface& surface, const WorkedEdge& edge, const Box& reach) {
  double begin = 0;
  for (const double x : {reach.low.x, (reach.low.x + reach.high.x) / 2, reach.high.x})
    begin = std::max(begin, edge.reach(x) - surface.begins(edge, x));
  return begin;
}

/// From `first` to `last` outward, along an edge.
ParameterBox beside(const WorkedEdge& edge, const Box& reach, double first, double last) {
  const double aside = margin * (reach.high.x - reach.low.x);
  const double low = reach.low.x - aside, high = reach.high.x + aside;
  return edge.side > 0 ? ParameterBox{low, high, first, last} : ParameterBox{low, high, -last, -first};
}

}  // namespace

ParameterBox SpaceChart::over(const Surface& surface, const Box& reach) const {
  const double wide = margin * (reach.high.y - reach.low.y);
  double most = std::max(std::abs(reach.low.y), std::abs(reach.high.y));
  if (!surface.flat) {  // no further than the playing surface reaches
    const double least = std::min(surface.radius(reach.low.x), surface.radius(reach.high.x));
    wide < (least - most) / 2 ? most += wide : most += (least - most) / 2;
  }
  return {-margin * length, (1 + margin) * length, std::max(reach.low.y - wide, -most),
          std::min(reach.high.y + wide, most)};
}

ParameterBox BevelChart::over(const Surface& surface, const Box& reach) const {
  const double begin = beginning(surface, edge, reach);
  return beside(edge, reach, -(1 + margin) * begin, margin * begin);
}

ParameterBox RollChart::over(const Surface& surface, const Box& reach) const {
  const double begin = beginning(surface, edge, reach);
  const double from = std::asin(std::clamp((edge.roll - begin) / edge.roll, -1.0, 1.0)) - margin;
  return beside(edge, reach, edge.roll * from, edge.roll * (std::numbers::pi / 2 + margin));
}

FormChart chart_of_form(const Surface& surface, int form) {
  if (form < 0) return BevelChart{surface.worked_edges[static_cast<std::size_t>(-1 - form)]};
  const ScallopedSpace& space = surface.scallops[static_cast<std::size_t>(form - 1)];
  return SpaceChart{space, space.width(0.0)};
}

FormChart chart_of_roll(const Surface& surface, int edge) {
  return RollChart{surface.worked_edges[static_cast<std::size_t>(edge)]};
}

}  // namespace sagitta
