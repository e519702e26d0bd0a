#include "overlay/LongSheet.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

void LongExtent::take(double z) { z_low = std::min(z_low, z), z_high = std::max(z_high, z); }

LongFrame long_frame(const LongExtent& e, ImVec2 low, ImVec2 high) {
  LongFrame f;
  f.x_low = e.x_low, f.z_low = e.z_low;
  const double wide = std::max(e.x_high - e.x_low, 1.0), tall = std::max(e.z_high - e.z_low, 0.05);
  f.along = std::max(static_cast<double>(high.x - low.x) / wide, 0.01);
  const double up = static_cast<double>(high.y - low.y) / tall;
  f.times = std::max(1, static_cast<int>(std::floor(up / f.along)));
  const double room = static_cast<double>(high.y - low.y) - tall * f.along * f.times;
  f.origin = ImVec2(low.x, high.y - static_cast<float>(std::max(room, 0.0) / 2));
  return f;
}

void LongSheet::line(Point a, Point b, ImU32 ink, float thick) const {
  paint->AddLine(at(a.x, a.y), at(b.x, b.y), ink, ui.px(thick));
}

void LongSheet::lines(const std::vector<SliceLine>& all, ImU32 ink, float thick) const {
  for (const SliceLine& each : all) line(each.a, each.b, ink, thick);
}

void LongSheet::fill(const std::vector<SliceLine>& all, ImU32 ink) const {
  const auto first = static_cast<int>(std::floor(low.x)), count = static_cast<int>(high.x - low.x) + 2;
  std::vector<ImVec2> columns(static_cast<std::size_t>(count),
                              ImVec2(1e9f, -1e9f));  // highest and lowest pixel of each
  for (const SliceLine& each : all) {
    ImVec2 a = at(each.a.x, each.a.y), b = at(each.b.x, each.b.y);
    if (a.x > b.x) std::swap(a, b);
    const int from = std::max(static_cast<int>(std::ceil(a.x)), first);
    const int to = std::min(static_cast<int>(std::floor(b.x)), first + count - 1);
    for (int x = from; x <= to; ++x) {
      const float y = a.y + (b.y - a.y) * (static_cast<float>(x) - a.x) / std::max(b.x - a.x, 1e-6f);
      ImVec2& column = columns[static_cast<std::size_t>(x - first)];
      column = ImVec2(std::min(column.x, y), std::max(column.y, y));
    }
  }
  for (int i = 0; i < count; ++i) {
    const ImVec2 column = columns[static_cast<std::size_t>(i)];
    const auto x = static_cast<float>(first + i);
    if (column.x < column.y) paint->AddRectFilled(ImVec2(x, column.x), ImVec2(x + 1, column.y), ink);
  }
}

void LongSheet::path(const std::vector<Point>& points, ImU32 ink, float thick) const {
  for (std::size_t i = 1; i < points.size(); ++i) line(points[i - 1], points[i], ink, thick);
}

void LongSheet::upright(double x, double from, double to, float side, const std::string& text, float off) const {
  const ImU32 ink = ui.theme.accent;
  const ImVec2 a = at(x, from), b = at(x, to);
  const float half = ui.px(3);
  paint->AddLine(a, b, ink, ui.px(1.5f));
  for (const ImVec2 end : {a, b}) paint->AddLine(end - ImVec2(half, 0), end + ImVec2(half, 0), ink, ui.px(1.5f));
  const float wide = ImGui::CalcTextSize(text.c_str()).x / 2 + ui.px(10);
  const ImVec2 middle = (a + b) * 0.5f;
  labels.put(middle + ImVec2(side * wide, off), text, middle);
}

void LongSheet::hair(double x, ImU32 ink) const {
  const float pixel = at(x, 0).x;
  paint->AddLine(ImVec2(pixel, low.y), ImVec2(pixel, high.y), ink, ui.px(1));
}

void LongSheet::fret_numbers(float y) const {
  ImGui::PushFont(ui.letters.small);
  for (const FretLine& fret : board().layout().frets) {
    constexpr int usual[] = {1, 3, 5, 7, 9, 12, 15, 17, 19, 21, 24};
    if (std::find(std::begin(usual), std::end(usual), fret.fret) == std::end(usual)) continue;
    const std::string number = std::to_string(fret.fret);
    const ImVec2 size = ImGui::CalcTextSize(number.c_str());
    paint->AddText(ImVec2(at(fret.middle.x, 0).x - size.x / 2, y - size.y / 2), ui.theme.quiet, number.c_str());
  }
  ImGui::PopFont();
}

void LongSheet::state_factor(const std::string& more) const {
  const std::string text = "Heights drawn " + std::to_string(frame.times) + " times larger" + more;
  const ImVec2 place = low + ImVec2(ui.px(2), 0), size = ImGui::CalcTextSize(text.c_str());
  paint->AddText(place, ui.theme.quiet, text.c_str());
  labels.keep_clear(place, place + size);
  ui.note_area("heights stretched", place, place + size, text);
}

}  // namespace sagitta::viewer
