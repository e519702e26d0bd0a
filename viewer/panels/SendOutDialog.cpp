#include <algorithm>
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

HandOffKinds kinds_of(const Settings& s) {
  return {.step = s.export_step,
          .stl = s.export_stl,
          .dxf = s.export_dxf,
          .svg = s.export_svg,
          .pdf = s.export_pdf,
          .csv = s.export_csv,
          .three_mf = s.export_three_mf,
          .png = s.export_png,
          .html = s.export_html};
}

void draw_paper(Desk& desk) {
  const std::vector<std::string> names{"A4", "A3", "Letter", "Tabloid"};
  const auto now = std::find(names.begin(), names.end(), desk.settings.export_paper);
  int chosen = now == names.end() ? 0 : static_cast<int>(now - names.begin());
  ImGui::SetNextItemWidth(desk.ui.px(100));
  if (desk.ui.choice("paper", names, chosen)) desk.settings.export_paper = names[static_cast<std::size_t>(chosen)];
}

void draw_form(Desk& desk) {
  Ui& ui = desk.ui;
  Settings& s = desk.settings;
  if (s.export_folder.empty()) s.export_folder = usual_folder(desk);
  ui.quiet("One folder for the machine, the bench and next month, with a list of its files.");
  ui.tick("STEP: each stage as an exact solid, for CAM", s.export_step);
  ui.tick("STL: each stage as triangles within 0.005 mm", s.export_stl);
  ui.tick("3MF: the same triangles with unit, name and colour", s.export_three_mf);
  ui.tick("DXF: outlines by operation, for each set-up in its own zero", s.export_dxf);
  ui.tick("SVG: the same outlines in true size", s.export_svg);
  ui.tick("PDF: slotting template and drawings at 1:1", s.export_pdf);
  if (s.export_pdf) {
    ImGui::SameLine();
    if (ImGui::GetContentRegionAvail().x < ui.px(100)) ImGui::NewLine();
    draw_paper(desk);
  }
  ui.tick("CSV: frets, wire and pieces as tables", s.export_csv);
  ui.tick("PNG: a picture of each stage", s.export_png);
  ui.tick("HTML: the job sheet for the machine, set-up by set-up", s.export_html);
  ImGui::TextUnformatted("Folder");
  ImGui::SetNextItemWidth(-1);
  ui.text_field("folder", s.export_folder, "folder to write");
  std::error_code trouble;
  const bool taken = fs::exists(s.export_folder, trouble) && !fs::is_empty(s.export_folder, trouble);
  if (taken) ui.warning("This folder holds something; exporting replaces it whole.");
  const HandOffKinds k = kinds_of(s);
  const bool any = k.step || k.stl || k.three_mf || k.dxf || k.svg || k.pdf || k.csv || k.png || k.html;
  const bool able = any && !s.export_folder.empty() && desk.model && desk.model->layout && desk.model->faults.empty();
  if (!able && desk.model && !desk.model->faults.empty())
    ui.warning("The board has problems: see the list on the right.");
  const char* go = taken ? "Replace" : "Export";
  dialog_foot(ui, button_width(ui, "Close") + button_width(ui, go) + ui.px(8));
  if (ui.button("Close")) desk.view.dialog = Dialog::none;
  ImGui::SameLine();
  if (ui.primary(go, able))
    desk.sending.start(
        {desk.document.board(), s.export_folder, k, s.export_paper, taken, desk.document.path().string()}, desk.wake);
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
  const bool copy = state.good;
  dialog_foot(ui, button_width(ui, "Done") + (copy ? button_width(ui, "Copy the folder's path") + ui.px(8) : 0));
  if (copy) {
    if (ui.button("Copy the folder's path")) ImGui::SetClipboardText(desk.settings.export_folder.c_str());
    ImGui::SameLine();
  }
  if (ui.primary("Done")) desk.sending.forget(), desk.view.dialog = Dialog::none;
}

}  // namespace sagitta::viewer
