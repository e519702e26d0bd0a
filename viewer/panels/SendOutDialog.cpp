#include <filesystem>

#include "document/Folders.hpp"
#include "panels/Dialogs.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

std::string usual_folder(const Desk& desk) {
  const fs::path& board = desk.document.path();
  const fs::path beside = board.empty() ? home_folder() : board.parent_path();
  const std::string name = board.empty() ? "board" : board.stem().string();
  return (beside / (name + "-export")).string();
}

void draw_form(Desk& desk) {
  Ui& ui = desk.ui;
  Settings& s = desk.settings;
  if (s.export_folder.empty()) s.export_folder = usual_folder(desk);
  ui.quiet("Every stage of the work goes into one folder, with a list of the files.");
  ui.tick("STEP, exact solids in millimetres", s.export_step);
  ui.tick("STL, triangles within 0.005 mm", s.export_stl);
  ImGui::TextUnformatted("Folder");
  ImGui::SetNextItemWidth(-1);
  ui.text_field("folder", s.export_folder, "folder to write");
  std::error_code trouble;
  const bool taken = fs::exists(s.export_folder, trouble) && !fs::is_empty(s.export_folder, trouble);
  if (taken) ui.warning("This folder holds something; exporting replaces it whole.");
  const bool able = (s.export_step || s.export_stl) && !s.export_folder.empty() && desk.model && desk.model->layout &&
                    desk.model->faults.empty();
  if (!able && desk.model && !desk.model->faults.empty())
    ui.warning("The board has problems: see the list on the right.");
  const char* go = taken ? "Replace" : "Export";
  dialog_foot(ui, button_width(ui, "Close") + button_width(ui, go) + ui.px(8));
  if (ui.button("Close")) desk.view.dialog = Dialog::none;
  ImGui::SameLine();
  if (ui.primary(go, able))
    desk.sending.start(
        {desk.document.board(), s.export_folder, s.export_step, s.export_stl, taken, desk.document.path().string()},
        desk.wake);
}

}  // namespace

void draw_send_out(Desk& desk) {
  Ui& ui = desk.ui;
  const SendingState state = desk.sending.state();
  if (!state.running && state.outcome.empty()) return draw_form(desk);
  if (state.running) {
    ui.quiet("Writing " + state.what + " \u2026");
    const std::string percent = std::to_string(static_cast<int>(100 * state.share)) + " %";
    ImGui::ProgressBar(static_cast<float>(state.share), ImVec2(-1, ui.px(8)), "");
    ui.note("progress", percent);
    dialog_foot(ui, button_width(ui, "Stop"));
    if (ui.button("Stop")) desk.sending.cancel();
    return;
  }
  if (state.good)
    ui.quiet(state.outcome);
  else
    ui.warning(state.outcome);
  ui.note("outcome", state.outcome);
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.primary("Done")) desk.sending.forget(), desk.view.dialog = Dialog::none;
}

}  // namespace sagitta::viewer
