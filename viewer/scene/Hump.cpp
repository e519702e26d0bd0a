#include "scene/Hump.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

namespace {

constexpr int stations = 64;
constexpr double drawn_height = 8, least_hump = 1e-4;

Hump hump_under(const LineSegment& string, double end, const Surface& surface) {
  Hump hump;
  const auto at = [&](double x) { return between(string.a, string.b, (x - string.a.x) / (string.b.x - string.a.x)); };
  const double first = surface.height(at(0)), last = surface.height(at(end));
  for (int i = 0; i <= stations; ++i) {
    const double part = 1.0 * i / stations;
    const Point p = at(part * end);
    hump.places.push_back(p);
    hump.line.push_back(first + part * (last - first));
    hump.rise.push_back(surface.height(p) - hump.line.back());
    if (std::abs(hump.rise.back()) > std::abs(hump.rise[hump.most])) hump.most = hump.rise.size() - 1;
  }
  return hump;
}

}  // namespace

std::vector<Hump> humps_of(const Layout& layout, const Surface& surface) {
  std::vector<Hump> humps;
  if (layout.frets.size() < 2) return humps;
  double end = layout.frets.back().middle.x;
  if (surface.fall_start) end = std::min(end, *surface.fall_start);
  if (end <= 0) return humps;
  for (const LineSegment& string : layout.strings) humps.push_back(hump_under(string, end, surface));
  return humps;
}

double hump_scale(const std::vector<Hump>& humps) {
  double most = least_hump;
  for (const Hump& hump : humps) most = std::max(most, std::abs(hump.rise[hump.most]));
  const double wanted = drawn_height / most, ten = std::pow(10, std::floor(std::log10(wanted)));
  return wanted / ten >= 5 ? 5 * ten : wanted / ten >= 2 ? 2 * ten : ten;
}

}  // namespace sagitta::viewer
