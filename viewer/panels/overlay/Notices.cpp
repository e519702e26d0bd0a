#include "overlay/Notices.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "widgets/Block.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

/// Words on a sheet of paper with buttons below them.
struct Notice {
  std::string name, words;
  std::vector<const char*> buttons;
  bool grave = false;
};

/// Draws it with its top at `y`; returns the button pressed, -1 for none, and moves `y` below it.
int draw_notice(Ui& ui, const Notice& notice, ImVec2 low, float width, float& y) {
  const float pad = ui.px(12), most = std::min(width - ui.px(40), ui.px(520));
  const std::string words = wrapped(notice.words, most - 2 * pad);
  const ImVec2 text = ImGui::CalcTextSize(words.c_str());
  float row = 0;
  for (const char* label : notice.buttons) row += button_width(ui, label) + ui.px(8);
  const float line = notice.buttons.empty() ? 0 : ImGui::GetFrameHeight() + ui.px(6);
  const ImVec2 size(std::max(text.x, row) + 2 * pad, text.y + line + ui.px(16));
  const ImVec2 at(low.x + (width - size.x) / 2, y);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(at, at + size, ui.theme.paper, ui.px(4));
  paint->AddRect(at, at + size, notice.grave ? ui.theme.accent : ui.theme.line, ui.px(4), 0, ui.px(1.5f));
  if (notice.grave) paint->AddRectFilled(at, ImVec2(at.x + ui.px(5), at.y + size.y), ui.theme.accent, ui.px(2));
  paint->AddText(at + ImVec2(pad, ui.px(8)), ui.theme.text, words.c_str());
  ui.note_area(notice.name, at, at + size, notice.words);
  int pressed = -1;
  ImGui::SetCursorScreenPos(at + ImVec2(pad, text.y + ui.px(14)));
  for (std::size_t i = 0; i < notice.buttons.size(); ++i) {
    if (i > 0) ImGui::SameLine();
    if (ui.button(notice.buttons[i])) pressed = static_cast<int>(i);
  }
  y += size.y + ui.px(8);
  return pressed;
}

}  // namespace

Requests draw_notices(Ui& ui, View& view, const Behind& behind, ImVec2 low, ImVec2 size) {
  Requests asked;
  float y = low.y + ui.px(12);
  if (view.failure) {
    const Failed failure = *view.failure;
    Notice notice{"failure", failure.words, {}, true};
    if (!failure.label.empty()) notice.buttons.push_back(failure.label.c_str());
    notice.buttons.push_back("I have read it");
    const int pressed = draw_notice(ui, notice, low, size.x, y);
    if (pressed >= 0) view.failure.reset();
    if (pressed == 0 && !failure.label.empty()) asked.push_back(asked::Run{failure.command});
  }
  if (behind.picture) {
    Notice notice{"behind", "Picture of the board before: " + behind.why, {}};
    if (!notice.words.ends_with('.')) notice.words += ".";
    if (behind.stopped) notice.buttons.push_back("Go on");
    if (draw_notice(ui, notice, low, size.x, y) == 0) asked.push_back(asked::Run{"go on"});
  }
  return asked;
}

}  // namespace sagitta::viewer
