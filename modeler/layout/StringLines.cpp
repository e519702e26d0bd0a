#include "layout/StringLines.hpp"

#include <algorithm>

#include "layout/Measure.hpp"

namespace sagitta {
namespace {

std::vector<double> by_centres(int count, double spread) {
  std::vector<double> y;
  for (int i = 0; i < count; ++i) y.push_back(count == 1 ? 0 : spread * (static_cast<double>(i) / (count - 1) - 0.5));
  return y;
}

double gap(const std::vector<double>& gauges, double spread) {
  double filled = 0;
  for (std::size_t i = 1; i < gauges.size(); ++i) filled += (gauges[i - 1] + gauges[i]) / 2;
  return (spread - filled) / static_cast<double>(gauges.size() - 1);
}

std::vector<double> by_gaps(const std::vector<double>& gauges, double spread) {
  std::vector<double> y{-spread / 2};
  const double air = gap(gauges, spread);
  for (std::size_t i = 1; i + 1 < gauges.size(); ++i) y.push_back(y.back() + air + (gauges[i - 1] + gauges[i]) / 2);
  y.push_back(spread / 2);
  return y;
}

bool gauges_fit(const Strings& strings, Faults& faults) {
  if (static_cast<int>(strings.gauges.size()) != strings.count) {
    faults.push_back({FaultCode::wrong_count, "strings.gauges",
                      "equal gaps need one gauge for each of the " + std::to_string(strings.count) + " strings, not " +
                          std::to_string(strings.gauges.size()),
                      "list the gauges from bass to treble"});
    return false;
  }
  const double narrow = std::min(strings.nut_spread, strings.saddle_spread);
  if (strings.count < 2 || gap(strings.gauges, narrow) > 0) return true;
  faults.push_back({FaultCode::strings_overlap, "strings.gauges",
                    "strings of these gauges overlap by " + in_mm(-gap(strings.gauges, narrow)) +
                        " when their outer middles are " + in_mm(narrow) + " apart",
                    "give thinner strings or a larger spread"});
  return false;
}

}  // namespace

std::vector<LineSegment> place_strings(const Board& board, const Layout& layout, Faults& faults) {
  const Strings& strings = board.strings;
  if (strings.count < 1) {
    faults.push_back({FaultCode::wrong_count, "strings.count", "a board needs at least one string", ""});
    return {};
  }
  const bool gaps = strings.spacing == StringSpacing::equal_gaps && strings.count > 1;
  if (gaps && !gauges_fit(strings, faults)) return {};
  const auto at = [&](double spread) {
    return gaps ? by_gaps(strings.gauges, spread) : by_centres(strings.count, spread);
  };
  const std::vector<double> nut = at(strings.nut_spread), saddle = at(strings.saddle_spread);
  std::vector<LineSegment> lines;
  for (std::size_t i = 0; i < nut.size(); ++i) lines.push_back({{0, nut[i]}, {layout.mean_scale, saddle[i]}});
  return lines;
}

}  // namespace sagitta
