#include "widgets/Labels.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

namespace {

ImVec4 box_at(ImVec2 middle, ImVec2 half) {
  return {middle.x - half.x, middle.y - half.y, middle.x + half.x, middle.y + half.y};
}

ImVec2 kept_inside(ImVec2 middle, ImVec2 half, ImVec2 low, ImVec2 high) {
  return {std::clamp(middle.x, low.x + half.x, std::max(high.x - half.x, low.x + half.x)),
          std::clamp(middle.y, low.y + half.y, std::max(high.y - half.y, low.y + half.y))};
}

/// Whether a convex shape and a box have a point in common: no side of either parts them.
bool meets(const std::array<ImVec2, 4>& shape, const ImVec4& box) {
  const ImVec2 corners[] = {{box.x, box.y}, {box.z, box.y}, {box.z, box.w}, {box.x, box.w}};
  const auto parts = [&](ImVec2 normal) {
    float shape_low = 1e30f, shape_high = -1e30f, box_low = 1e30f, box_high = -1e30f;
    for (const ImVec2 p : shape) {
      const float d = p.x * normal.x + p.y * normal.y;
      shape_low = std::min(shape_low, d), shape_high = std::max(shape_high, d);
    }
    for (const ImVec2 p : corners) {
      const float d = p.x * normal.x + p.y * normal.y;
      box_low = std::min(box_low, d), box_high = std::max(box_high, d);
    }
    return shape_high < box_low || box_high < shape_low;
  };
  if (parts({1, 0}) || parts({0, 1})) return false;
  for (std::size_t i = 0; i < 4; ++i) {
    const ImVec2 side = shape[(i + 1) % 4] - shape[i];
    if (parts({-side.y, side.x})) return false;
  }
  return true;
}

}  // namespace

bool Labels::free(const ImVec4& box) const {
  return std::none_of(taken_.begin(), taken_.end(),
                      [&](const ImVec4& t) { return box.x < t.z && t.x < box.z && box.y < t.w && t.y < box.w; });
}

std::optional<ImVec2> Labels::free_place(ImVec2 at, ImVec2 half, bool beside_shape) const {
  const ImVec2 low = paint_->GetClipRectMin() + ImVec2(ui_.px(3), ui_.px(3)),
               high = paint_->GetClipRectMax() - ImVec2(ui_.px(3), ui_.px(3));
  const ImVec2 wanted = kept_inside(at, half, low, high);
  const ImVec2 step(half.x + ui_.px(4), 2 * half.y + ui_.px(3));
  std::optional<ImVec2> best;
  float least = 1e30f;
  for (int i = -10; i <= 10; ++i)
    for (int j = -3; j <= 3; ++j) {
      const ImVec2 tried =
          kept_inside(at + ImVec2(static_cast<float>(j) * step.x, static_cast<float>(i) * step.y), half, low, high);
      const ImVec2 off = tried - wanted;
      const float far = off.x * off.x + off.y * off.y;
      if (far >= least || !free(box_at(tried, half))) continue;
      if (beside_shape && shape_ && meets(*shape_, box_at(tried, half + ImVec2(ui_.px(4), ui_.px(4))))) continue;
      least = far, best = tried;
    }
  return best;
}

void Labels::put(ImVec2 at, const std::string& text, ImVec2 anchor) {
  const ImVec2 size = ImGui::CalcTextSize(text.c_str()), pad(ui_.px(5), ui_.px(2));
  const ImVec2 half = size * 0.5f + pad;
  auto middle = free_place(at, half, true);
  if (!middle && shape_) middle = free_place(at, half, false);
  if (!middle) return;
  const ImVec4 box = box_at(*middle, half);
  const ImVec2 off = *middle - at;
  const bool moved = off.x * off.x + off.y * off.y > half.y * half.y;
  sheets_.push_back({box, text, anchor, moved || std::hypot(anchor.x - middle->x, anchor.y - middle->y) > 6 * half.y});
  ui_.note_area(name_ + std::to_string(sheets_.size()), {box.x, box.y}, {box.z, box.w}, text);
  taken_.push_back(box);
}

void Labels::draw() {
  for (const Sheet& s : sheets_)
    if (s.tied)
      paint_->AddLine(s.anchor, {std::clamp(s.anchor.x, s.box.x, s.box.z), std::clamp(s.anchor.y, s.box.y, s.box.w)},
                      ui_.theme.accent, ui_.px(1));
  for (const Sheet& s : sheets_) {
    paint_->AddRectFilled({s.box.x, s.box.y}, {s.box.z, s.box.w}, ui_.theme.paper, ui_.px(3));
    paint_->AddText({s.box.x + ui_.px(5), s.box.y + ui_.px(2)}, ui_.theme.text, s.text.c_str());
  }
}

}  // namespace sagitta::viewer
