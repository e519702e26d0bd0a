#include "panels/TopBar.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "app/Commands.hpp"
#include "panels/Dialogs.hpp"

namespace sagitta::viewer {

namespace {

/// Background work that takes less than this is not worth a bar, seconds.
constexpr double worth_a_bar = 0.5;

void command_button(Desk& desk, const char* label, const char* name) {
  const Command* command = command_named(name);
  const bool can = !command->can || command->can(desk);
  if (desk.ui.button(label, can)) desk.ask(name);
  desk.ui.help(command->title + "  (" + key_words(command->key) + ")");
}

void draw_title(Desk& desk, float right) {
  const std::string title = desk.document.title() + (desk.document.dirty() ? ", changed" : "");
  ImGui::SameLine(0, desk.ui.px(18));
  const float room = right - ImGui::GetCursorScreenPos().x - desk.ui.px(14);
  if (room < desk.ui.px(60)) return;
  ImGui::AlignTextToFramePadding();
  ImGui::PushFont(desk.ui.letters.heading);
  ImGui::TextUnformatted(fitted(title, room).c_str());
  ImGui::PopFont();
  desk.ui.note("title", title);
}

void draw_work_bar(Desk& desk, float right, float top, float height) {
  const SendingState sending = desk.sending.state();
  std::string words;
  float share = -1;
  if (sending.running)
    words = "Exporting: " + sending.what, share = static_cast<float>(sending.share);
  else if (desk.working.seconds > worth_a_bar)
    words = desk.working.what, share = static_cast<float>(desk.working.share);
  if (words.empty()) return;
  Ui& ui = desk.ui;
  const float button = ImGui::CalcTextSize("Stop").x + ui.px(16), bar = ui.px(110),
              text = ImGui::CalcTextSize(words.c_str()).x;
  const float left = right - button - bar - text - ui.px(30);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddText(ImVec2(left, top + (height - ImGui::GetFontSize()) / 2), ui.theme.text, words.c_str());
  const ImVec2 low(left + text + ui.px(10), top + height / 2 - ui.px(2)), high(low.x + bar, low.y + ui.px(4));
  paint->AddRectFilled(low, high, ui.theme.line, ui.px(2));
  if (share < 0) {
    const auto at = static_cast<float>(std::fmod(desk.working.seconds, 2.0) / 2) * (bar - ui.px(30));
    paint->AddRectFilled(ImVec2(low.x + at, low.y), ImVec2(low.x + at + ui.px(30), high.y), ui.theme.accent, ui.px(2));
  } else {
    paint->AddRectFilled(low, ImVec2(low.x + bar * share, high.y), ui.theme.accent, ui.px(2));
  }
  ui.note_area("work", low, high, words);
  ImGui::SetCursorScreenPos(ImVec2(right - button, top + ui.px(2)));
  if (ImGui::SmallButton("Stop")) desk.ask("cancel");
  ui.note("Stop");
}

}  // namespace

float top_bar_height(const Ui& ui) { return ui.px(15.5f + 10 + 16); }
float status_height(const Ui& ui) { return ui.px(26); }

void draw_top_bar(Desk& desk, ImVec2 low, ImVec2 size) {
  const ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  if (desk.ui.begin_panel("Bar", low, size, still, true)) {
    ImGui::SetCursorScreenPos(ImVec2(low.x + desk.ui.px(14), low.y + desk.ui.px(8)));
    const char* const names[][2] = {{"New", "new"},
                                    {"Open", "open"},
                                    {"Save", "save"},
                                    {"Export", "export"},
                                    {"Undo", "undo"},
                                    {"Redo", "redo"},
                                    {"Compare", "compare saved"},
                                    {"Commands", "commands"}};
    // A narrow bar leaves the last ones out; the list of commands, which has them all, always stays.
    const float gap = desk.ui.px(6), list = button_width(desk.ui, "Commands") + desk.ui.px(14);
    for (const auto& [label, name] : names) {
      const bool last = std::string_view(name) == "commands";
      const float end = ImGui::GetCursorScreenPos().x + button_width(desk.ui, label);
      if (!last && end + gap + list > low.x + size.x) continue;
      command_button(desk, label, name);
      ImGui::SameLine(0, gap);
    }
    draw_title(desk, low.x + size.x);
    ImGui::GetWindowDrawList()->AddLine(ImVec2(low.x, low.y + size.y - 1), ImVec2(low.x + size.x, low.y + size.y - 1),
                                        desk.ui.theme.line);
  }
  desk.ui.end_panel();
}

void draw_status(Desk& desk, ImVec2 low, ImVec2 size) {
  const ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  if (desk.ui.begin_panel("Status", low, size, still, true)) {
    ImGui::PushFont(desk.ui.letters.small);
    ImDrawList* paint = ImGui::GetWindowDrawList();
    paint->AddLine(low, ImVec2(low.x + size.x, low.y), desk.ui.theme.line);
    const std::string text =
        desk.view.message.empty()
            ? "Drag to turn, Shift-drag to move, wheel to come nearer, click to name. F1 shows the way."
            : desk.view.message;
    const ImVec2 at(low.x + desk.ui.px(14), low.y + (size.y - ImGui::GetFontSize()) / 2);
    paint->AddText(at, desk.ui.theme.quiet, fitted(text, size.x * 0.62f).c_str());
    desk.ui.note_area("message", at, low + size, desk.view.message);
    draw_work_bar(desk, low.x + size.x - desk.ui.px(14), low.y, size.y);
    ImGui::PopFont();
  }
  desk.ui.end_panel();
}

}  // namespace sagitta::viewer
