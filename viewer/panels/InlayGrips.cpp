#include "panels/InlayGrips.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "app/Pointers.hpp"
#include "panels/BoardMarks.hpp"
#include "panels/InlaySize.hpp"

namespace sagitta::viewer {

namespace {

// Pixels at a text size of 100 %.
constexpr float stand_off = 5;    ///< between piece and frame
constexpr float least_half = 17;  ///< of a frame
constexpr float stem = 26;        ///< between a side and the turning grip
constexpr float grip_side = 9, hold_reach = 9;

const GripHold* held(const Desk& desk) { return desk.hand.what == BoardHand::What::grip ? &desk.hand.grip : nullptr; }

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
std::optional<SeenGrip> turning_grip(const Desk& desk, const InlayFrame& frame, GripSide side, ImVec2 low) {
  const bool ends = side == GripSide::heel || side == GripSide::nut;
  const double sense = side == GripSide::up || side == GripSide::heel ? 1 : -1;
  const Point out = sense * (ends ? frame.along : frame.up);
  const Point foot = ends ? frame.at(sense, 0) : frame.at(0, sense);
  const double pixel = mm_per_pixel(desk.view.camera, frame.in_space(foot), out);
  const Point place = foot + static_cast<double>(desk.ui.px(stem)) * pixel * out;
  const auto at = in_window(desk.view.camera, frame.in_space(place), low);
  const auto from = in_window(desk.view.camera, frame.in_space(foot), low);
  return at && from ? std::optional(SeenGrip{true, side, *at, *from}) : std::nullopt;
}

bool in_picture(const Desk& desk, ImVec2 at, ImVec2 low) {
  const float margin = desk.ui.px(grip_side);
  const Camera& camera = desk.view.camera;
  return at.x > low.x + margin && at.x < low.x + camera.width - margin && at.y > low.y + margin &&
         at.y < low.y + camera.height - margin;
}

/// From the side where it can be seen.
std::optional<SeenGrip> turning_grip(const Desk& desk, const InlayFrame& frame, ImVec2 low) {
  if (const GripHold* hold = held(desk); hold && hold->side != GripSide::none)
    return turning_grip(desk, frame, hold->side, low);
  for (const GripSide side : {GripSide::up, GripSide::down, GripSide::heel, GripSide::nut})
    if (const auto grip = turning_grip(desk, frame, side, low); grip && in_picture(desk, grip->at, low)) return grip;
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
const SeenGrip* held_grip(const Desk& desk, const std::vector<SeenGrip>& grips) {
  const GripHold* hold = held(desk);
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

void draw_lines(const Desk& desk, const std::vector<ImVec2>& points, bool closed) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const int count = static_cast<int>(points.size());
  const ImDrawFlags flags = closed ? ImDrawFlags_Closed : ImDrawFlags_None;
  const ImU32 halo = (desk.ui.theme.paper & ~IM_COL32_A_MASK) | 150u << IM_COL32_A_SHIFT;
  paint->AddPolyline(points.data(), count, halo, flags, desk.ui.px(3));
  paint->AddPolyline(points.data(), count, desk.ui.theme.accent, flags, std::max(1.0f, std::round(desk.ui.px(1))));
}

void draw_grip(const Desk& desk, const SeenGrip& grip, bool lit) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const Theme& theme = desk.ui.theme;
  const float half = std::round(desk.ui.px(grip_side) / 2), line = std::max(1.0f, std::round(desk.ui.px(1.25f)));
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
void draw_outline(const Desk& desk, const InlayFrame& frame, ImVec2 low) {
  const GripHold& hold = desk.hand.grip;
  const double factor = frame.half.x / hold.frame.half.x;
  for (const Polygon& polygon : hold.outline) {
    std::vector<ImVec2> points;
    for (const Point& p : polygon) {
      const Point placed = frame.centre + factor * (p.x * frame.along + p.y * frame.up);
      if (const auto at = in_window(desk.view.camera, frame.in_space(placed), low)) points.push_back(*at);
    }
    if (points.size() == polygon.size()) draw_lines(desk, points, true);
  }
}

/// The figure on a sheet of paper beside the pointer, on the far side of the grip from the frame's middle and inside
/// the picture.
void draw_reading(Desk& desk, ImVec2 low, ImVec2 grip, ImVec2 middle, Labels& labels) {
  const Ui& ui = desk.ui;
  const std::string& text = desk.hand.grip.reading;
  const ImVec2 pointer = ImGui::GetIO().MousePos, pad(ui.px(6), ui.px(3)), off(ui.px(16), ui.px(10));
  const ImVec2 size = ImGui::CalcTextSize(text.c_str()) + pad * 2;
  const ImVec2 high = low + ImVec2(desk.view.camera.width, desk.view.camera.height) - size;
  const ImVec2 left = ImMin(pointer, grip) - off - size, right = ImMax(pointer, grip) + off;
  const bool to_right = grip.x >= middle.x ? right.x <= high.x : left.x < low.x;
  const bool below = grip.y >= middle.y ? right.y <= high.y : left.y < low.y;
  const ImVec2 wanted(to_right ? right.x : left.x, below ? right.y : left.y);
  const ImVec2 corner(std::floor(std::clamp(wanted.x, low.x, std::max(high.x, low.x))),
                      std::floor(std::clamp(wanted.y, low.y, std::max(high.y, low.y))));
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(corner, corner + size, ui.theme.paper, ui.px(3));
  paint->AddRect(corner, corner + size, ui.theme.line, ui.px(3));
  paint->AddText(corner + pad, ui.theme.text, text.c_str());
  labels.keep_clear(corner, corner + size);
  desk.ui.note_area("grip reading", corner, corner + size, text);
}

void note_grip(Desk& desk, const std::string& name, ImVec2 at) {
  const ImVec2 reach(desk.ui.px(hold_reach), desk.ui.px(hold_reach));
  desk.ui.note_area(name, at - reach, at + reach);
}

}  // namespace

std::optional<InlayFrame> seen_frame(const Desk& desk) {
  auto frame = chosen_frame(desk);
  if (!frame) return frame;
  if (const GripHold* hold = held(desk); hold && hold->frame.inlay == frame->inlay) {
    const Inlay& inlay = desk.document.board().inlays[static_cast<std::size_t>(frame->inlay)];
    frame->half = leading_size(inlay) / leading_size(hold->inlay) * hold->frame.half;
    return frame;
  }
  const Vec middle = frame->in_space(frame->centre);
  frame->half.x = stood_off(frame->half.x, mm_per_pixel(desk.view.camera, middle, frame->along), desk.ui);
  frame->half.y = stood_off(frame->half.y, mm_per_pixel(desk.view.camera, middle, frame->up), desk.ui);
  return frame;
}

std::vector<SeenGrip> grips_of(const Desk& desk, const InlayFrame& frame, ImVec2 low) {
  std::vector<SeenGrip> grips;
  for (const auto& [u, v] : {std::pair(-1, -1), {1, -1}, {1, 1}, {-1, 1}}) {
    if (const auto at = in_window(desk.view.camera, frame.in_space(frame.at(u, v)), low))
      grips.push_back({false, GripSide::none, *at, *at});
  }
  const Inlay& inlay = desk.document.board().inlays[static_cast<std::size_t>(frame.inlay)];
  if (inlay.shape == InlayShape::dot) return grips;
  if (const auto grip = turning_grip(desk, frame, low)) grips.push_back(*grip);
  return grips;
}

std::optional<SeenGrip> grip_at_pointer(const Desk& desk, ImVec2 low) {
  const auto frame = seen_frame(desk);
  if (!frame) return std::nullopt;
  const std::vector<SeenGrip> grips = grips_of(desk, *frame, low);
  const SeenGrip* grip = nearest(grips, ImGui::GetIO().MousePos, desk.ui.px(hold_reach));
  return grip ? std::optional(*grip) : std::nullopt;
}

bool draw_inlay_frame(Desk& desk, ImVec2 low, Labels& labels, bool free) {
  const auto frame = seen_frame(desk);
  if (!frame) return false;
  const std::vector<SeenGrip> grips = grips_of(desk, *frame, low);
  const auto middle = in_window(desk.view.camera, frame->in_space(frame->centre), low);
  std::vector<ImVec2> corners;
  for (const SeenGrip& grip : grips)
    if (!grip.turns) corners.push_back(crisp(grip.at));
  if (corners.size() != 4 || !middle) return false;
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const GripHold* hold = held(desk);
  const SeenGrip* lit = hold   ? held_grip(desk, grips)
                        : free ? nearest(grips, pointer, desk.ui.px(hold_reach))
                               : nullptr;
  if (hold && hold->moved) draw_outline(desk, *frame, low);
  draw_lines(desk, corners, true);
  int corner = 0;
  for (const SeenGrip& grip : grips) {
    if (grip.turns) draw_lines(desk, {crisp(grip.foot), crisp(grip.at)}, false);
    draw_grip(desk, grip, &grip == lit);
    note_grip(desk, grip.turns ? "turning grip" : "sizing grip " + std::to_string(++corner), grip.at);
    const ImVec2 clear(desk.ui.px(hold_reach), desk.ui.px(hold_reach));
    labels.keep_clear(grip.at - clear, grip.at + clear);
  }
  if (lit) ImGui::SetMouseCursor(pointer_for(*lit, *middle));
  if (lit && hold && hold->moved) draw_reading(desk, low, lit->at, *middle, labels);
  return true;
}

}  // namespace sagitta::viewer
