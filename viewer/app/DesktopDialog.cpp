#include "app/DesktopDialog.hpp"

#include "document/Folders.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

bool is_for_files(Dialog dialog) {
  return dialog == Dialog::open || dialog == Dialog::save_as || dialog == Dialog::compare_with ||
         dialog == Dialog::drawing || dialog == Dialog::save_picture;
}

fs::path start_of(const Desk& desk, Dialog dialog) {
  const fs::path& board = desk.document.path();
  if (dialog == Dialog::save_as && board.empty()) return home_folder() / (desk.document.title() + ".toml");
  if (dialog == Dialog::save_as) return board;
  if (dialog == Dialog::save_picture)
    return board.empty() ? home_folder() / (desk.document.title() + ".png") : fs::path(board).replace_extension(".png");
  if (!board.empty()) return board.parent_path() / "";
  return desk.settings.recent.empty() ? home_folder() / "" : fs::path(desk.settings.recent[0]).parent_path() / "";
}

FileQuestion question_for(const Desk& desk, Dialog dialog) {
  FileQuestion question{"Open a board",
                        start_of(desk, dialog),
                        dialog == Dialog::save_as || dialog == Dialog::save_picture,
                        "Boards",
                        {"*.toml"}};
  if (dialog == Dialog::save_as) question.title = "Save the board as";
  if (dialog == Dialog::compare_with) question.title = "Compare with a board";
  if (dialog == Dialog::save_picture)
    question.title = "Save the picture as", question.kind = "Pictures", question.patterns = {"*.png"};
  if (dialog == Dialog::drawing)
    question.title = "Choose a drawing", question.kind = "Drawings", question.patterns = {"*.svg", "*.dxf"};
  return question;
}

/// A name without its ending may mean a file that is there and that nobody was asked about: our own dialog asks.
void save(Desk& desk, fs::path path) {
  const bool added = path.extension() != ".toml";
  if (added) path += ".toml";
  std::error_code unknown;
  if (!added || !fs::exists(path, unknown)) return desk.asked.push_back(asked::SaveAs{path});
  desk.forms.browsing = {path.parent_path().string(), path.filename().string(), ""};
  desk.forms.asked_desktop = Dialog::save_as;
  desk.view.dialog = Dialog::save_as;
}

/// The same for a picture.
void save_picture(Desk& desk, fs::path path) {
  const bool added = path.extension() != ".png";
  if (added) path += ".png";
  std::error_code unknown;
  if (!added || !fs::exists(path, unknown)) return desk.asked.push_back(asked::SavePicture{path});
  desk.forms.browsing = {path.parent_path().string(), path.filename().string(), ""};
  desk.forms.asked_desktop = Dialog::save_picture;
  desk.view.dialog = Dialog::save_picture;
}

void take_answer(Desk& desk, const fs::path& path) {
  const Dialog dialog = std::exchange(desk.forms.desktop_for, Dialog::none);
  if (path.empty()) return desk.after_settling.reset();
  switch (dialog) {
    case Dialog::open:
      return desk.asked.push_back(asked::OpenBoard{path});
    case Dialog::compare_with:
      return desk.asked.push_back(asked::CompareWith{path});
    case Dialog::drawing:
      return desk.asked.push_back(asked::PlaceDrawing{path});
    case Dialog::save_as:
      return save(desk, path);
    case Dialog::save_picture:
      return save_picture(desk, path);
    default:
      return;
  }
}

}  // namespace

void follow_desktop_dialog(Desk& desk) {
  if (const auto path = desk.chooser.take()) take_answer(desk, *path);
  Dialog& wanted = desk.view.dialog;
  if (!is_for_files(wanted)) {
    desk.forms.asked_desktop = Dialog::none;
    return;
  }
  // Asked once for each time that the dialog is wanted: where it cannot be started, or a message stands in ours, ours
  // is shown.
  if (std::exchange(desk.forms.asked_desktop, wanted) == wanted || !desk.forms.browsing.message.empty()) return;
  if (!desk.settings.desktop_dialogs || !desk.chooser.ask(question_for(desk, wanted), desk.wake)) return;
  desk.forms.desktop_for = std::exchange(wanted, Dialog::none);
}

}  // namespace sagitta::viewer
