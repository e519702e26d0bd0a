#include <imgui.h>

#include "decisions/Decisions.hpp"
#include "decisions/Differences.hpp"
#include "dialogs/Dialogs.hpp"
#include "document/OnDisk.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

void draw_problems(Ui& ui, const BoardFile& file) {
  ui.warning("The file has problems now, so that it cannot be taken:");
  for (const Problem& problem : file.problems)
    ui.quiet("line " + std::to_string(problem.line) + ": " + (problem.key.empty() ? "" : problem.key + ": ") +
             problem.message);
}

/// "Scale length (scale.length)": the window's word, and the key that stands in the file.
std::string decision_words(const std::string& key) {
  const std::string label = label_of_key(key);
  return label == key ? key : label + " (" + key + ")";
}

void draw_differences(Ui& ui, const Board& mine, const Board& theirs, const Manner& manner) {
  const auto found = differences(mine, theirs, manner);
  if (found.empty()) return ui.quiet("No value differs; its comments or its layout do.");
  if (!ImGui::BeginTable("differences", 3, ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingStretchProp)) return;
  ImGui::TableSetupColumn("Decision", ImGuiTableColumnFlags_None, 2);
  ImGui::TableSetupColumn("Here", ImGuiTableColumnFlags_None, 1);
  ImGui::TableSetupColumn("In the file", ImGuiTableColumnFlags_None, 1);
  ImGui::TableHeadersRow();
  for (const Difference& each : found) {
    ImGui::TableNextRow();
    for (const std::string& words : {decision_words(each.key), each.here, each.there}) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(words.c_str());
    }
    ui.note("difference " + each.key, each.here + " \u2192 " + each.there);
  }
  ImGui::EndTable();
}

}  // namespace

Requests draw_elsewhere(Ui& ui, const Document& document, const Elsewhere& elsewhere, const Manner& manner) {
  using How = asked::Resolve::How;
  const BoardFile& file = elsewhere.file;
  ui.quiet(document.path().string() + " was changed by another program or window since it was opened here.");
  const float foot = 2 * ImGui::GetFrameHeightWithSpacing() + ui.px(16);
  ImGui::BeginChild("versions", ImVec2(0, -foot));
  if (file.sound())
    draw_differences(ui, document.board(), file.board, manner);
  else
    draw_problems(ui, file);
  ImGui::EndChild();
  ui.quiet("Keep both saves the board here as " + free_name(document.path()).filename().string() +
           " and leaves the file alone.");
  dialog_foot(ui, button_width(ui, "Not now") + button_width(ui, "Replace the file") +
                      button_width(ui, "Take the file") + button_width(ui, "Keep both") + ui.px(24));
  if (ui.button("Not now")) return {asked::Resolve{How::put_off}};
  ImGui::SameLine();
  if (ui.button("Replace the file")) return {asked::Resolve{How::keep_mine}};
  ImGui::SameLine();
  if (ui.button("Take the file", file.sound())) return {asked::Resolve{How::take_theirs}};
  ImGui::SameLine();
  if (ui.primary("Keep both")) return {asked::Resolve{How::keep_both}};
  return {};
}

}  // namespace sagitta::viewer
