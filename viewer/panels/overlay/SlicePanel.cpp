#include "overlay/SlicePanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "overlay/Figures.hpp"
#include "scene/Slice.hpp"
#include "widgets/Buttons.hpp"
#include "widgets/Labels.hpp"

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

/// The section is cut from the picture's triangles: its figures are good to the second decimal.
std::string words_of(const Manner& manner, double mm) { return shown(mm, manner, 2); }

/// How high the wood stands where the section is dimensioned: below the deepest cut, else in the middle.
double height_at_cut(const Slice& s) { return top_at(s, s.cut_at).value_or(s.high_z); }

std::vector<Figure> figures_of(const Manner& manner, const Slice& s) {
  return {{"Radius", s.radius ? words_of(manner, *s.radius) : "flat"},
          {"Bass edge", words_of(manner, s.bass_edge)},
          {"Treble edge", words_of(manner, s.treble_edge)},
          {"Cut depth", s.cut_depth ? words_of(manner, *s.cut_depth) : "no cut here"},
          {s.cut_depth ? "Left below" : "Thickness", words_of(manner, height_at_cut(s))}};
}

/// Where the section is, and the buttons that move it.
void draw_place(Ui& ui, View& view, const Manner& manner, const Slice& s, float right, Requests& asked) {
  const std::string place = words_of(manner, s.x) + ", " + s.where;
  const float box = ImGui::GetFrameHeight() + ImGui::GetStyle().ItemInnerSpacing.x;
  const float buttons = button_width(ui, "Slot before") + button_width(ui, "Next slot") +
                        ImGui::CalcTextSize("Heights enlarged").x + box + ui.px(28);
  ImGui::AlignTextToFramePadding();
  ImGui::PushFont(ui.letters.heading);
  ImGui::TextUnformatted(fitted("At " + place, std::max(right - buttons - ImGui::GetCursorPosX(), ui.px(60))).c_str());
  ImGui::PopFont();
  ui.note("section At", place);
  ImGui::SameLine(std::max(right - buttons, ui.px(76)));
  ui.tick("Heights enlarged", view.magnified);
  ImGui::SameLine(0, ui.px(14));
  if (ui.button("Slot before")) asked.push_back(asked::Run{"slot before"});
  ImGui::SameLine();
  if (ui.button("Next slot")) asked.push_back(asked::Run{"slot after"});
}

/// The picture of the section: where it is drawn, and how.
struct Sheet {
  Ui& ui;
  const Manner& manner;
  bool magnified;
  const Slice& slice;
  const Surface& surface;
  ImVec2 low, high;
  Frame frame;
  Labels& labels;
  ImDrawList* paint = ImGui::GetWindowDrawList();

  ImVec2 at(double y, double z) const { return frame.at({y, z}); }
  double uncut(double y) const { return uncut_at(slice, surface, y); }
  double top(double y) const { return top_at(slice, y).value_or(slice.high_z); }
  std::string mm(double v) const { return words_of(manner, v); }
  /// An upright dimension at a pixel's x, with its words beside it.
  void upright(float x, double from, double to, float side, const std::string& text, ImVec2 off = {}) const {
    const ImU32 ink = ui.theme.accent;
    const float a = std::min(at(0, from).y, high.y), b = at(0, to).y, half = ui.px(3);
    paint->AddLine(ImVec2(x, a), ImVec2(x, b), ink, ui.px(1.5f));
    for (const float y : {a, b}) paint->AddLine(ImVec2(x - half, y), ImVec2(x + half, y), ink, ui.px(1.5f));
    const float wide = ImGui::CalcTextSize(text.c_str()).x / 2 + ui.px(9);
    labels.put(ImVec2(x + side * wide, (a + b) / 2) + off, text, ImVec2(x, (a + b) / 2));
  }
};

void draw_lines(const Sheet& s) {
  const Ui& ui = s.ui;
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
  const ImVec2 corner = s.at(s.slice.low_y, s.slice.high_z), across = s.at(s.slice.high_y, s.frame.base);
  s.ui.note_area("section drawing", corner, across);
  const double wide = s.slice.high_y - s.slice.low_y;
  s.paint->AddLine(s.at(s.slice.low_y - wide, 0), s.at(s.slice.high_y + wide, 0), ui.theme.line);
  s.paint->PopClipRect();
}

