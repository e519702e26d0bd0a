#include "scene/HeightSpan.hpp"

#include <algorithm>

#include "plan/OutlinedStage.hpp"

namespace sagitta::viewer {

namespace {
constexpr int stations = 64;
}

std::array<float, 2> height_span(const Layout& layout, const Surface& surface, const StageModel& stage) {
  const bool outlined = is_outlined(stage.stage);
  double low = outlined ? static_cast<double>(stage.body.high.z) : 0;
  for (int i = 0; outlined && i <= stations; ++i) {
    const double x = layout.nut_end + (layout.heel_end - layout.nut_end) * i / stations;
    for (const int side : {0, 1}) {
      const double y = (side == 0 ? -1 : 1) * layout.edge(side, x);
      if (surface.exists(x, y)) low = std::min(low, surface.height(x, y));
    }
  }
  return {static_cast<float>(low), stage.body.high.z};
}

}  // namespace sagitta::viewer
