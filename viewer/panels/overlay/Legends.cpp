#include "overlay/Legends.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "overlay/Overlays.hpp"
#include "scene/HeightSpan.hpp"

namespace sagitta::viewer {

namespace {

/// The ends of the shading by height, as the light leaves them on the screen.
constexpr ImU32 low_ink = IM_COL32(34, 43, 55, 255), high_ink = IM_COL32(237, 233, 222, 255);

struct Place {
  ImVec2 low;  ///< the legends' lower left corner
  float y;     ///< the next one ends here
  float room;  ///< width, pixels
  int told = 0;
};

/// A ramp from the lowest to the highest, a tick at every contour line, and both heights in numbers.
void draw_ramp(const PictureState& state, Place& place, Labels& labels) {
  const StageModel* stage = state.results.at(state.view.stage);
  if (!stage || !state.results.laid_out()) return;
  const PreparedBoard& prepared = *state.results.good->prepared;
  const auto span = height_span(prepared.layout(), prepared.surface(), *stage);
  const Ui& ui = state.ui;
  const std::string from = shown(static_cast<double>(span[0]), state.manner, 2),
                    to = shown(static_cast<double>(span[1]), state.manner, 2),
                    step = "Height; a line every " + shown(contour_step, state.manner, 2);
  const float bar = ui.px(120), tall = ui.px(10), gap = ui.px(8), line = ImGui::GetFontSize();
  const float ends = ImGui::CalcTextSize(from.c_str()).x + ImGui::CalcTextSize(to.c_str()).x + 2 * gap + bar;
  const ImVec2 pad(ui.px(6), ui.px(4)), size(std::max(ends, ImGui::CalcTextSize(step.c_str()).x), 2 * line + gap / 2);
  const ImVec2 at(place.low.x, place.y - size.y);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(at - pad, at + size + pad, ui.theme.paper, ui.px(3));
  paint->AddText(at, ui.theme.text, step.c_str());
  const float y = at.y + line + gap / 2, x = at.x + ImGui::CalcTextSize(from.c_str()).x + gap;
  paint->AddText(ImVec2(at.x, y), ui.theme.text, from.c_str());
  paint->AddText(ImVec2(x + bar + gap, y), ui.theme.text, to.c_str());
  const ImVec2 low(x, y + (line - tall) / 2), high = low + ImVec2(bar, tall);
  paint->AddRectFilledMultiColor(low, high, low_ink, high_ink, high_ink, low_ink);
  paint->AddRect(low, high, ui.theme.quiet);
  const double wide = static_cast<double>(span[1] - span[0]);
  for (double z = std::ceil(static_cast<double>(span[0]) / contour_step) * contour_step;
       z < static_cast<double>(span[1]); z += contour_step) {
    const float tick = low.x + bar * static_cast<float>((z - static_cast<double>(span[0])) / std::max(wide, 1e-9));
    paint->AddLine(ImVec2(tick, low.y), ImVec2(tick, high.y), ui.theme.quiet);
  }
  labels.keep_clear(at - pad, at + size + pad);
  state.ui.note_area("height legend", at - pad, at + size + pad, from + " " + to);
  place.y = at.y - 2 * pad.y - ui.px(3);
}

void draw_words(const PictureState& state, const std::string& text, float height, Place& place, Labels& labels) {
  const Ui& ui = state.ui;
  // On a small picture one line is enough: it may not cover the board.
  const std::string lines = wrapped(text, place.room);
  const bool small = ImGui::CalcTextSize(lines.c_str()).y > height / 5;
  const std::string kept = small ? fitted(text, place.room) : lines;
  const ImVec2 size = ImGui::CalcTextSize(kept.c_str()), pad(ui.px(6), ui.px(3));
  const ImVec2 at(place.low.x, place.y - size.y);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(at - pad, at + size + pad, ui.theme.paper, ui.px(3));
  paint->AddText(at, ui.theme.text, kept.c_str());
  labels.keep_clear(at - pad, at + size + pad);
  state.ui.note_area("legend " + std::to_string(++place.told), at - pad, at + size + pad, text);
  place.y = at.y - 2 * pad.y - ui.px(3);
}

}  // namespace

void draw_legends(const PictureState& state, float height, Labels& labels) {
  std::vector<std::string> lines = legends_of(state);
  if (state.view.shade == Shade::remaining)
    lines.push_back("Of each piece, once the board is sanded: in colour nothing is left, light is its full thickness");
  if (state.view.shade == Shade::change)
    lines.push_back("Against the other board: in colour it is higher here, dark lower");
  const float margin = state.ui.px(14);
  Place place{state.low + ImVec2(margin, height - state.ui.px(12)), state.low.y + height - state.ui.px(12),
              state.view.camera.width - 2 * margin};
  if (state.view.shade == Shade::height) draw_ramp(state, place, labels);
  for (const std::string& text : lines) draw_words(state, text, height, place, labels);
}

}  // namespace sagitta::viewer
