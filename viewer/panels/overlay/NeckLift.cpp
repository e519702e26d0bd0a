#include "overlay/NeckLift.hpp"

#include <imgui_internal.h>

#include <cmath>

#include "neck/NeckWords.hpp"
#include "overlay/BoardMarks.hpp"
#include "plan/OutlinedStage.hpp"

namespace sagitta::viewer {

namespace {

constexpr double off_edge = 9;  ///< mm from the board's edge out to the grip
constexpr float least_upright =
    0.1f;  ///< pixels for each mm; seen from above or below, the grip follows the pointer's y

Vec vec(double x, double y, double z) { return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)}; }

bool neck_shown(const PictureState& state) {
  const Results& results = state.results;
  return state.view.neck && results.laid_out() && is_outlined(state.view.stage) && results.good->fittings &&
         results.good->fittings->neck_as != NeckAs::none;
}

/// Where the grip stands on the board, at the height of its glue face.
Vec grip_place(const PictureState& state) {
  const Layout& layout = state.results.good->prepared->layout();
  const double x = layout.heel_end / 2;
  const bool low = state.view.camera.eye().y < 0;
  return vec(x, low ? -layout.edge(0, x) - off_edge : layout.edge(1, x) + off_edge, 0);
}

std::string unsure(const NeckShape& shape) {
  if (shape.place.other_hand && shape.place.sure) return "it fits the mirror image of this board, for the other hand";
  return shape.times != 1 ? unit_words(shape) : unsure_words(shape);
}

/// From the board's corners down to where they lie on the neck.
void draw_plumb_lines(const PictureState& state) {
  const Layout& layout = state.results.good->prepared->layout();
  const int side = state.view.camera.eye().y < 0 ? 0 : 1;
  for (const double x : {layout.nut_end, layout.heel_end}) {
    const double y = (side == 0 ? -1 : 1) * layout.edge(side, x);
    const auto a = in_window(state.view.camera, vec(x, y, 0), state.low);
    const auto b = in_window(state.view.camera, vec(x, y, -static_cast<double>(state.view.apart)), state.low);
    if (a && b) ImGui::GetWindowDrawList()->AddLine(*a, *b, state.ui.theme.quiet, state.ui.px(1));
  }
}

void draw_grip(const PictureState& state, ImVec2 at) {
  const Ui& ui = state.ui;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddCircleFilled(at, ui.px(9), ui.theme.accent);
  for (const float way : {-1.0f, 1.0f}) {
    const ImVec2 tip(at.x, at.y + way * ui.px(6)), base(at.x, at.y + way * ui.px(1.5f)), half(ui.px(3.5f), 0);
    paint->AddTriangleFilled(tip, base - half, base + half, ui.theme.paper);
  }
  state.ui.note_area("lift grip", at - ImVec2(ui.px(9), ui.px(9)), at + ImVec2(ui.px(9), ui.px(9)),
                     shown(static_cast<double>(state.view.apart), state.manner, 1));
}

}  // namespace

std::optional<ImVec2> lift_grip(const PictureState& state) {
  if (!neck_shown(state)) return std::nullopt;
  return in_window(state.view.camera, grip_place(state), state.low);
}

void draw_lift(const PictureState& state, Labels& labels) {
  const auto grip = lift_grip(state);
  if (!grip) return;
  if (state.view.apart > 0) {
    draw_plumb_lines(state);
    Vec foot = grip_place(state);
    foot.z -= state.view.apart;
    draw_dimension(state, {grip_place(state), foot, shown(static_cast<double>(state.view.apart), state.manner, 1)},
                   labels);
  }
  draw_grip(state, *grip);
}

void drag_lift(const HandState& state, ImVec2 now) {
  const PictureState seen = state.seen();
  if (!neck_shown(seen)) return;
  const Vec place = grip_place(seen);
  const auto a = state.view.camera.project(place), b = state.view.camera.project(place + Vec{0, 0, 1});
  if (!a || !b) return;
  const float dx = b->x - a->x, dy = b->y - a->y, square = dx * dx + dy * dy;
  const ImVec2 moved = now - state.hand.start;
  const float mm = square > least_upright * least_upright ? (moved.x * dx + moved.y * dy) / square
                                                          : -moved.y * state.view.camera.mm_per_pixel(place);
  state.view.lift_off(state.hand.start_apart + mm);
}

std::string neck_shown_words(const PictureState& state) {
  if (!state.view.neck || !state.results.laid_out() || !state.results.good->fittings) return "";
  const Model& model = *state.results.good;
  if (model.fittings->neck_as == NeckAs::solid) return "";
  if (model.fittings->neck_as == NeckAs::sketch) return "The neck is a sketch: the board names no file of it";
  if (!model.neck) return "The neck's file is being read";
  const std::string not_shown = "The neck is not shown under the board: ";
  if (!model.neck->shape) return not_shown + model.neck->failure;
  if (!is_measured(*model.neck->shape)) return not_shown + unsure(*model.neck->shape);
  return model.neck_wood ? not_shown + model.neck_wood->failure : "The neck is being laid under the board";
}

}  // namespace sagitta::viewer
