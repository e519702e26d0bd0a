#include "overlay/SideDrawing.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "decisions/FindingMarks.hpp"

namespace sagitta::viewer {

namespace {

/// Findings that the height chain makes.
constexpr std::string_view of_heights[] = {"bridge-too-low", "bridge-too-high", "angle-needed",
                                           "buzz-at-fret",   "end-into-body",   "neck-too-thin-at-rod"};
constexpr int stations = 200;
constexpr double past_saddle = 4, past_end = 1.5;  // mm

bool is_of_heights(const Finding& finding) {
  return std::find(std::begin(of_heights), std::end(of_heights), finding.name) != std::end(of_heights);
}

const StringHeights& heights_of(const HeightChain& chain, int string) {
  return chain.strings[static_cast<std::size_t>(std::clamp(string, 0, static_cast<int>(chain.strings.size()) - 1))];
}

LineSegment string_line(const Layout& layout, int string) {
  if (layout.strings.empty()) return {{0, 0}, {1, 0}};
  return layout.strings[static_cast<std::size_t>(std::clamp(string, 0, static_cast<int>(layout.strings.size()) - 1))];
}

double string_z(const StringHeights& s, double x) {
  return s.nut_z + (s.saddle_z - s.nut_z) * (x - s.nut_x) / (s.saddle_x - s.nut_x);
}

/// z of the body's top at the saddle: where a bridge of no height would end.
double body_at_saddle(const HeightChain& chain) { return saddle_for(*chain.body, 0, chain.angle); }

void draw_fret_tops(const LongSheet& s, const StringHeights& string) {
  const Wire& wire = s.board().board().wire;
  for (const FretHeight& fret : string.frets) {
    const double half = wire.crown_width / 2, foot = fret.top - wire.crown_height;
    const ImVec2 corners[] = {s.at(fret.at.x - half, foot), s.at(fret.at.x - half * 0.55, fret.top),
                              s.at(fret.at.x + half * 0.55, fret.top), s.at(fret.at.x + half, foot)};
    s.paint->AddConvexPolyFilled(corners, 4, s.ui.theme.quiet);
  }
}

void draw_string(const LongSheet& s, const StringHeights& string) {
  s.line({string.nut_x, string.nut_z}, {string.saddle_x, string.saddle_z}, s.ui.theme.accent, 1.5f);
  const LineSegment line = string_line(s.board().layout(), string.string);
  const double ground = s.board().surface().lowest(string.nut_x, line.a.y);
  s.line({string.nut_x, ground}, {string.nut_x, string.nut_z}, s.ui.theme.text, 2);
}

void draw_action(const LongSheet& s, const HeightChain& chain, const StringHeights& string) {
  const Heights& heights = *s.board().board().height;
  // Without room between frets and string the words stand on the wood.
  const float under = s.view.magnified ? 0 : s.at(0, 0).y - s.at(0, s.board().surface().thickness / 2 + 2).y;
  for (const FretHeight& fret : string.frets) {
    if (fret.fret == heights.action_fret)
      s.upright(fret.at.x, fret.top, fret.top + fret.height, 1, "action " + s.mm(fret.height), under);
    if (fret.fret == heights.relief_fret && chain.relief != 0)
      s.upright(fret.at.x, fret.top, fret.top + chain.relief, -1, "relief " + s.mm(chain.relief), under);
  }
}

/// The body's top from joint to saddle, the saddle over it, and the bridge that is given.
void draw_body(const LongSheet& s, const HeightChain& chain) {
  const BodyLine& body = *chain.body;
  const double foot = body_at_saddle(chain);
  s.line({body.joint_x, -body.step}, {body.saddle_x, foot}, s.ui.theme.text, 2);
  s.upright(body.saddle_x, foot, chain.saddle_z, -1, "saddle " + s.mm(*chain.needed_bridge));
  if (!chain.bridge) return;
  const ImVec2 top = s.at(body.saddle_x, saddle_for(body, *chain.bridge, chain.angle));
  s.paint->AddLine(top - ImVec2(s.ui.px(9), 0), top + ImVec2(s.ui.px(9), 0), s.ui.theme.look, s.ui.px(2));
  s.labels.put(top + ImVec2(-s.ui.px(60), s.ui.px(16)), "bridge " + s.mm(*chain.bridge), top);
}

/// Where the neck meets the body, and from where the surface falls away.
void draw_places(const LongSheet& s) {
  if (s.board().board().neck) {
    const double joint = joint_place(s.board());
    s.hair(joint, s.ui.theme.line);
    const ImVec2 foot(s.at(joint, 0).x,
                      s.view.magnified ? s.low.y + 0.45f * (s.high.y - s.low.y) : s.high.y - s.ui.px(10));
    s.labels.put(foot - ImVec2(s.ui.px(26), 0), "joint", foot);
  }
  if (const auto& fall = s.board().surface().fall_start) {
    const double y = string_line(s.board().layout(), s.view.side_string).a.y;
    const ImVec2 at = s.at(*fall, s.board().surface().height(*fall, y) - relief_at(s.board(), *fall));
    s.paint->AddCircleFilled(at, s.ui.px(3), s.ui.theme.accent);
    s.labels.put(at + ImVec2(0, s.ui.px(22)), "falls away from here", at);
  }
}

void draw_findings(const LongSheet& s) {
  for (const Finding& finding : s.model.findings) {
    if (!is_of_heights(finding) || finding.severity == Severity::note) continue;
    ImVec2 at = s.at(finding.at[0], finding.at[2]);
    at.y = std::clamp(at.y, s.low.y + s.ui.px(8), s.high.y - s.ui.px(8));
    const ImU32 ink = finding.severity == Severity::stop ? s.ui.theme.accent : s.ui.theme.look;
    s.paint->AddCircle(at, s.ui.px(7), ink, 0, s.ui.px(2));
    s.labels.put(at + ImVec2(0, -s.ui.px(20)), finding_title(finding), at);
    s.ui.note_area("side finding " + finding.name, at - ImVec2(s.ui.px(8), s.ui.px(8)),
                   at + ImVec2(s.ui.px(8), s.ui.px(8)), finding_title(finding));
  }
}

/// The height over the fret that is nearest to the pointer.
void draw_reading(const LongSheet& s, const StringHeights& string) {
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  if (!ImGui::IsWindowHovered() || pointer.x < s.low.x || pointer.x > s.high.x || pointer.y < s.low.y ||
      pointer.y > s.high.y || string.frets.empty())
    return;
  const double x = s.frame.x_at(pointer.x);
  const auto nearer = [&](const FretHeight& a, const FretHeight& b) {
    return std::abs(a.at.x - x) < std::abs(b.at.x - x);
  };
  const FretHeight& fret = *std::min_element(string.frets.begin(), string.frets.end(), nearer);
  const ImVec2 at = s.at(fret.at.x, fret.top);
  s.paint->AddCircleFilled(at, s.ui.px(3), s.ui.theme.accent);
  const std::string text = shown(fret.height, s.manner) + " over fret " + std::to_string(fret.fret);
  s.labels.put(ImVec2(at.x, s.low.y + s.ui.px(26)), text, at);
  s.ui.note_area("side reading", at, at, text);
}

}  // namespace

std::vector<std::string> string_names(const Layout& layout) {
  std::vector<std::string> names;
  const std::size_t count = layout.strings.size();
  for (std::size_t i = 0; i < count; ++i)
    names.push_back("String " + std::to_string(count - i) + (i == 0 ? ", bass" : i + 1 == count ? ", treble" : ""));
  return names;
}

std::vector<Figure> side_figures(const PreparedBoard& board, const std::optional<HeightChain>& chain,
                                 const Manner& manner) {
  const auto mm = [&](double v) { return shown(v, manner, 2); };
  const double angle = chain ? chain->angle * 180 / std::numbers::pi : 0;
  std::vector<Figure> figures;
  if (board.board().neck) figures.push_back({"Joint at", mm(joint_place(board))});
  if (!chain) return figures;
  figures.push_back({"Relief", mm(chain->relief)});
  figures.push_back({"Action, middle", mm(chain->action)});
  figures.push_back({"Neck angle", shown_number(angle, 2) + " degrees"});
  if (chain->needed_bridge) figures.push_back({"Saddle over body", mm(*chain->needed_bridge)});
  return figures;
}

LongExtent side_extent(const PreparedBoard& board, const std::optional<HeightChain>& chain, int string,
                       bool magnified) {
  const Layout& layout = board.layout();
  const LineSegment line = string_line(layout, string);
  LongExtent e{layout.nut_end - past_end, layout.heel_end + past_end, 1e9, -1e9};
  for (int i = 0; i <= stations; ++i) {
    const double x = layout.nut_end + (layout.heel_end - layout.nut_end) * i / stations;
    const double y = line.a.y + (line.b.y - line.a.y) * (x - line.a.x) / (line.b.x - line.a.x);
    e.take(board.surface().lowest(x, y) - relief_at(board, x));
  }
  if (!magnified) e.take(0);
  if (!chain) return e.take(e.z_high + board.board().wire.crown_height), e;
  const StringHeights& s = heights_of(*chain, string);
  for (const FretHeight& fret : s.frets) e.take(fret.top + std::max(fret.height, 0.0));
  e.take(s.nut_z);
  if (magnified) return e.take(string_z(s, layout.heel_end)), e;
  e.x_high = std::max(e.x_high, s.saddle_x + past_saddle);
  e.take(s.saddle_z);
  if (chain->body) e.take(body_at_saddle(*chain)), e.take(-chain->body->step);
  return e;
}

void draw_side(const LongSheet& s, const std::optional<HeightChain>& chain, int string) {
  const LineSegment line = string_line(s.board().layout(), string);
  s.paint->PushClipRect(s.low, s.high, true);
  draw_places(s);
  const std::vector<SliceLine> wood = bent(long_slice(s.stage.mesh, line), s.board());
  s.fill(wood, s.ui.theme.field);
  s.lines(wood, s.ui.theme.text, 1.2f);
  if (chain) {
    draw_fret_tops(s, heights_of(*chain, string));
    draw_string(s, heights_of(*chain, string));
    draw_action(s, *chain, heights_of(*chain, string));
    if (chain->body && !s.view.magnified) draw_body(s, *chain);
  }
  draw_findings(s);
  if (chain) draw_reading(s, heights_of(*chain, string));
  s.paint->PopClipRect();
  s.ui.note_area("side drawing", s.low, s.high);
}

int draw_fret_heights(const LongSheet& s, const HeightChain& chain, int string, float y, bool paint) {
  ImGui::PushFont(s.ui.letters.small);
  const float tall = ImGui::GetFontSize();
  std::vector<float> ends;
  for (const FretHeight& fret : heights_of(chain, string).frets) {
    const std::string text =
        s.manner.units == Units::mm ? fixed_number(fret.height, 2) : shown_bare(fret.height, s.manner, 2);
    const float half = ImGui::CalcTextSize(text.c_str()).x / 2, middle = s.at(fret.at.x, 0).x;
    const auto row = std::find_if(ends.begin(), ends.end(), [&](float end) { return end < middle - half; });
    const auto place = row - ends.begin();
    if (row == ends.end()) ends.push_back(0);
    ends[static_cast<std::size_t>(place)] = middle + half + s.ui.px(5);
    if (!paint) continue;
    const ImVec2 at(middle - half, y + static_cast<float>(place) * tall);
    if (place > 0) s.paint->AddLine(ImVec2(middle, y), ImVec2(middle, at.y), s.ui.theme.line, s.ui.px(1));
    s.paint->AddText(at, s.ui.theme.text, text.c_str());
    s.ui.note_area("string over fret " + std::to_string(fret.fret), at, at + ImVec2(2 * half, tall), text);
  }
  ImGui::PopFont();
  return static_cast<int>(ends.size());
}

}  // namespace sagitta::viewer
