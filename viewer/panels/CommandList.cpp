#include <algorithm>

#include "app/Commands.hpp"
#include "panels/Dialogs.hpp"

namespace sagitta::viewer {

namespace {

bool pressed(ImGuiKey key, bool repeat = true) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key), repeat); }

void run(Desk& desk, const Command& command) {
  desk.view.dialog = Dialog::none;
  desk.ask(command.name);
}

}  // namespace

void draw_command_list(Desk& desk) {
  Ui& ui = desk.ui;
  ImGui::SetNextItemWidth(-1);
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  if (ui.text_field("search", desk.search, "type a few letters of what you want to do")) desk.chosen_command = 0;
  const auto found = search_commands(desk.search);
  const int last = static_cast<int>(found.size()) - 1;
  const bool moved = pressed(ImGuiKey_DownArrow) || pressed(ImGuiKey_UpArrow);
  if (pressed(ImGuiKey_DownArrow)) ++desk.chosen_command;
  if (pressed(ImGuiKey_UpArrow)) --desk.chosen_command;
  desk.chosen_command = std::clamp(desk.chosen_command, 0, std::max(last, 0));
  const bool enter = pressed(ImGuiKey_Enter, false);
  ImGui::BeginChild("commands");
  if (found.empty()) ui.quiet("Nothing of that name.");
  for (int i = 0; i <= last; ++i) {
    const Command& command = *found[static_cast<std::size_t>(i)];
    const bool can = !command.can || command.can(desk);
    ImGui::PushID(i);
    ImGui::BeginDisabled(!can);
    const bool chosen =
        ImGui::Selectable(command.title.c_str(), i == desk.chosen_command, ImGuiSelectableFlags_DontClosePopups);
    ImGui::EndDisabled();
    ui.note(command.name, command.title, can);
    if (moved && i == desk.chosen_command) ImGui::SetScrollHereY(0.5f);
    const std::string keys = key_words(command.key);
    ImGui::SameLine(ImGui::GetContentRegionMax().x - ImGui::CalcTextSize(keys.c_str()).x - ui.px(8));
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    ImGui::TextUnformatted(keys.c_str());
    ImGui::PopStyleColor();
    ImGui::PopID();
    if (can && (chosen || (enter && i == desk.chosen_command))) run(desk, command);
  }
  ImGui::EndChild();
}

}  // namespace sagitta::viewer
