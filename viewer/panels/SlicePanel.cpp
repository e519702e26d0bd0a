#include "panels/SlicePanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "panels/Labels.hpp"
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
  ImGui::SameLine(desk.ui.px(92));
  ImGui::TextUnformatted(wrapped(value, ImGui::GetContentRegionAvail().x).c_str());
  desk.ui.note("section " + label, value);
}

/// The section is cut from the picture's triangles: its figures are good to the second decimal.
std::string words_of(const Desk& desk, double mm) { return shown(mm, desk.manner(), 2); }

void draw_figures(Desk& desk, const Slice& s) {
  figure(desk, "At", words_of(desk, s.x) + ", " + s.where);
  figure(desk, "Radius", s.radius ? words_of(desk, *s.radius) : "flat");
  figure(desk, "Bass edge", words_of(desk, s.bass_edge));
  figure(desk, "Treble edge", words_of(desk, s.treble_edge));
  figure(desk, "Cut depth", s.cut_depth ? words_of(desk, *s.cut_depth) : "no cut here");
  figure(desk, "Left below", words_of(desk, s.least_left));
}

/// The picture of the section: where it is drawn, and how.
struct Sheet {
  Desk& desk;
  const Slice& slice;
  const Surface& surface;
  ImVec2 low, high;
  Frame frame;
  Labels& labels;
  ImDrawList* paint = ImGui::GetWindowDrawList();

  ImVec2 at(double y, double z) const { return frame.at({y, z}); }
  double uncut(double y) const { return uncut_at(slice, surface, y); }
  double top(double y) const { return top_at(slice, y).value_or(slice.high_z); }
  std::string mm(double v) const { return words_of(desk, v); }
  /// An upright dimension at a pixel's x, with its words beside it.
  void upright(float x, double from, double to, float side, const std::string& text, ImVec2 off = {}) const {
    const ImU32 ink = desk.ui.theme.accent;
    const float a = std::min(at(0, from).y, high.y), b = at(0, to).y, half = desk.ui.px(3);
    paint->AddLine(ImVec2(x, a), ImVec2(x, b), ink, desk.ui.px(1.5f));
    for (const float y : {a, b}) paint->AddLine(ImVec2(x - half, y), ImVec2(x + half, y), ink, desk.ui.px(1.5f));
    const float wide = ImGui::CalcTextSize(text.c_str()).x / 2 + desk.ui.px(9);
    labels.put(ImVec2(x + side * wide, (a + b) / 2) + off, text, ImVec2(x, (a + b) / 2));
  }
};

void draw_lines(const Sheet& s) {
  const Ui& ui = s.desk.ui;
  s.paint->PushClipRect(s.low, s.high, true);
  if (s.slice.cut_depth) {
    constexpr int steps = 48;
    for (int i = 0; i < steps; ++i) {
      const auto y = [&](int k) { return s.slice.low_y + (s.slice.high_y - s.slice.low_y) * k / steps; };
      s.paint->AddLine(s.at(y(i), s.uncut(y(i))), s.at(y(i + 1), s.uncut(y(i + 1))), ui.theme.quiet, ui.px(1));
    }
  }
  for (const SliceLine& line : s.slice.lines)
    s.paint->AddLine(s.frame.at(line.a), s.frame.at(line.b), ui.theme.text, ui.px(1.5f));
  const double wide = s.slice.high_y - s.slice.low_y;
  s.paint->AddLine(s.at(s.slice.low_y - wide, 0), s.at(s.slice.high_y + wide, 0), ui.theme.line);
  s.paint->PopClipRect();
}

/// Radius, both edges, the cut and what is left below it; enlarged, what the surface falls toward its edge as well.
void draw_marks(const Sheet& s) {
  const Slice& c = s.slice;
  const Ui& ui = s.desk.ui;
  const float gap = ui.px(12);
  s.upright(s.at(c.low_y, 0).x - gap, s.frame.base, c.bass_edge, -1, s.mm(c.bass_edge));
  s.upright(s.at(c.high_y, 0).x + gap, s.frame.base, c.treble_edge, 1, s.mm(c.treble_edge));
  const ImVec2 crown = s.at(0, s.uncut(0));
  if (c.radius) s.labels.put(crown - ImVec2(0, ui.px(18)), "R " + shown(*c.radius, s.desk.manner(), 1), crown);
  if (s.desk.view.magnified) {
    const double edge = s.uncut(c.high_y), drop = s.uncut(0) - edge;
    const ImVec2 corner = s.at(c.high_y, s.uncut(0));
    if (drop > 0) s.paint->AddLine(crown, corner, ui.theme.line, ui.px(1));
    if (drop > 0) s.upright(corner.x + gap, edge, s.uncut(0), 1, s.mm(drop));
  }
  const double floor = s.top(c.cut_at);
  if (c.cut_depth)
    s.upright(s.at(c.cut_at, 0).x, floor, floor + *c.cut_depth, 1, s.mm(*c.cut_depth) + " deep",
              ImVec2(ui.px(30), -ui.px(26)));
  if (s.desk.view.magnified) return;
  const ImVec2 inside = s.at(c.cut_at, (std::max(s.frame.base, 0.0) + floor) / 2);
  const std::string left = s.mm(floor) + " left";
  if (ImGui::CalcTextSize(left.c_str()).x + gap < s.at(c.high_y, 0).x - s.at(c.low_y, 0).x)
    s.labels.put(inside, left, inside);
}

