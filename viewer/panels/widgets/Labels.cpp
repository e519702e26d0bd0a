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

}  // namespace

bool Labels::free(const ImVec4& box) const {
  return std::none_of(taken_.begin(), taken_.end(),
                      [&](const ImVec4& t) { return box.x < t.z && t.x < box.z && box.y < t.w && t.y < box.w; });
}

void Labels::put(ImVec2 at, const std::string& text, ImVec2 anchor) {
  const ImVec2 size = ImGui::CalcTextSize(text.c_str()), pad(ui_.px(5), ui_.px(2));
  const ImVec2 half = size * 0.5f + pad;
  const ImVec2 low = paint_->GetClipRectMin() + ImVec2(ui_.px(3), ui_.px(3)),
               high = paint_->GetClipRectMax() - ImVec2(ui_.px(3), ui_.px(3));
  const ImVec2 wanted = kept_inside(at, half, low, high);
  const ImVec2 step(half.x + ui_.px(4), 2 * half.y + ui_.px(3));
  ImVec2 middle = wanted;
  constexpr float none = 1e30f;
  float best = none;
  for (int i = -10; i <= 10; ++i)
    for (int j = -3; j <= 3; ++j) {
      const ImVec2 tried =
          kept_inside(at + ImVec2(static_cast<float>(j) * step.x, static_cast<float>(i) * step.y), half, low, high);
      const ImVec2 off = tried - wanted;
      const float far = off.x * off.x + off.y * off.y;
      if (far < best && free(box_at(tried, half))) best = far, middle = tried;
    }
  if (best == none) return;
  const ImVec4 box = box_at(middle, half);
  const bool moved = best > half.y * half.y;
  sheets_.push_back({box, text, anchor, moved || std::hypot(anchor.x - middle.x, anchor.y - middle.y) > 6 * half.y});
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
