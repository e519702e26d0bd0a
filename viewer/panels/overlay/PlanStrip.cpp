#include "overlay/PlanStrip.hpp"

#include <imgui_internal.h>

#include <cmath>

#include "decisions/FindingMarks.hpp"
#include "overlay/InlayMarks.hpp"
#include "overlay/Selecting.hpp"
#include "widgets/Veil.hpp"

namespace sagitta::viewer {

namespace {

constexpr float reach = 5;          // pixels beside a slot that still mean it
constexpr float least_below = 300;  // units that the picture keeps
constexpr float strip_height = 92;  // units
constexpr float margin_x = 14, margin_y = 9;

PlanMarks marks_of(const HandState& state, const Layout& layout) {
  PlanMarks marks;
  marks.named = state.view.named;
  if (state.view.cutting) marks.cut = state.view.cut;
  if (const Finding* finding = marked_finding(state.view, state.results)) {
    const double x = std::clamp(finding->at[0], layout.nut_end, layout.heel_end);
    marks.finding.push_back({x, finding->at[1]});
  }
  return marks;
}

/// What lies at a place of the plan: a piece, else a slot, else the playing surface; nothing beside the board.
FeatureId feature_at_place(const PreparedBoard& prepared, Point place, double near) {
  const Layout& layout = prepared.layout();
  if (const InlayPiece* piece = piece_at(prepared.inlays(), place))
    for (const Marker& marker : layout.markers)
      if (marker.inlay == piece->inlay && marker.fret == piece->fret) return id_of(marker);
  for (const Slot& slot : layout.slots) {
    const Point along = unit(slot.treble_end - slot.bass_end), off = place - slot.bass_end;
    const double beside = std::abs(cross(along, off)), far = dot(along, off);
    if (beside <= near && far >= 0 && far <= distance(slot.bass_end, slot.treble_end)) return id_of(slot);
  }
  if (winding(layout.outline, place) == 0) return {};
  return {.kind = FeatureId::Kind::playing_surface};
}

}  // namespace

float plan_strip_height(const Ui& ui, float room) {
  const float height = ui.px(strip_height);
  return room - height >= ui.px(least_below) ? height : 0;
}

PlanFrame plan_strip_frame(const Ui& ui, const Layout& layout, ImVec2 low, ImVec2 high) {
  const ImVec2 margin(ui.px(margin_x), ui.px(margin_y));
  return plan_frame(layout, low + margin, high - margin);
}

void draw_plan_strip(const HandState& state, ImVec2 low, ImVec2 size) {
  const Ui& ui = state.ui;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const ImVec2 high = low + size;
  paint->AddRectFilled(low, high, ui.theme.paper);
  paint->AddLine(ImVec2(low.x, high.y), high, ui.theme.line);
  ImGui::SetCursorScreenPos(low);
  const bool clicked = ImGui::InvisibleButton("plan", size);
  state.ui.note("plan");
  if (!state.results.laid_out()) return;
  const PreparedBoard& prepared = *state.results.good->prepared;
  const PlanFrame frame = plan_strip_frame(ui, prepared.layout(), low, high);
  PlanMarks marks = marks_of(state, prepared.layout());
  marks.inlays = &prepared.inlays();
  draw_plan(paint, ui.theme, prepared.board(), prepared.layout(), frame, marks);
  if (state.results.behind.picture) draw_veil(low, high, ui.theme.paper);
  if (!clicked) return;
  const Point place = frame.place(ImGui::GetIO().MousePos);
  const FeatureId feature = feature_at_place(prepared, place, static_cast<double>(ui.px(reach) / frame.scale));
  if (feature.kind == FeatureId::Kind::none) return select_nothing(state.view, state.rows);
  state.view.say(feature_name(feature));
  select_feature(state, feature, place);
}

}  // namespace sagitta::viewer
