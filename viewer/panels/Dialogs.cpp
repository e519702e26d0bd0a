#include "panels/Dialogs.hpp"

#include <algorithm>

#include "app/Files.hpp"
#include "export/Presets.hpp"

namespace sagitta::viewer {

namespace {

const char* title_of(Dialog dialog) {
  switch (dialog) {
    case Dialog::start:
      return "New board";
    case Dialog::open:
      return "Open a board";
    case Dialog::save_as:
      return "Save the board as";
    case Dialog::send_out:
      return "Export";
    case Dialog::compare_with:
      return "Compare with a board";
    case Dialog::commands:
      return "Commands";
    case Dialog::way:
      return "The way through";
    case Dialog::comfort:
      return "Text, colours and units";
    case Dialog::unsaved:
      return "Unsaved changes";
    case Dialog::elsewhere:
      return "The file was changed elsewhere";
    case Dialog::left_over:
      return "A board was left open";
    case Dialog::frets:
      return "Fret by fret";
    case Dialog::sheets:
      return "Sheets with their pieces";
    case Dialog::drawing:
      return "Choose a drawing";
    case Dialog::none:
      break;
  }
  return "";
}

ImVec2 size_of(const Ui& ui, Dialog dialog) {
  switch (dialog) {
    case Dialog::unsaved:
      return {ui.px(460), ui.px(190)};
    case Dialog::left_over:
      return {ui.px(520), ui.px(230)};
    case Dialog::elsewhere:
      return {ui.px(680), ui.px(380)};
    case Dialog::comfort:
      return {ui.px(480), ui.px(262)};
    case Dialog::send_out:
      return {ui.px(1120), ui.px(640)};
    case Dialog::way:
      return {ui.px(660), ui.px(410)};
    case Dialog::commands:
      return {ui.px(560), ui.px(520)};
    default:
      return {ui.px(660), ui.px(520)};
  }
}

void draw_inside(Desk& desk, Dialog dialog) {
  switch (dialog) {
    case Dialog::start:
      return draw_start(desk);
    case Dialog::open:
    case Dialog::save_as:
    case Dialog::compare_with:
    case Dialog::drawing:
      return draw_file_dialog(desk);
    case Dialog::sheets:
      return draw_sheets(desk);
    case Dialog::send_out:
      return draw_send_out(desk);
    case Dialog::commands:
      return draw_command_list(desk);
    case Dialog::way:
      return draw_way(desk);
    case Dialog::comfort:
      return draw_comfort(desk);
    case Dialog::unsaved:
      return draw_unsaved(desk);
    case Dialog::elsewhere:
      return draw_elsewhere(desk);
    case Dialog::left_over:
      return draw_left_over(desk);
    case Dialog::frets:
      return draw_fret_page(desk);
    case Dialog::none:
      return;
  }
}

}  // namespace

float button_width(const Ui&, const char* label) {
  return ImGui::CalcTextSize(label).x + 2 * ImGui::GetStyle().FramePadding.x;
}

void dialog_foot(Ui& ui, float width) {
  const ImVec2 end = ImGui::GetContentRegionMax();
  const float line = ImGui::GetFrameHeight();
  ImGui::SetCursorPos(ImVec2(std::max(end.x - width, ui.px(14)), std::max(end.y - line, ImGui::GetCursorPosY())));
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float left = ImGui::GetWindowPos().x + ui.px(14), y = corner.y - ui.px(8);
  ImGui::GetWindowDrawList()->AddLine(ImVec2(left, y), ImVec2(ImGui::GetWindowPos().x + end.x, y), ui.theme.line);
}

void draw_dialogs(Desk& desk) {
  const Dialog dialog = desk.view.dialog;
  if (dialog == Dialog::none) return;
  if (!desk.ui.begin_dialog(title_of(dialog), size_of(desk.ui, dialog))) return;
  draw_inside(desk, dialog);
  const bool escaped = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false) && dialog != Dialog::left_over;
  if (escaped && desk.view.dialog == dialog) {
    desk.view.dialog = Dialog::none;
    if (dialog == Dialog::elsewhere) put_off(desk);
  }
  if (escaped && dialog == Dialog::way) desk.settings.way_shown = true;
  if (desk.view.dialog != dialog) {
    desk.search.clear(), desk.chosen_command = 0;
    ImGui::CloseCurrentPopup();
  }
  desk.ui.end_dialog();
}

void draw_start(Desk& desk) {
  desk.ui.quiet("A board starts from one that is near to it. Every decision can then be changed.");
  ImGui::BeginChild("presets", ImVec2(0, -ImGui::GetFrameHeightWithSpacing() - desk.ui.px(6)));
  for (const Preset& preset : presets()) {
    const std::string name(preset.name);
    if (desk.ui.row(name, name, false)) open_preset(desk, name);
    ImGui::Indent();
    desk.ui.quiet(std::string(summary(preset)));
    ImGui::Unindent();
  }
  ImGui::EndChild();
  dialog_foot(desk.ui, button_width(desk.ui, "Not now"));
  if (desk.ui.button("Not now")) desk.view.dialog = Dialog::none;
}

void draw_unsaved(Desk& desk) {
  desk.ui.quiet(desk.document.title() + " has changes that are not saved.");
  dialog_foot(desk.ui, button_width(desk.ui, "Keep working") + button_width(desk.ui, "Throw away") +
                           button_width(desk.ui, "Save") + desk.ui.px(16));
  const auto go_on = [&] {
    const auto next = std::move(desk.after_unsaved);
    desk.after_unsaved = nullptr;
    desk.view.dialog = Dialog::none;
    if (next) next(desk);
  };
  if (desk.ui.button("Keep working")) desk.view.dialog = Dialog::none, desk.after_unsaved = nullptr;
  ImGui::SameLine();
  if (desk.ui.button("Throw away")) go_on();
  ImGui::SameLine();
  if (desk.ui.primary("Save") && save_board(desk)) go_on();
}

void draw_left_over(Desk& desk) {
  if (!desk.left_over) {
    desk.view.dialog = Dialog::none;
    return;
  }
  const std::string of =
      desk.left_over->board.empty() ? "a board that had no file yet" : desk.left_over->board.string();
  desk.ui.quiet("Sagitta ended while this was being edited: " + of +
                ". A copy was kept up to two seconds before that. It can be taken up again; the file itself is as it "
                "was last saved.");
  dialog_foot(desk.ui,
              button_width(desk.ui, "Throw the copy away") + button_width(desk.ui, "Take it up again") + desk.ui.px(8));
  if (desk.ui.button("Throw the copy away")) {
    Recovery::discard(*desk.left_over);
    desk.left_over.reset();
    desk.view.dialog = Dialog::none;
  }
  ImGui::SameLine();
  if (desk.ui.primary("Take it up again")) {
    desk.view.dialog = Dialog::none;
    take_left_over(desk);
  }
}

}  // namespace sagitta::viewer
