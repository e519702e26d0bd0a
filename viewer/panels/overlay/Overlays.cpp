#include "overlay/Overlays.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "decisions/FindingMarks.hpp"
#include "overlay/BoardMarks.hpp"
#include "overlay/NeckLift.hpp"
#include "scene/Hump.hpp"
#include "scene/NeckFit.hpp"

namespace sagitta::viewer {

namespace {

constexpr double fit_scale = 20;     ///< overhang and gap are drawn this many times wider
constexpr double whole_mm = 0.0005;  ///< figures nearer to nothing than this read as level

ImU32 with_alpha(ImU32 colour, unsigned alpha) { return (colour & ~IM_COL32_A_MASK) | alpha << IM_COL32_A_SHIFT; }

Vec vec(double x, double y, double z) { return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)}; }

/// A filled quadrilateral of the board, if all of it is before the eye.
void fill(const PictureState& state, const std::array<Vec, 4>& corners, ImU32 ink) {
  ImVec2 points[4];
  for (std::size_t i = 0; i < 4; ++i) {
    const auto at = in_window(state.view.camera, corners[i], state.low);
    if (!at) return;
    points[i] = *at;
  }
  ImGui::GetWindowDrawList()->AddConvexPolyFilled(points, 4, ink);
}

void draw_hump(const PictureState& state, const Hump& hump, double scale) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const ImU32 ink = state.ui.theme.accent;
  std::optional<ImVec2> before_line, before_top;
  for (std::size_t i = 0; i < hump.places.size(); ++i) {
    const Point p = hump.places[i];
    const auto line = in_window(state.view.camera, vec(p.x, p.y, hump.line[i]), state.low);
    const auto top = in_window(state.view.camera, vec(p.x, p.y, hump.line[i] + scale * hump.rise[i]), state.low);
    if (line && top && before_line && before_top) {
      ImVec2 quad[] = {*before_line, *line, *top, *before_top};
      paint->AddConvexPolyFilled(quad, 4, with_alpha(ink, 60));
      paint->AddLine(*before_line, *line, state.ui.theme.quiet, state.ui.px(1));
      paint->AddLine(*before_top, *top, ink, state.ui.px(1.5f));
    }
    before_line = line, before_top = top;
  }
}

std::string fit_words(double over, const Manner& manner) {
  if (std::abs(over) < whole_mm) return "level";
  return (over > 0 ? "board over by " : "neck over by ") + shown(std::abs(over), manner);
}

std::string fit_legend(const PictureState& state) {
  const auto fit = neck_fit(*state.results.good->prepared, state.results.good->neck.get());
  if (!fit) return "Give the neck's widths at the nut and at the body to see the board against it";
  return std::string(fit->from_file ? "By the neck's file: along" : "Along") + " the edges, drawn " +
         shown_number(fit_scale, 0) + " times wider: in colour the board is over, dark the neck";
}

std::string hump_legend(const PictureState& state) {
  const PreparedBoard& prepared = *state.results.good->prepared;
  if (prepared.surface().flat) return "A flat board has no hump under its strings";
  const std::vector<Hump> humps = humps_of(prepared.layout(), prepared.surface());
  const std::string least = shown(least_drawn_hump, state.manner, 3);
  const bool any = std::any_of(humps.begin(), humps.end(),
                               [](const Hump& hump) { return std::abs(hump.rise[hump.most]) >= least_drawn_hump; });
  if (!any) return "No string has a hump of " + least + " or more under it";
  return "Under each string: the surface against a straight line, drawn " + shown_number(hump_scale(humps), 0) +
         " times higher; under " + least + " it is left out";
}

}  // namespace

void draw_marked_finding(const PictureState& state, Labels& labels) {
  const Finding* finding = marked_finding(state.view, state.results);
  if (!finding) return;
  const Dimension d = dimension_of(*finding, state.results.good->prepared->layout(), state.manner);
  const auto at = in_window(state.view.camera, vec(finding->at[0], finding->at[1], finding->at[2]), state.low);
  if (!at) return;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddCircle(*at, state.ui.px(11), state.ui.theme.paper, 0, state.ui.px(4));
  paint->AddCircle(*at, state.ui.px(11), state.ui.theme.accent, 0, state.ui.px(2));
  labels.keep_clear(*at - ImVec2(state.ui.px(13), state.ui.px(13)), *at + ImVec2(state.ui.px(13), state.ui.px(13)));
  draw_dimension(state, d, labels);
  state.ui.note_area("marked finding", *at, *at, d.text);
}

