#include "dialogs/TopBar.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

/// Background work that takes less than this is not worth a bar, seconds.
constexpr double worth_a_bar = 0.5;

void command_button(Ui& ui, const char* label, const OfferedCommand& command, Requests& asked) {
  if (ui.button(label, command.can)) asked.push_back(asked::Run{command.name});
  ui.help(command.title + "  (" + command.keys + ")");
}

void draw_title(Ui& ui, const Document& document, float right) {
  const std::string title = document.title() + (document.dirty() ? ", changed" : "");
  ImGui::SameLine(0, ui.px(18));
  const float room = right - ImGui::GetCursorScreenPos().x - ui.px(14);
  if (room < ui.px(60)) return;
  ImGui::AlignTextToFramePadding();
  ImGui::PushFont(ui.letters.heading);
  ImGui::TextUnformatted(fitted(title, room).c_str());
  ImGui::PopFont();
  ui.note("title", title);
}

void draw_work_bar(Ui& ui, const Progress& working, const SendingState& sending, float right, float top, float height,
                   Requests& asked) {
  std::string words;
  float share = -1;
  if (sending.running)
    words = "Exporting: " + sending.what, share = static_cast<float>(sending.share);
  else if (working.seconds > worth_a_bar)
    words = working.what, share = static_cast<float>(working.share);
  if (words.empty()) return;
  const float button = ImGui::CalcTextSize("Stop").x + ui.px(16), bar = ui.px(110),
              text = ImGui::CalcTextSize(words.c_str()).x;
  const float left = right - button - bar - text - ui.px(30);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddText(ImVec2(left, top + (height - ImGui::GetFontSize()) / 2), ui.theme.text, words.c_str());
  const ImVec2 low(left + text + ui.px(10), top + height / 2 - ui.px(2)), high(low.x + bar, low.y + ui.px(4));
  paint->AddRectFilled(low, high, ui.theme.line, ui.px(2));
  if (share < 0) {
    const auto at = static_cast<float>(std::fmod(working.seconds, 2.0) / 2) * (bar - ui.px(30));
    paint->AddRectFilled(ImVec2(low.x + at, low.y), ImVec2(low.x + at + ui.px(30), high.y), ui.theme.accent, ui.px(2));
  } else {
    paint->AddRectFilled(low, ImVec2(low.x + bar * share, high.y), ui.theme.accent, ui.px(2));
  }
  ui.note_area("work", low, high, words);
  ImGui::SetCursorScreenPos(ImVec2(right - button, top + ui.px(2)));
  if (ImGui::SmallButton("Stop")) asked.push_back(asked::Run{"cancel"});
  ui.note("Stop");
}

}  // namespace

float top_bar_height(const Ui& ui) { return ui.px(15.5f + 10 + 16); }
float status_height(const Ui& ui) { return ui.px(26); }

Requests draw_top_bar(Ui& ui, const Document& document, const Offer& offer, ImVec2 low, ImVec2 size) {
  Requests asked;
  const ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  if (ui.begin_panel("Bar", low, size, still, true)) {
    ImGui::SetCursorScreenPos(ImVec2(low.x + ui.px(14), low.y + ui.px(8)));
    const char* const names[][2] = {{"New", "new"},
                                    {"Open", "open"},
                                    {"Save", "save"},
                                    {"Export", "export"},
                                    {"Undo", "undo"},
                                    {"Redo", "redo"},
                                    {"Compare", "compare saved"},
                                    {"Commands", "commands"}};
    // A narrow bar leaves the last ones out; the list of commands, which has them all, always stays.
    const float gap = ui.px(6), list = button_width(ui, "Commands") + ui.px(14);
    for (const auto& [label, name] : names) {
      const bool last = std::string_view(name) == "commands";
      const float end = ImGui::GetCursorScreenPos().x + button_width(ui, label);
      if (!last && end + gap + list > low.x + size.x) continue;
      command_button(ui, label, offered(offer, name), asked);
      ImGui::SameLine(0, gap);
    }
    draw_title(ui, document, low.x + size.x);
    ImGui::GetWindowDrawList()->AddLine(ImVec2(low.x, low.y + size.y - 1), ImVec2(low.x + size.x, low.y + size.y - 1),
                                        ui.theme.line);
  }
  ui.end_panel();
  return asked;
}

Requests draw_status(Ui& ui, const std::string& message, const Progress& working, const SendingState& sending,
                     ImVec2 low, ImVec2 size) {
  Requests asked;
  const ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  if (ui.begin_panel("Status", low, size, still, true)) {
    ImGui::PushFont(ui.letters.small);
    ImDrawList* paint = ImGui::GetWindowDrawList();
    paint->AddLine(low, ImVec2(low.x + size.x, low.y), ui.theme.line);
    const std::string text =
        message.empty() ? "Drag to turn, Shift-drag to move, wheel to come nearer, click to name. F1 shows the way."
                        : message;
    const ImVec2 at(low.x + ui.px(14), low.y + (size.y - ImGui::GetFontSize()) / 2);
    paint->AddText(at, ui.theme.quiet, fitted(text, size.x * 0.62f).c_str());
    ui.note_area("message", at, low + size, message);
    draw_work_bar(ui, working, sending, low.x + size.x - ui.px(14), low.y, size.y, asked);
    ImGui::PopFont();
  }
  ui.end_panel();
  return asked;
}

}  // namespace sagitta::viewer
