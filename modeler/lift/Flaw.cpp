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

}  // namespace sagitta
