#include "plan/LooseWood.hpp"

#include <algorithm>

#include "layout/Measure.hpp"
#include "plan/DisconnectedComponent.hpp"

namespace sagitta {
namespace {

bool may_free(const Feature& f) {
  return f.role == Feature::Role::pin || f.role == Feature::Role::hole || f.kind == Source::Kind::cut;
}

/// How far off a feature p lies, 0 within it.
double way_to(const Feature& f, Point p) {
  if (f.shape) return std::max(0.0, distance(RoundedPolygon{{p}, 0}, *f.shape));
  if (winding(f.loop, p) != 0) return 0;
  constexpr int stations = 8;
  double least = 1e300;
  for (const CurveSegment& segment : f.loop)
    for (int i = 0; i <= stations; ++i)
      least = std::min(least, distance(p, segment.at(static_cast<double>(i) / stations)));
  return least;
}

}  // namespace

Faults loose_wood(const Plan& plan, const std::vector<Feature>& features, Units units) {
  if (std::none_of(features.begin(), features.end(), may_free)) return {};
  const auto loose = disconnected_cell(plan);
  if (!loose) return {};
  const HalfEdge border = plan.map.faces[loose->face].loops.front();
  const Point at = plan.map.at(plan.map.edges[border >> 1], 0.5);
  const Feature* freeing = nullptr;
  for (const Feature& f : features)
    if (may_free(f) && (!freeing || way_to(f, at) < way_to(*freeing, at))) freeing = &f;
  if (loose->over_hole) freeing = &features[static_cast<std::size_t>(plan.cells[loose->face].hole_feature)];
  const std::string place = "x = " + in_units(units, at.x) + ", y = " + in_units(units, at.y);
  const bool own = freeing->kind == Source::Kind::cut;
  return {{FaultCode::wood_loose, freeing->key,
           freeing->name + (own ? ": with it, wood at " : ": between it and the cuts above, a crumb of wood at ") +
               place + " comes loose: nothing holds it",
           own ? "leave wood that joins it to the board" : "move it, use a smaller one, or bore less deep",
           freeing->id}};
}

}  // namespace sagitta
