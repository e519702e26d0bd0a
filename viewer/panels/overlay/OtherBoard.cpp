#include "overlay/OtherBoard.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "overlay/BoardMarks.hpp"
#include "widgets/PlanDrawing.hpp"

namespace sagitta::viewer {

namespace {

constexpr double over = 0.05;      ///< mm above the surface that the lines lie
constexpr double longest = 20;     ///< mm of a line that may be drawn straight: the surface is curved
constexpr float thickness = 1.5f;  // units

/// On the playing surface; beside it, at the height of its edge.
Vec on(const Surface& surface, Point p) {
  const double z = surface.exists(p.x, p.y) ? surface.height(p) : surface.thickness;
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z + over)};
}

void draw_line(const PictureState& state, const Surface& surface, Point from, Point to) {
  const int steps = std::max(1, static_cast<int>(std::ceil(distance(from, to) / longest)));
  std::vector<ImVec2> pixels;
  for (int i = 0; i <= steps; ++i) {
    const auto at = in_window(state.view.camera, on(surface, between(from, to, 1.0 * i / steps)), state.low);
    if (!at) return;
    pixels.push_back(*at);
  }
  ImGui::GetWindowDrawList()->AddPolyline(pixels.data(), static_cast<int>(pixels.size()), state.ui.theme.accent, 0,
                                          state.ui.px(thickness));
}

}  // namespace

void draw_other_board(const PictureState& state) {
  const auto& other = state.results.comparison;
  if (!state.view.other || !other || !other->model || !other->model->prepared || !state.results.laid_out()) return;
  const Surface& surface = state.results.good->prepared->surface();
  const Inlays* inlays = other->model->fitted ? &other->model->fitted->inlays : nullptr;
  const auto lines = telling_lines(other->model->prepared->layout(), inlays);
  for (const auto& line : lines)
    for (std::size_t i = 0; i + 1 < line.size(); ++i) draw_line(state, surface, line[i], line[i + 1]);
  state.ui.note_area("other board", state.low, state.low, std::to_string(lines.size()));
}

}  // namespace sagitta::viewer
