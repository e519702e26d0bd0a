#include "overlay/InlayGrips.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "board/ShapeKeys.hpp"
#include "overlay/BoardMarks.hpp"
#include "overlay/ChosenInlay.hpp"
#include "overlay/InlaySize.hpp"
#include "widgets/Pointers.hpp"

namespace sagitta::viewer {

namespace {

// Pixels at a text size of 100 %.
constexpr float stand_off = 5;    ///< between piece and frame
constexpr float least_half = 17;  ///< of a frame
constexpr float stem = 26;        ///< between a side and the turning grip
constexpr float grip_side = 9, hold_reach = 9;

const GripHold* held(const PictureState& state) {
  return state.hand.what == BoardHand::What::grip ? &state.hand.grip : nullptr;
}

/// Length on the board of one pixel from a place in a direction, mm.
double mm_per_pixel(const Camera& camera, Vec at, Point direction) {
  const Vec next = at + Vec{static_cast<float>(direction.x), static_cast<float>(direction.y), 0};
  const auto a = camera.project(at), b = camera.project(next);
  const float pixels = a && b ? std::hypot(b->x - a->x, b->y - a->y) : 0;
  return 1 / static_cast<double>(std::max(pixels, 1e-3f));
}

double stood_off(double half, double pixel, const Ui& ui) {
  return std::max(half + static_cast<double>(ui.px(stand_off)) * pixel, static_cast<double>(ui.px(least_half)) * pixel);
}

/// The turning grip when it stands off from that side.
std::optional<SeenGrip> turning_grip(const PictureState& state, const InlayFrame& frame, GripSide side) {
  const bool ends = side == GripSide::heel || side == GripSide::nut;
  const double sense = side == GripSide::up || side == GripSide::heel ? 1 : -1;
  const Point out = sense * (ends ? frame.along : frame.up);
  const Point foot = ends ? frame.at(sense, 0) : frame.at(0, sense);
  const double pixel = mm_per_pixel(state.view.camera, frame.in_space(foot), out);
  const Point place = foot + static_cast<double>(state.ui.px(stem)) * pixel * out;
  const auto at = in_window(state.view.camera, frame.in_space(place), state.low);
  const auto from = in_window(state.view.camera, frame.in_space(foot), state.low);
  return at && from ? std::optional(SeenGrip{true, side, *at, *from}) : std::nullopt;
}

bool in_picture(const PictureState& state, ImVec2 at) {
  const float margin = state.ui.px(grip_side);
  const Camera& camera = state.view.camera;
  return at.x > state.low.x + margin && at.x < state.low.x + camera.width - margin && at.y > state.low.y + margin &&
         at.y < state.low.y + camera.height - margin;
}

/// From the side where it can be seen.
std::optional<SeenGrip> turning_grip(const PictureState& state, const InlayFrame& frame) {
  if (const GripHold* hold = held(state); hold && hold->side != GripSide::none)
    return turning_grip(state, frame, hold->side);
  for (const GripSide side : {GripSide::up, GripSide::down, GripSide::heel, GripSide::nut})
    if (const auto grip = turning_grip(state, frame, side); grip && in_picture(state, grip->at)) return grip;
  return std::nullopt;
}

const SeenGrip* nearest(const std::vector<SeenGrip>& grips, ImVec2 pointer, float reach) {
  const SeenGrip* found = nullptr;
  for (const SeenGrip& grip : grips)
    if (const float far = std::hypot(grip.at.x - pointer.x, grip.at.y - pointer.y); far <= reach)
      reach = far, found = &grip;
  return found;
}

/// The one that the hand holds: a corner is known by being nearest.
const SeenGrip* held_grip(const PictureState& state, const std::vector<SeenGrip>& grips) {
  const GripHold* hold = held(state);
  if (!hold) return nullptr;
  const SeenGrip* found = nullptr;
  float least = 1e9f;
  for (const SeenGrip& grip : grips) {
    const ImVec2 off = grip.at - ImGui::GetIO().MousePos;
    if (const float far = std::hypot(off.x, off.y); grip.turns == hold->turns && far < least)
      least = far, found = &grip;
  }
  return found;
}

/// On the middle of a pixel, so that lines along the screen are crisp.
ImVec2 crisp(ImVec2 p) { return {std::floor(p.x) + 0.5f, std::floor(p.y) + 0.5f}; }

int pointer_for(const SeenGrip& grip, ImVec2 middle) {
  if (grip.turns) return turning_pointer;
  const ImVec2 out = grip.at - middle;
  constexpr float nearly = 0.35f;
  if (std::abs(out.y) < nearly * std::abs(out.x)) return ImGuiMouseCursor_ResizeEW;
  if (std::abs(out.x) < nearly * std::abs(out.y)) return ImGuiMouseCursor_ResizeNS;
  return out.x * out.y > 0 ? ImGuiMouseCursor_ResizeNWSE : ImGuiMouseCursor_ResizeNESW;
}

void draw_lines(const PictureState& state, const std::vector<ImVec2>& points, bool closed) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const int count = static_cast<int>(points.size());
  const ImDrawFlags flags = closed ? ImDrawFlags_Closed : ImDrawFlags_None;
  const ImU32 halo = (state.ui.theme.paper & ~IM_COL32_A_MASK) | 150u << IM_COL32_A_SHIFT;
  paint->AddPolyline(points.data(), count, halo, flags, state.ui.px(3));
  paint->AddPolyline(points.data(), count, state.ui.theme.accent, flags, std::max(1.0f, std::round(state.ui.px(1))));
}

void draw_grip(const PictureState& state, const SeenGrip& grip, bool lit) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const Theme& theme = state.ui.theme;
  const float half = std::round(state.ui.px(grip_side) / 2), line = std::max(1.0f, std::round(state.ui.px(1.25f)));
  const ImVec2 at = crisp(grip.at), in(half, half), more(half + line, half + line);
  const ImU32 face = lit ? theme.accent : theme.paper, rim = theme.accent;
  if (grip.turns) {
    paint->AddCircleFilled(at, half + line, rim);
    paint->AddCircleFilled(at, half, face);
  } else {
    paint->AddRectFilled(at - more, at + more, rim);
    paint->AddRectFilled(at - in, at + in, face);
  }
}