void draw_enlarged(const Sheet& s) {
  const std::string text = "Heights drawn " + shown_number(s.frame.up / s.frame.across, 0) + " times larger";
  const ImVec2 at = s.low + ImVec2(s.desk.ui.px(4), s.desk.ui.px(2)), size = ImGui::CalcTextSize(text.c_str());
  s.paint->AddText(at, s.desk.ui.theme.quiet, text.c_str());
  s.labels.keep_clear(at, at + size);
  s.desk.ui.note_area("section enlarged", at, at + size, text);
}

/// Under the pointer: how high the wood stands there, and how far below the uncut surface.
void draw_reading(const Sheet& s) {
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  if (!ImGui::IsWindowHovered() || pointer.x < s.low.x || pointer.x > s.high.x || pointer.y < s.low.y ||
      pointer.y > s.high.y)
    return;
  const double y = s.frame.middle + static_cast<double>(pointer.x - s.frame.origin.x) / s.frame.across;
  if (y <= s.slice.low_y || y >= s.slice.high_y) return;
  const double top = s.top(y), depth = s.uncut(y) - top;
  constexpr double seen = 0.005;
  std::string text = s.mm(top) + " high at " + s.mm(y);
  if (depth > seen) text += ", " + s.mm(depth) + " below the surface";
  const ImVec2 place = s.at(y, top);
  s.paint->AddLine(ImVec2(place.x, s.low.y), ImVec2(place.x, s.high.y), s.desk.ui.theme.quiet, s.desk.ui.px(1));
  s.paint->AddCircleFilled(place, s.desk.ui.px(3), s.desk.ui.theme.accent);
  s.labels.put(ImVec2(place.x, s.high.y), text, place);
  s.desk.ui.note_area("section reading", place, place, text);
}

/// The whole section at one scale; or its height enlarged, from just below its least.
Frame frame_for(const Desk& desk, const Slice& s, const Surface& surface, ImVec2 low, ImVec2 high) {
  const double crown = std::max(s.high_z, uncut_at(s, surface, 0));
  const double wide = std::max(s.high_y - s.low_y, 1.0), tall = std::max(crown, 1.0);
  const float words = ImGui::CalcTextSize(words_of(desk, s.bass_edge).c_str()).x;
  const double room_x = high.x - low.x - 2 * (words + desk.ui.px(34)), room_y = high.y - low.y - desk.ui.px(56);
  Frame f;
  f.middle = (s.low_y + s.high_y) / 2;
  f.across = std::max(std::min(room_x / wide, room_y / tall), 0.1);
  f.up = f.across;
  const double below = (high.y - low.y - f.up * tall) / 2;
  f.origin = ImVec2((low.x + high.x) / 2, high.y - static_cast<float>(below));
  if (!desk.view.magnified) return f;
  const double least = std::max(std::min(s.least_left, std::min(s.bass_edge, s.treble_edge)) - 0.2, 0.0);
  f.base = least;
  f.up = std::max(room_y, 1.0) / std::max(crown - least, 0.05);
  f.across = std::max(room_x / wide, 0.1);
  f.origin.y = high.y - desk.ui.px(10);
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
  paint->PushClipRect(from, to, true);
  {
    Labels labels(desk.ui, paint, "section label ");
    const Sheet sheet{desk, s, desk.good->surface, from, to, frame_for(desk, s, desk.good->surface, from, to), labels};
    draw_lines(sheet);
    if (desk.view.magnified) draw_enlarged(sheet);
    draw_marks(sheet);
    draw_reading(sheet);
  }
  paint->PopClipRect();
}

}  // namespace sagitta::viewer
