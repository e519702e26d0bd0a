#include "panels/BoardMarks.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "panels/Decisions.hpp"
#include "panels/Dimensions.hpp"

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

void draw_dimension(Desk& desk, ImVec2 low, const Dimension& d, Labels& labels) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const auto a = in_window(desk.view.camera, d.a, low), b = in_window(desk.view.camera, d.b, low);
  if (!a || !b) return;
  const ImU32 ink = desk.ui.theme.accent;
  const float thick = desk.ui.px(1.5f), half_text = ImGui::CalcTextSize(d.text.c_str()).x / 2;
  if (d.a == d.b) {
    const ImVec2 over(a->x, a->y - desk.ui.px(34));
    paint->AddCircleFilled(*a, desk.ui.px(3), ink);
    paint->AddLine(*a, over, ink, thick);
    return labels.put(over, d.text, *a);
  }
  paint->AddLine(*a, *b, ink, thick);
  ImVec2 along = *b - *a;
  const float l = std::hypot(along.x, along.y);
  along = l > 0 ? ImVec2(along.x / l, along.y / l) : ImVec2(1, 0);
  if (d.text.empty()) return;
  const float half_tick = std::clamp(l / 2, desk.ui.px(2), desk.ui.px(6));
  tick(paint, *a, along, half_tick, ink, thick);
  tick(paint, *b, along, half_tick, ink, thick);
  const ImVec2 middle((a->x + b->x) / 2, (a->y + b->y) / 2);
  const bool room = l > 2 * half_text + desk.ui.px(24);
  labels.put(room ? middle : ImVec2(std::max(a->x, b->x) + half_text + desk.ui.px(14), middle.y), d.text, middle);
}

void draw_dimensions(Desk& desk, ImVec2 low, Labels& labels) {
  if (!desk.good || !desk.good->layout || desk.view.decision < 0 || desk.view.marked) return;
  std::string key = desk.rows.in_hand();
  if (group_of_key(key) != desk.view.decision) {
    const auto& group = decision_groups()[static_cast<std::size_t>(desk.view.decision)];
    key = std::string(group.blocks.front().lines.front().key);
    if (desk.view.decision == 2) key = "board.width";
  }
  for (const Dimension& d :
       dimensions_for(key, desk.good->board, *desk.good->layout, desk.good->surface, desk.manner())) {
    draw_dimension(desk, low, d, labels);
    desk.ui.note_area("dimension", low, low, d.text);
  }
}

std::string measured_words(const Measured& m, const Manner& manner) {
  std::string text = shown(m.straight, manner);
  if (m.faces) text = shown(*m.faces, manner) + " between the faces, " + text + " straight";
  return text + "  (along " + shown_bare(m.along, manner) + ", across " + shown_bare(m.across, manner) + ", up " +
         shown_bare(m.up, manner) + ")";
}

void draw_measurement(Desk& desk, ImVec2 low, Labels& labels) {
  const auto& picks = desk.view.picks;
  if (!desk.view.measuring || picks.empty()) return;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  for (const Picked& p : picks)
    if (const auto at = in_window(desk.view.camera, p.place, low)) {
      paint->AddCircle(*at, desk.ui.px(5), desk.ui.theme.accent, 0, desk.ui.px(1.5f));
      paint->AddCircleFilled(*at, desk.ui.px(2), desk.ui.theme.accent);
    }
  if (picks.size() < 2) return;
  const std::string text = measured_words(measure(picks[0], picks[1]), desk.manner());
  draw_dimension(desk, low, {picks[0].place, picks[1].place, text}, labels);
  desk.ui.note_area("measured", low, low, text);
}

std::optional<ImVec2> plane_grip(const Desk& desk, ImVec2 low) {
  if (!desk.view.cutting || !desk.good || !desk.good->layout) return std::nullopt;
  const double half = desk.good->layout->half_width(desk.view.cut) + 10;
  return in_window(
      desk.view.camera,
      {static_cast<float>(desk.view.cut), static_cast<float>(-half), static_cast<float>(desk.good->surface.thickness)},
      low);
}

void draw_cutting_plane(Desk& desk, ImVec2 low) {
  const auto grip = plane_grip(desk, low);
  if (!grip) return;
  const auto x = static_cast<float>(desk.view.cut);
  const auto half = static_cast<float>(desk.good->layout->half_width(desk.view.cut) + 10);
  const auto high = static_cast<float>(desk.good->surface.thickness + 4);
  const Vec corners[] = {{x, -half, -2}, {x, half, -2}, {x, half, high}, {x, -half, high}};
  ImVec2 points[4];
  for (std::size_t i = 0; i < 4; ++i) {
    const auto p = in_window(desk.view.camera, corners[i], low);
    if (!p) return;
    points[i] = *p;
  }
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddPolyline(points, 4, desk.ui.theme.accent, ImDrawFlags_Closed, desk.ui.px(1.5f));
  paint->AddCircleFilled(*grip, desk.ui.px(7), desk.ui.theme.accent);
  paint->AddCircleFilled(*grip, desk.ui.px(3), desk.ui.theme.paper);
  desk.ui.note_area("cutting plane", ImVec2(grip->x - desk.ui.px(8), grip->y - desk.ui.px(8)),
                    ImVec2(grip->x + desk.ui.px(8), grip->y + desk.ui.px(8)), shown(desk.view.cut, desk.manner()));
}

}  // namespace sagitta::viewer
