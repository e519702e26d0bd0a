#include "overlay/BoardMarks.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "decisions/Decisions.hpp"
#include "decisions/Dimensions.hpp"

namespace sagitta::viewer {

namespace {

void tick(ImDrawList* paint, ImVec2 at, ImVec2 along, float half, ImU32 ink, float thick) {
  const ImVec2 square(-along.y * half, along.x * half);
  paint->AddLine(at - square, at + square, ink, thick);
}

}  // namespace

std::optional<ImVec2> in_window(const Camera& camera, Vec p, ImVec2 low) {
  const auto pixel = camera.project(p);
  if (!pixel) return std::nullopt;
  return ImVec2(low.x + pixel->x, low.y + pixel->y);
}

void draw_dimension(const PictureState& state, const Dimension& d, Labels& labels) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const auto a = in_window(state.view.camera, d.a, state.low), b = in_window(state.view.camera, d.b, state.low);
  if (!a || !b) return;
  const ImU32 ink = state.ui.theme.accent;
  const float thick = state.ui.px(1.5f), half_text = ImGui::CalcTextSize(d.text.c_str()).x / 2;
  if (d.a == d.b) {
    const ImVec2 over(a->x, a->y - state.ui.px(34));
    paint->AddCircleFilled(*a, state.ui.px(3), ink);
    paint->AddLine(*a, over, ink, thick);
    return labels.put(over, d.text, *a);
  }
  paint->AddLine(*a, *b, ink, thick);
  ImVec2 along = *b - *a;
  const float l = std::hypot(along.x, along.y);
  along = l > 0 ? ImVec2(along.x / l, along.y / l) : ImVec2(1, 0);
  if (d.text.empty()) return;
  const float half_tick = std::clamp(l / 2, state.ui.px(2), state.ui.px(6));
  tick(paint, *a, along, half_tick, ink, thick);
  tick(paint, *b, along, half_tick, ink, thick);
  const ImVec2 middle((a->x + b->x) / 2, (a->y + b->y) / 2);
  const bool room = l > 2 * half_text + state.ui.px(24);
  labels.put(room ? middle : ImVec2(std::max(a->x, b->x) + half_text + state.ui.px(14), middle.y), d.text, middle);
}

void draw_dimensions(const PictureState& state, std::string key, Labels& labels) {
  if (!state.results.good || !state.results.good->prepared || state.view.decision < 0 || state.view.marked) return;
  if (group_of_key(key) != state.view.decision) {
    const auto& group = decision_groups()[static_cast<std::size_t>(state.view.decision)];
    key = std::string(group.blocks.front().lines.front().key);
    if (state.view.decision == 2) key = "board.width";
  }
  for (const Dimension& d : dimensions_for(key, *state.results.good->prepared, state.manner)) {
    draw_dimension(state, d, labels);
    state.ui.note_area("dimension", state.low, state.low, d.text);
  }
}

std::string measured_words(const Measured& m, const Manner& manner) {
  std::string text = shown(m.straight, manner);
  if (m.faces) text = shown(*m.faces, manner) + " between the faces, " + text + " straight";
  return text + "  (along " + shown_bare(m.along, manner) + ", across " + shown_bare(m.across, manner) + ", up " +
         shown_bare(m.up, manner) + ")";
}

void draw_measurement(const PictureState& state, Labels& labels) {
  const auto& picks = state.view.picks;
  if (!state.view.measuring || picks.empty()) return;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  for (const Picked& p : picks)
    if (const auto at = in_window(state.view.camera, p.place, state.low)) {
      paint->AddCircle(*at, state.ui.px(5), state.ui.theme.accent, 0, state.ui.px(1.5f));
      paint->AddCircleFilled(*at, state.ui.px(2), state.ui.theme.accent);
    }
  if (picks.size() < 2) return;
  const std::string text = measured_words(measure(picks[0], picks[1]), state.manner);
  draw_dimension(state, {picks[0].place, picks[1].place, text}, labels);
  state.ui.note_area("measured", state.low, state.low, text);
}

std::optional<ImVec2> plane_grip(const PictureState& state) {
  if (!state.view.cutting || !state.results.good || !state.results.good->prepared) return std::nullopt;
  const double low = state.results.good->prepared->layout().edge(0, state.view.cut) + 10;
  return in_window(state.view.camera,
                   {static_cast<float>(state.view.cut), static_cast<float>(-low),
                    static_cast<float>(state.results.good->prepared->surface().thickness)},
                   state.low);
}

void draw_cutting_plane(const PictureState& state) {
  const auto grip = plane_grip(state);
  if (!grip) return;
  const auto x = static_cast<float>(state.view.cut);
  const Layout& layout = state.results.good->prepared->layout();
  const auto low = static_cast<float>(-layout.edge(0, state.view.cut) - 10);
  const auto high_side = static_cast<float>(layout.edge(1, state.view.cut) + 10);
  const auto high = static_cast<float>(state.results.good->prepared->surface().thickness + 4);
  const Vec corners[] = {{x, low, -2}, {x, high_side, -2}, {x, high_side, high}, {x, low, high}};
  ImVec2 points[4];
  for (std::size_t i = 0; i < 4; ++i) {
    const auto p = in_window(state.view.camera, corners[i], state.low);
    if (!p) return;
    points[i] = *p;
  }
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddPolyline(points, 4, state.ui.theme.accent, ImDrawFlags_Closed, state.ui.px(1.5f));
  paint->AddCircleFilled(*grip, state.ui.px(7), state.ui.theme.accent);
  paint->AddCircleFilled(*grip, state.ui.px(3), state.ui.theme.paper);
  state.ui.note_area("cutting plane", ImVec2(grip->x - state.ui.px(8), grip->y - state.ui.px(8)),
                     ImVec2(grip->x + state.ui.px(8), grip->y + state.ui.px(8)), shown(state.view.cut, state.manner));
}

}  // namespace sagitta::viewer
