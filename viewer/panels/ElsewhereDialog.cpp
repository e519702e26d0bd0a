#include <imgui.h>

#include "app/Elsewhere.hpp"
#include "document/OnDisk.hpp"
#include "panels/Dialogs.hpp"

namespace sagitta::viewer {

namespace {

void draw_problems(Desk& desk, const BoardFile& file) {
  desk.ui.warning("The file has problems now, so that it cannot be taken:");
  for (const Problem& problem : file.problems)
    desk.ui.quiet("line " + std::to_string(problem.line) + ": " + (problem.key.empty() ? "" : problem.key + ": ") +
                  problem.message);
}

void draw_differences(Desk& desk, const Board& theirs) {
  const auto found = differences(desk.document.board(), theirs, desk.manner());
  if (found.empty()) return desk.ui.quiet("No value differs; its comments or its layout do.");
  if (!ImGui::BeginTable("differences", 3, ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingStretchProp)) return;
  ImGui::TableSetupColumn("Decision", ImGuiTableColumnFlags_None, 2);
  ImGui::TableSetupColumn("Here", ImGuiTableColumnFlags_None, 1);
  ImGui::TableSetupColumn("In the file", ImGuiTableColumnFlags_None, 1);
  ImGui::TableHeadersRow();
  for (const Difference& each : found) {
    ImGui::TableNextRow();
    for (const std::string& words : {each.key, each.here, each.there}) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(words.c_str());
    }
    desk.ui.note("difference " + each.key, each.here + " \u2192 " + each.there);
  }
  ImGui::EndTable();
}

}  // namespace

void draw_elsewhere(Desk& desk) {
  if (!desk.elsewhere) {
    desk.view.dialog = Dialog::none;
    return;
  }
  Ui& ui = desk.ui;
  ui.quiet(desk.document.path().string() + " was changed by another program or window since it was opened here.");
  const float foot = 2 * ImGui::GetFrameHeightWithSpacing() + ui.px(16);
  ImGui::BeginChild("versions", ImVec2(0, -foot));
  if (desk.elsewhere->file.sound())
    draw_differences(desk, desk.elsewhere->file.board);
  else
    draw_problems(desk, desk.elsewhere->file);
  ImGui::EndChild();
  ui.quiet("Keep both saves the board here as " + free_name(desk.document.path()).filename().string() +
           " and leaves the file alone.");
  dialog_foot(ui, button_width(ui, "Not now") + button_width(ui, "Replace the file") +
                      button_width(ui, "Take the file") + button_width(ui, "Keep both") + ui.px(24));
  if (ui.button("Not now")) return put_off(desk);
  ImGui::SameLine();
  if (ui.button("Replace the file")) return keep_mine(desk);
  ImGui::SameLine();
  if (ui.button("Take the file", desk.elsewhere->file.sound())) return take_theirs(desk);
  ImGui::SameLine();
  if (ui.primary("Keep both")) keep_both(desk);
}

}  // namespace sagitta::viewer