/// The drawing's own outline where the hand has it: the picture follows when its pieces have been fitted.
void draw_outline(const PictureState& state, const InlayFrame& frame) {
  const GripHold& hold = state.hand.grip;
  const double factor = frame.half.x / hold.frame.half.x;
  for (const Polygon& polygon : hold.outline) {
    std::vector<ImVec2> points;
    for (const Point& p : polygon) {
      const Point placed = frame.centre + factor * (p.x * frame.along + p.y * frame.up);
      if (const auto at = in_window(state.view.camera, frame.in_space(placed), state.low)) points.push_back(*at);
    }
    if (points.size() == polygon.size()) draw_lines(state, points, true);
  }
}

/// The figure on a sheet of paper beside the pointer, on the far side of the grip from the frame's middle and inside
/// the picture.
void draw_reading(const PictureState& state, ImVec2 grip, ImVec2 middle, Labels& labels) {
  const Ui& ui = state.ui;
  const std::string& text = state.hand.grip.reading;
  const ImVec2 pointer = ImGui::GetIO().MousePos, pad(ui.px(6), ui.px(3)), off(ui.px(16), ui.px(10));
  const ImVec2 size = ImGui::CalcTextSize(text.c_str()) + pad * 2;
  const ImVec2 high = state.low + ImVec2(state.view.camera.width, state.view.camera.height) - size;
  const ImVec2 left = ImMin(pointer, grip) - off - size, right = ImMax(pointer, grip) + off;
  const bool to_right = grip.x >= middle.x ? right.x <= high.x : left.x < state.low.x;
  const bool below = grip.y >= middle.y ? right.y <= high.y : left.y < state.low.y;
  const ImVec2 wanted(to_right ? right.x : left.x, below ? right.y : left.y);
  const ImVec2 corner(std::floor(std::clamp(wanted.x, state.low.x, std::max(high.x, state.low.x))),
                      std::floor(std::clamp(wanted.y, state.low.y, std::max(high.y, state.low.y))));
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(corner, corner + size, ui.theme.paper, ui.px(3));
  paint->AddRect(corner, corner + size, ui.theme.line, ui.px(3));
  paint->AddText(corner + pad, ui.theme.text, text.c_str());
  labels.keep_clear(corner, corner + size);
  state.ui.note_area("grip reading", corner, corner + size, text);
}

