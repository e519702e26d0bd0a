#include "panels/SlicePanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "scene/Slice.hpp"

namespace sagitta::viewer {

namespace {

/// From the section (y, z in mm) to the window.
struct Frame {
  ImVec2 origin;              ///< where y = middle, z = base lands
  double across = 1, up = 1;  ///< pixels per mm
  double middle = 0, base = 0;
  ImVec2 at(Point p) const {
    return {origin.x + static_cast<float>((p.x - middle) * across), origin.y - static_cast<float>((p.y - base) * up)};
  }
};

void figure(Desk& desk, const std::string& label, const std::string& value) {
  ImGui::PushStyleColor(ImGuiCol_Text, desk.ui.theme.quiet);
  ImGui::TextUnformatted(label.c_str());
  ImGui::PopStyleColor();
  ImGui::SameLine(desk.ui.px(112));
  ImGui::TextUnformatted(value.c_str());
  desk.ui.note("section " + label, value);
}

void draw_figures(Desk& desk, const Slice& s) {
  const Manner m = desk.manner();
  figure(desk, "At", shown(s.x, m, 2) + ", " + s.where);
  figure(desk, "Radius", s.radius ? shown(*s.radius, m, 2) : "flat");
  figure(desk, "Bass edge", shown(s.bass_edge, m));
  figure(desk, "Treble edge", shown(s.treble_edge, m));
  figure(desk, "Cut depth", s.cut_depth ? shown(*s.cut_depth, m) : "no cut here");
  figure(desk, "Left below", shown(s.least_left, m));
}

void draw_lines(Desk& desk, const Slice& s, const Frame& f, ImVec2 low, ImVec2 high) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->PushClipRect(low, high, true);
  for (const SliceLine& line : s.lines)
    paint->AddLine(f.at(line.a), f.at(line.b), desk.ui.theme.text, desk.ui.px(1.5f));
  const double left = s.low_y - (s.high_y - s.low_y), right = s.high_y + (s.high_y - s.low_y);
  paint->AddLine(f.at({left, 0}), f.at({right, 0}), desk.ui.theme.line);
  paint->PopClipRect();
}

void label(Desk& desk, ImVec2 at, const std::string& text, ImVec2 low, ImVec2 high) {
  const ImVec2 size = ImGui::CalcTextSize(text.c_str());
  ImVec2 corner(at.x - size.x / 2, at.y - size.y / 2);
  corner.x = std::clamp(corner.x, low.x, std::max(low.x, high.x - size.x));
  corner.y = std::clamp(corner.y, low.y, std::max(low.y, high.y - size.y));
  ImGui::GetWindowDrawList()->AddText(corner, desk.ui.theme.accent, text.c_str());
}

void draw_marks(Desk& desk, const Slice& s, const Frame& f, ImVec2 low, ImVec2 high) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const Manner m = desk.manner();
  const float gap = desk.ui.px(12), half_text = ImGui::GetFontSize() / 2;
  const auto upright = [&](double y, double top, float side, const std::string& text) {
    const ImVec2 a = f.at({y, 0}), b = f.at({y, top});
    const float x = a.x + side * gap;
    paint->AddLine(ImVec2(x, a.y), ImVec2(x, b.y), desk.ui.theme.accent, desk.ui.px(1.5f));
    const float wide = ImGui::CalcTextSize(text.c_str()).x;
    label(desk, ImVec2(x + side * (desk.ui.px(6) + wide / 2), (a.y + b.y) / 2), text, low, high);
  };
  upright(s.low_y, s.bass_edge, -1, shown(s.bass_edge, m));
  upright(s.high_y, s.treble_edge, 1, shown(s.treble_edge, m));
  if (s.radius)
    label(desk, f.at({0, s.high_z}) - ImVec2(0, half_text + desk.ui.px(6)), "R " + shown(*s.radius, m, 1), low, high);
  const double middle_top = top_at(s, 0).value_or(s.high_z);
  label(desk, f.at({0, middle_top / 2}), shown(middle_top, m) + " left", low, high);
}

/// The whole section at one scale; or, magnified, one edge of it with heights enlarged.
Frame frame_for(const Desk& desk, const Slice& s, ImVec2 low, ImVec2 high) {
  const double wide = std::max(s.high_y - s.low_y, 1.0), tall = std::max(s.high_z, 1.0);
  const double room_x = high.x - low.x - desk.ui.px(170), room_y = high.y - low.y - desk.ui.px(44);
  Frame f;
  f.middle = (s.low_y + s.high_y) / 2;
  f.across = std::max(std::min(room_x / wide, room_y / tall), 0.1);
  f.up = f.across;
  f.origin = ImVec2((low.x + high.x) / 2, high.y - desk.ui.px(14));
  if (!desk.view.magnified) return f;
  const double least = std::max(std::min(s.least_left, std::min(s.bass_edge, s.treble_edge)) - 0.2, 0.0);
  f.base = least;
  f.up = room_y / std::max(s.high_z - least, 0.05);
  f.across = room_x / wide;
  return f;
}

}  // namespace

void draw_slice(Desk& desk, ImVec2 low, ImVec2 size) {
  const StageModel* stage = desk.shown();
  if (!stage || size.y < desk.ui.px(60)) return;
  const Slice s = slice_of(*stage, *desk.good->layout, desk.good->surface, desk.view.cut);
  const ImVec2 high = low + size;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, desk.ui.theme.paper);
  paint->AddLine(low, ImVec2(high.x, low.y), desk.ui.theme.line);
  const float column = std::min(desk.ui.px(290), size.x * 0.46f);
  ImGui::SetCursorScreenPos(low + ImVec2(desk.ui.px(14), desk.ui.px(8)));
  ImGui::BeginChild("figures", ImVec2(column - desk.ui.px(14), size.y - desk.ui.px(12)), false);
  draw_figures(desk, s);
  desk.ui.tick("Heights enlarged", desk.view.magnified);
  if (desk.ui.button("Slot before")) desk.ask("slot before");
  ImGui::SameLine();
  if (desk.ui.button("Next slot")) desk.ask("slot after");
  ImGui::EndChild();
  if (s.lines.empty()) return;
  const ImVec2 from(low.x + column, low.y + desk.ui.px(6)), to(high.x - desk.ui.px(10), high.y - desk.ui.px(6));
  const Frame f = frame_for(desk, s, from, to);
  draw_lines(desk, s, f, from, to);
  if (!desk.view.magnified)
    draw_marks(desk, s, f, from, to);
  else
    label(desk, ImVec2((from.x + to.x) / 2, from.y + desk.ui.px(8)),
          "heights enlarged " + shown_number(f.up / f.across, 0) + " times", from, to);
}

}  // namespace sagitta::viewer