void draw_humps(const PictureState& state, Labels& labels) {
  if (!state.view.humps || !state.results.good || !state.results.good->prepared ||
      state.results.good->prepared->surface().flat)
    return;
  const std::vector<Hump> humps =
      humps_of(state.results.good->prepared->layout(), state.results.good->prepared->surface());
  const double scale = hump_scale(humps);
  for (std::size_t i = 0; i < humps.size(); ++i) {
    const Hump& hump = humps[i];
    const Point p = hump.places[hump.most];
    const std::string text = shown(hump.rise[hump.most], state.manner, 4);
    state.ui.note_area("hump " + std::to_string(i + 1), state.low, state.low, text);
    if (std::abs(hump.rise[hump.most]) < least_drawn_hump) continue;
    draw_hump(state, hump, scale);
    const auto at =
        in_window(state.view.camera, vec(p.x, p.y, hump.line[hump.most] + scale * hump.rise[hump.most]), state.low);
    // Strings are counted from the treble side, as players count them.
    if (at)
      labels.put(*at - ImVec2(0, state.ui.px(16)), "string " + std::to_string(humps.size() - i) + ": " + text, *at);
  }
}

void draw_fit_to_neck(const PictureState& state, Labels& labels) {
  if (!state.view.fit_to_neck || !state.results.good || !state.results.good->prepared) return;
  const Layout& layout = state.results.good->prepared->layout();
  const auto fit = neck_fit(*state.results.good->prepared, state.results.good->neck.get());
  if (!fit) return;
  // Beside the neck where it is shown and the board is lifted off it, unless the board hides that side of it.
  const std::size_t near_side = state.view.camera.eye().y < 0 ? 0 : 1;
  const auto level = [&](std::size_t side) {
    return state.view.neck && side == near_side ? -static_cast<double>(state.view.apart) : 0.0;
  };
  const ImU32 over_ink = with_alpha(state.ui.theme.accent, 150), short_ink = with_alpha(state.ui.theme.text, 170);
  for (const std::size_t side : {0u, 1u})
    for (std::size_t i = 1; i < fit->sides[side].size(); ++i) {
      const FitStation &a = fit->sides[side][i - 1], &b = fit->sides[side][i];
      const auto edge = [&](const FitStation& s, double by) {
        return vec(s.x, (side == 0 ? -1 : 1) * (layout.edge(static_cast<int>(side), s.x) + by), level(side));
      };
      fill(state,
           {edge(a, 0), edge(b, 0), edge(b, fit_scale * std::abs(b.over)), edge(a, fit_scale * std::abs(a.over))},
           a.over + b.over >= 0 ? over_ink : short_ink);
    }
  const auto label = [&](const FitStation& s, int side, const char* name) {
    const std::string text = fit_words(s.over, state.manner);
    const double y = (side == 0 ? -1 : 1) * (layout.edge(side, s.x) + fit_scale * std::abs(s.over) + 6);
    if (const auto at = in_window(state.view.camera, vec(s.x, y, level(side == 0 ? 0 : 1)), state.low))
      labels.put(*at, text, *at);
    state.ui.note_area(name, state.low, state.low, text);
  };
  label(fit->most[0], 0, "neck fit at negative y");
  label(fit->most[1], 1, "neck fit at positive y");
  const auto told = [&](const FitStation& s, int side) { return s.over == fit->most[side == 0 ? 0 : 1].over; };
  const auto once_more = [&](const FitStation& s, int side, const char* name) {
    if (told(s, side)) return state.ui.note_area(name, state.low, state.low, fit_words(s.over, state.manner));
    label(s, side, name);
  };
  once_more(fit->widest, fit->widest_side, "neck fit widest");
  if (fit->narrowest.over != fit->widest.over) once_more(fit->narrowest, fit->narrowest_side, "neck fit narrowest");
}

std::vector<std::string> legends_of(const PictureState& state) {
  std::vector<std::string> lines;
  if (!state.results.good || !state.results.good->prepared) return lines;
  if (state.view.humps) lines.push_back(hump_legend(state));
  if (state.view.fit_to_neck) lines.push_back(fit_legend(state));
  if (const std::string words = neck_shown_words(state); !words.empty()) lines.push_back(words);
  return lines;
}

}  // namespace sagitta::viewer
