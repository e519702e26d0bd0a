#include "app/OpenDialog.hpp"

#include <algorithm>

#include "dialogs/ComparePage.hpp"
#include "dialogs/Dialogs.hpp"
#include "dialogs/RescuePage.hpp"
#include "dialogs/SendOutDialog.hpp"

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
    case Dialog::rescue:
      return "Ways out of what was measured";
    case Dialog::drawing:
      return "Choose a drawing";
    case Dialog::compared:
      return "Two boards compared";
    case Dialog::save_picture:
      return "Save the picture as";
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
      return {ui.px(480), ui.px(330)};
    case Dialog::send_out:
      return {ui.px(1120), ui.px(640)};
    case Dialog::compared:
      return {ui.px(1120), ui.px(720)};
    case Dialog::start:
      return {ui.px(840), ui.px(660)};
    case Dialog::way:
      return {ui.px(660), ui.px(410)};
    case Dialog::commands:
      return {ui.px(560), ui.px(520)};
    default:
      return {ui.px(660), ui.px(520)};
  }
}

Requests draw_inside(Desk& desk, const Offer& offer) {
  Ui& ui = desk.ui;
  const Dialog dialog = desk.view.dialog;
  const Requests close{asked::Show{Dialog::none}};
  switch (dialog) {
    case Dialog::start:
      return draw_start(ui, desk.forms.start, desk.settings);
    case Dialog::open:
    case Dialog::save_as:
    case Dialog::compare_with:
    case Dialog::drawing:
    case Dialog::save_picture:
      return draw_file_dialog(ui, dialog, desk.forms.browsing, desk.document, desk.settings);
    case Dialog::sheets:
      return draw_sheets(ui, desk.results, desk.manner());
    case Dialog::compared:
      return draw_compared({ui, desk.results, desk.document.title(), desk.comparing.found()});
    case Dialog::rescue:
      return draw_rescue(ui, desk.document, desk.rescue.found(), desk.manner());
    case Dialog::send_out:
      return draw_send_out({ui, desk.document, desk.settings, desk.forms.sending, desk.results, desk.sending.state(),
                            desk.paperwork.pages()});
    case Dialog::commands:
      return draw_command_list(ui, desk.forms.commands, offer);
    case Dialog::way:
      return draw_way(ui, desk.settings, offer);
    case Dialog::comfort:
      return draw_comfort(ui, desk.settings, desk.view.camera);
    case Dialog::unsaved:
      return draw_unsaved(ui, desk.document.title());
    case Dialog::elsewhere:
      return desk.versions.elsewhere ? draw_elsewhere(ui, desk.document, *desk.versions.elsewhere, desk.manner())
                                     : close;
    case Dialog::left_over:
      return desk.versions.left_over ? draw_left_over(ui, *desk.versions.left_over) : close;
    case Dialog::frets:
      return draw_fret_page(ui, desk.document, desk.forms.measuring, desk.results, desk.manner());
    case Dialog::none:
      break;
  }
  return {};
}

bool closes(const Requests& asked) {
  return std::any_of(asked.begin(), asked.end(),
                     [](const Request& request) { return std::holds_alternative<asked::Show>(request); });
}

}  // namespace

Requests draw_open_dialog(Desk& desk, const Offer& offer) {
  const Dialog dialog = desk.view.dialog;
  if (dialog == Dialog::none) return desk.ui.no_dialog(), Requests();
  if (!desk.ui.begin_dialog(title_of(dialog), size_of(desk.ui, dialog))) return {};
  Requests asked = draw_inside(desk, offer);
  const bool escaped = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false) && dialog != Dialog::left_over;
  if (escaped && !closes(asked)) {
    if (dialog == Dialog::elsewhere) asked.push_back(asked::Resolve{asked::Resolve::How::put_off});
    asked.push_back(asked::Show{Dialog::none});
  }
  if (escaped) desk.forms.browsing = {};  // a name that was chosen for something else is never offered again
  if (escaped && dialog == Dialog::way) desk.settings.way_shown = true;
  if (closes(asked)) {
    desk.forms.commands = {};
    ImGui::CloseCurrentPopup();
  }
  desk.ui.end_dialog();
  return asked;
}

}  // namespace sagitta::viewer
