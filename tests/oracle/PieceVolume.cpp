#include "oracle/PieceVolume.hpp"

#include <algorithm>

#include "oracle/Events.hpp"
#include "oracle/Gauss.hpp"
#include "oracle/Hole.hpp"
#include "oracle/Section.hpp"

namespace sagitta::oracle {
namespace {

/// Absolute, for a stretch; a hundred stretches stay far under a millionth of a cubic millimetre.
constexpr double stretch_tolerance = 1e-9;

Work floored(Work work, const Loop& region, double level) {
  work.cuts.push_back({region, Cut::Floor::level, level, "piece"});
  return work;
}

}  // namespace

Volume volume_within(const Work& work, const Loop& region, double low, double high) {
  const Work upper = floored(work, region, high), lower = floored(work, region, low);
  const Sections above(upper), below(lower);
  std::vector<double> xs = events(above);
  for (const double x : events(below)) xs.push_back(x);
  const Box box = bounds(region);
  std::erase_if(xs, [&](double x) { return x < box.low.x || x > box.high.x; });
  std::sort(xs.begin(), xs.end());
  xs.erase(std::unique(xs.begin(), xs.end()), xs.end());
  Volume sum;
  const auto between = [&](double x) { return above.area(x) - below.area(x); };
  for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
    const Integral part = integral(between, xs[i], xs[i + 1], stretch_tolerance);
    sum.value += part.value;
    sum.change += part.change;
  }
  for (std::size_t i = 0; i < work.holes.size(); ++i)
    sum.value -= hole_volume(upper, above, i) - hole_volume(lower, below, i);
  return sum;
}

}  // namespace sagitta::oracle