void note_grip(const PictureState& state, const std::string& name, ImVec2 at) {
  const ImVec2 reach(state.ui.px(hold_reach), state.ui.px(hold_reach));
  state.ui.note_area(name, at - reach, at + reach);
}

}  // namespace

std::optional<InlayFrame> seen_frame(const PictureState& state) {
  auto frame = chosen_frame(state);
  if (!frame) return frame;
  if (const GripHold* hold = held(state); hold && hold->frame.inlay == frame->inlay) {
    const Inlay& inlay = state.board.inlays[static_cast<std::size_t>(frame->inlay)];
    frame->half = leading_size(inlay) / leading_size(hold->inlay) * hold->frame.half;
    return frame;
  }
  const Vec middle = frame->in_space(frame->centre);
  frame->half.x = stood_off(frame->half.x, mm_per_pixel(state.view.camera, middle, frame->along), state.ui);
  frame->half.y = stood_off(frame->half.y, mm_per_pixel(state.view.camera, middle, frame->up), state.ui);
  return frame;
}

std::vector<SeenGrip> grips_of(const PictureState& state, const InlayFrame& frame) {
  std::vector<SeenGrip> grips;
  for (const auto& [u, v] : {std::pair(-1, -1), {1, -1}, {1, 1}, {-1, 1}}) {
    if (const auto at = in_window(state.view.camera, frame.in_space(frame.at(u, v)), state.low))
      grips.push_back({false, GripSide::none, *at, *at});
  }
  const Inlay& inlay = state.board.inlays[static_cast<std::size_t>(frame.inlay)];
  if (takes(inlay, "diameter")) return grips;  // it looks the same however it is turned
  if (const auto grip = turning_grip(state, frame)) grips.push_back(*grip);
  return grips;
}

std::optional<SeenGrip> grip_at_pointer(const PictureState& state) {
  const auto frame = seen_frame(state);
  if (!frame) return std::nullopt;
  const std::vector<SeenGrip> grips = grips_of(state, *frame);
  const SeenGrip* grip = nearest(grips, ImGui::GetIO().MousePos, state.ui.px(hold_reach));
  return grip ? std::optional(*grip) : std::nullopt;
}

bool draw_inlay_frame(const PictureState& state, Labels& labels, bool free) {
  const auto frame = seen_frame(state);
  if (!frame) return false;
  const std::vector<SeenGrip> grips = grips_of(state, *frame);
  const auto middle = in_window(state.view.camera, frame->in_space(frame->centre), state.low);
  std::vector<ImVec2> corners;
  for (const SeenGrip& grip : grips)
    if (!grip.turns) corners.push_back(crisp(grip.at));
  if (corners.size() != 4 || !middle) return false;
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const GripHold* hold = held(state);
  const SeenGrip* lit = hold   ? held_grip(state, grips)
                        : free ? nearest(grips, pointer, state.ui.px(hold_reach))
                               : nullptr;
  if (hold && hold->moved) draw_outline(state, *frame);
  draw_lines(state, corners, true);
  int corner = 0;
  for (const SeenGrip& grip : grips) {
    if (grip.turns) draw_lines(state, {crisp(grip.foot), crisp(grip.at)}, false);
    draw_grip(state, grip, &grip == lit);
    note_grip(state, grip.turns ? "turning grip" : "sizing grip " + std::to_string(++corner), grip.at);
    const ImVec2 clear(state.ui.px(hold_reach), state.ui.px(hold_reach));
    labels.keep_clear(grip.at - clear, grip.at + clear);
  }
  if (lit) ImGui::SetMouseCursor(pointer_for(*lit, *middle));
  if (lit && hold && hold->moved) draw_reading(state, lit->at, *middle, labels);
  return true;
}

}  // namespace sagitta::viewer