/// Radius, both edges, the cut and what is left below it; enlarged, what the surface falls toward its edge as well.
void draw_marks(const Sheet& s) {
  const Slice& c = s.slice;
  const Ui& ui = s.ui;
  const float gap = ui.px(12);
  s.upright(s.at(c.low_y, 0).x - gap, s.frame.base, c.bass_edge, -1, s.mm(c.bass_edge));
  s.upright(s.at(c.high_y, 0).x + gap, s.frame.base, c.treble_edge, 1, s.mm(c.treble_edge));
  const ImVec2 crown = s.at(0, s.uncut(0));
  if (c.radius) s.labels.put(crown - ImVec2(0, ui.px(18)), "R " + shown(*c.radius, s.manner, 1), crown);
  if (s.magnified) {
    const double edge = s.uncut(c.high_y), drop = s.uncut(0) - edge;
    const ImVec2 corner = s.at(c.high_y, s.uncut(0));
    if (drop > 0) s.paint->AddLine(crown, corner, ui.theme.line, ui.px(1));
    if (drop > 0) s.upright(corner.x + gap, edge, s.uncut(0), 1, s.mm(drop));
  }
  const double floor = height_at_cut(c);
  if (c.cut_depth)
    s.upright(s.at(c.cut_at, 0).x, floor, floor + *c.cut_depth, 1, s.mm(*c.cut_depth) + " deep",
              ImVec2(ui.px(30), -ui.px(26)));
  if (s.magnified) return;
  const ImVec2 inside = s.at(c.cut_at, (std::max(s.frame.base, 0.0) + floor) / 2);
  const std::string left = s.mm(floor) + (c.cut_depth ? " left" : " thick");
  if (ImGui::CalcTextSize(left.c_str()).x + gap < s.at(c.high_y, 0).x - s.at(c.low_y, 0).x)
    s.labels.put(inside, left, inside);
}

void draw_enlarged(const Sheet& s) {
  const std::string text = "Heights drawn " + shown_number(s.frame.up / s.frame.across, 0) + " times larger";
  const ImVec2 at = s.low + ImVec2(s.ui.px(4), s.ui.px(2)), size = ImGui::CalcTextSize(text.c_str());
  s.paint->AddText(at, s.ui.theme.quiet, text.c_str());
  s.labels.keep_clear(at, at + size);
  s.ui.note_area("section enlarged", at, at + size, text);
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
  s.paint->AddLine(ImVec2(place.x, s.low.y), ImVec2(place.x, s.high.y), s.ui.theme.quiet, s.ui.px(1));
  s.paint->AddCircleFilled(place, s.ui.px(3), s.ui.theme.accent);
  s.labels.put(ImVec2(place.x, s.high.y), text, place);
  s.ui.note_area("section reading", place, place, text);
}

/// The whole section at one scale; or its height enlarged, from just below its least.
Frame frame_for(const Ui& ui, const Manner& manner, bool magnified, const Slice& s, const Surface& surface, ImVec2 low,
                ImVec2 high) {
  const double crown = std::max(s.high_z, uncut_at(s, surface, 0));
  const double wide = std::max(s.high_y - s.low_y, 1.0), tall = std::max(crown, 1.0);
  const float words = ImGui::CalcTextSize(words_of(manner, s.bass_edge).c_str()).x;
  const double room_x = high.x - low.x - 2 * (words + ui.px(34)), room_y = high.y - low.y - ui.px(56);
  Frame f;
  f.middle = (s.low_y + s.high_y) / 2;
  f.across = std::max(std::min(room_x / wide, room_y / tall), 0.1);
  f.up = f.across;
  const double below = (high.y - low.y - f.up * tall) / 2;
  f.origin = ImVec2((low.x + high.x) / 2, high.y - static_cast<float>(below));
  if (!magnified) return f;
  const double least = std::max(std::min(s.least_left, std::min(s.bass_edge, s.treble_edge)) - 0.2, 0.0);
  f.base = least;
  f.up = std::max(room_y, 1.0) / std::max(crown - least, 0.05);
  f.across = std::max(room_x / wide, 0.1);
  f.origin.y = high.y - ui.px(10);
  return f;
}

}  // namespace

Requests draw_slice(Ui& ui, View& view, const Results& results, const Manner& manner, ImVec2 low, ImVec2 size) {
  Requests asked;
  const StageModel* stage = results.at(view.stage);
  if (!stage || size.y < ui.px(60)) return asked;
  const Surface& surface = results.good->prepared->surface();
  const Slice s = slice_of(*stage, results.good->prepared->layout(), surface, view.cut);
  const ImVec2 high = low + size;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, ui.theme.paper);
  paint->AddLine(low, ImVec2(high.x, low.y), ui.theme.line);
  const float inside = size.x - ui.px(28);
  ImGui::SetCursorScreenPos(low + ImVec2(ui.px(14), ui.px(8)));
  ImGui::BeginChild("figures", ImVec2(inside, std::min(figures_height(ui, inside, 5), size.y / 2)), false);
  draw_place(ui, view, manner, s, inside, asked);
  draw_figures(ui, figures_of(manner, s), inside, "section ");
  ImGui::EndChild();
  const float top = ImGui::GetItemRectMax().y;
  if (s.lines.empty()) return asked;
  const ImVec2 from(low.x + ui.px(10), top + ui.px(4)), to(high.x - ui.px(10), high.y - ui.px(6));
  paint->PushClipRect(from, to, true);
  {
    Labels labels(ui, paint, "section label ");
    const Frame frame = frame_for(ui, manner, view.magnified, s, surface, from, to);
    const Sheet sheet{ui, manner, view.magnified, s, surface, from, to, frame, labels};
    draw_lines(sheet);
    if (view.magnified) draw_enlarged(sheet);
    draw_marks(sheet);
    draw_reading(sheet);
  }
  paint->PopClipRect();
  return asked;
}

}  // namespace sagitta::viewer
