#include "lift/Flaw.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace sagitta {
namespace {

std::array<double, 3> middle_of(const Shell& shell) {
  if (shell.vertices.empty()) return {};
  Box box;
  double low = shell.vertices.front().z, high = low;
  for (const ShellVertex& vertex : shell.vertices) {
    box.add(vertex.p);
    low = std::min(low, vertex.z);
    high = std::max(high, vertex.z);
  }
  const Point middle = between(box.low, box.high, 0.5);
  return {middle.x, middle.y, (low + high) / 2};
}

}  // namespace

std::optional<Flaw> volume_flaw(const Shell& shell, double found, double planned, double allowed) {
  if (std::abs(found - planned) <= allowed) return std::nullopt;
  std::ostringstream text;
  text.precision(12);
  text << "the volume is " << found << " mm3, the plan's " << planned << " mm3";
  return Flaw{Flaw::Kind::volume, text.str(), middle_of(shell), -1};
}

std::optional<Flaw> deviation_flaw(const Shell& shell, double found, double asked) {
  if (found <= asked) return std::nullopt;
  std::ostringstream text;
  text << "its triangles stray by up to " << found << " mm from the exact surface; " << asked << " mm was asked";
  return Flaw{Flaw::Kind::deviation, text.str(), middle_of(shell), -1};
}

std::optional<Flaw> coverage_flaw(const Plan& plan) {
  for (std::size_t i = 0; i < plan.features.size(); ++i) {
    const PlanFeature& cut = plan.features[i];
    if (std::abs(cut.covered - cut.area) <= 3 * plan.snap * cut.length) continue;
    std::ostringstream text;
    text.precision(12);
    text << "the cells of " << cut.name << " cover " << cut.covered << " mm2, its outline encloses " << cut.area
         << " mm2";
    Flaw flaw{Flaw::Kind::coverage, text.str(), {}, -1};
    for (const PlanEdge& edge : plan.map.edges)
      if (edge.source.feature == static_cast<int>(i)) {
        const Point p = plan.map.vertices[static_cast<std::size_t>(edge.from)];
        flaw.at = {p.x, p.y, 0};
      }
    return flaw;
  }
  return std::nullopt;
}

}  // namespace sagitta
