#include "wood/EdgeStrips.hpp"

#include <algorithm>

#include "layout/OutlineReach.hpp"

namespace sagitta {
namespace {

constexpr int stations = 64;

double greatest_height(const Surface& surface, const LineSegment& edge) {
  double most = 0;
  for (int i = 0; i <= stations; ++i)
    most = std::max(most, surface.height(between(edge.a, edge.b, static_cast<double>(i) / stations)));
  return most;
}

}  // namespace

std::vector<EdgeStrip> edge_strips(const PreparedBoard& ready) {
  const Layout& layout = ready.layout();
  std::vector<EdgeStrip> strips;
  if (!ready.board().binding) return strips;
  const Binding& binding = *ready.board().binding;
  for (const LineSegment& edge : layout.edges) {
    const bool low = edge.a.y + edge.b.y < 0;
    Point along = unit(edge.b - edge.a);
    if (along.x < 0) along = -1 * along;
    const Point inward = low ? left_of(along) : -1 * left_of(along);
    const double height = binding.height > 0 ? binding.height : greatest_height(ready.surface(), edge);
    double from_edge = 0;
    const auto add = [&](int line, const std::string& material, double thickness) {
      const auto [from, to] = reach_in(layout.outline, edge.a + (from_edge + thickness / 2) * inward, along);
      strips.push_back({low ? FeatureId::lower : FeatureId::upper, line, material, thickness, height, to - from});
      from_edge += thickness;
    };
    add(-1, "", binding.width);
    for (std::size_t i = 0; i < binding.lines.size(); ++i)
      add(static_cast<int>(i), i < binding.line_materials.size() ? binding.line_materials[i] : "", binding.lines[i]);
  }
  return strips;
}

}  // namespace sagitta
