#include "app/Files.hpp"

#include "app/ChangedElsewhere.hpp"
#include "board/Edit.hpp"
#include "board/Writer.hpp"
#include "document/Beside.hpp"
#include "document/Folders.hpp"
#include "document/OnDisk.hpp"
#include "document/UnsavedFolder.hpp"
#include "document/WholeFile.hpp"
#include "files/WriteFile.hpp"
#include "input/Presets.hpp"
#include "overlay/Selecting.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

void settle(Desk& desk) {
  leave_board(desk);
  desk.forms.rows.forget();
  desk.view.failure.reset();
  desk.versions.unopened.problems.clear();
  desk.results.comparison.reset();
  desk.view.picks.clear();
  desk.view.fit_wanted = true;
  desk.view.marked.reset();
  select_nothing(desk.view, desk.forms.rows);
  desk.view.stage = Stage::board;
  desk.view.dialog = Dialog::none;
}

bool refuse(Desk& desk, const std::string& name, std::vector<Problem> problems) {
  desk.versions.unopened.name = name;
  desk.versions.unopened.problems = std::move(problems);
  desk.view.narrow_shows_checks = true;
  desk.view.dialog = Dialog::none;
  desk.view.fail(name + " could not be opened: the list of problems at the right says why.", "Open another board",
                 "open");
  return false;
}

}  // namespace

fs::path state_of(const Desk& desk) { return desk.state.empty() ? state_folder() : desk.state; }

void leave_board(Desk& desk) {
  desk.drawings.copied.keep_all();
  desk.drawings.changed.clear();
  remove_unsaved_folder(state_of(desk), desk.document.board().folder);
}

bool open_board(Desk& desk, const fs::path& path) {
  const auto bytes = read_whole(path);
  const std::string name = path.filename().string();
  if (const auto* unread = std::get_if<Unread>(&bytes))
    return refuse(desk, name, {{FaultCode::unreadable, name, 1, 1, "", unread->why, ""}});
  // Read once: what is shown is what the checksum is of.
  BoardFile file = read_board_text(std::get<std::string>(bytes), path.string(), path.parent_path().string());
  if (!file.sound()) return refuse(desk, name, std::move(file.problems));
  std::error_code trouble;
  settle(desk);
  desk.document.adopt(std::move(file.board), std::get<std::string>(bytes), fs::absolute(path, trouble));
  remember(desk.settings, path);
  desk.view.say("Opened " + path.string());
  return true;
}

bool open_preset(Desk& desk, const std::string& name) {
  const auto preset = preset_named(name);
  if (!preset) return false;
  fs::path folder = fs::current_path();
  std::string trouble;
  if (!preset->drawings.empty()) {
    folder = state_of(desk) / "presets" / name;
    trouble = lay_out_drawings(*preset, folder);
  }
  BoardFile file = read_board_text(preset->text, name + ".toml", folder.string());
  if (!file.sound()) return refuse(desk, name, std::move(file.problems));
  settle(desk);
  desk.document.adopt(std::move(file.board), std::string(preset->text), "");
  if (trouble.empty())
    desk.view.say("A new board from " + name + "; it is not kept anywhere yet.");
  else
    desk.view.fail(trouble);
  return true;
}

std::string text_to_save(const Document& document) {
  if (document.text().empty()) return write_board(document.board());
  return edit_text(document.text(), document.saved(), document.board());
}

namespace {

/// The text as it belongs into a folder: whole, when the base that it builds on cannot be found from there.
std::string text_for(const Document& document, const fs::path& path, const std::string& folder) {
  const std::string text = text_to_save(document);
  if (folder == document.board().folder) return text;
  BoardFile back = read_board_text(text, path.filename().string(), folder);
  back.board.folder = document.board().folder;
  return back.sound() && back.board == document.board() ? text : write_board(document.board());
}

/// The board must be saved under another name than this one.
bool ask_for_other_name(Desk& desk, const fs::path& locked) {
  const fs::path other = free_name(locked);
  const std::string why = locked.filename().string() + " is read-only. Save the board under another name.";
  desk.forms.browsing = {other.parent_path().string(), other.filename().string(), why};
  desk.view.say(why);
  desk.view.dialog = Dialog::save_as;
  return false;
}

bool is_same_file(const fs::path& a, const fs::path& b) {
  std::error_code unknown;
  return a == b || fs::equivalent(a, b, unknown);
}

}  // namespace

bool save_board(Desk& desk) {
  if (desk.document.path().empty()) {
    desk.view.dialog = Dialog::save_as;
    return false;
  }
  return save_board_as(desk, desk.document.path());
}

bool save_board_as(Desk& desk, const fs::path& path) {
  if (is_protected(path)) return ask_for_other_name(desk, path);
  if (is_same_file(path, desk.document.path()) && is_changed_elsewhere(desk)) return false;
  std::error_code unresolved;
  const fs::path folder = fs::absolute(path, unresolved).parent_path();
  const fs::path folder_before = desk.document.board().folder;
  if (const std::string taken = name_taken_in(desk.document.board(), folder); !taken.empty()) {
    desk.view.fail("Another " + taken + " lies in " + folder.string() +
                       ", and the board would be made from that one. Save it in another folder, or rename the file "
                       "there.",
                   "Save in another folder", "save as");
    return false;
  }
  const std::string text = text_for(desk.document, path, folder.string());
  if (const std::string why = write_whole(path, text); !why.empty()) {
    desk.view.fail(why, "Save under another name", "save as");
    return false;
  }
  const std::string left_behind = take_along(desk.document.board(), folder);
  desk.document.kept(path, text, folder.string());
  desk.drawings.copied.keep_all();
  if (left_behind.empty()) remove_unsaved_folder(state_of(desk), folder_before);
  remember(desk.settings, path);
  desk.view.say("Saved " + path.string());
  if (!left_behind.empty()) desk.view.fail(left_behind);
  return true;
}

void when_settled(Desk& desk, Request next) {
  if (!desk.document.dirty()) return desk.asked.push_back(std::move(next));
  desk.after_settling = std::move(next);
  desk.view.dialog = Dialog::unsaved;
}

void go_on(Desk& desk) {
  if (desk.after_settling) desk.asked.push_back(*desk.after_settling);
  desk.after_settling.reset();
}

void take_left_over(Desk& desk) {
  if (!desk.versions.left_over) return;
  const Recovered left = *desk.versions.left_over;
  const bool placed = !left.board.empty();
  const std::string name = placed ? left.board.filename().string() : "recovered.toml";
  const fs::path folder = placed ? left.board.parent_path() : left.folder.empty() ? fs::current_path() : left.folder;
  BoardFile file = read_board_text(left.text, name, folder.string());
  desk.versions.left_over.reset();
  if (!file.sound()) {
    refuse(desk, left.copy.string(), std::move(file.problems));
    return;
  }
  settle(desk);
  std::error_code trouble;
  const auto on_disk =
      placed && fs::exists(left.board, trouble) ? std::optional(read_board(left.board.string())) : std::nullopt;
  const std::variant<std::string, Unread> bytes =
      on_disk ? read_whole(left.board) : std::variant<std::string, Unread>(Unread{});
  if (on_disk && on_disk->sound() && std::holds_alternative<std::string>(bytes)) {
    desk.document.adopt_unsaved(std::move(file.board), on_disk->board, std::get<std::string>(bytes), left.board);
    if (!left.checksum.empty()) desk.document.knew(left.checksum);
  } else {
    desk.document.adopt(std::move(file.board), left.text, placed ? left.board : fs::path());
    desk.document.mark_unkept();
  }
  Recovery::discard(left);
  desk.view.say("Recovered " + name + "; it is not saved yet.");
}

void drop_left_over(Desk& desk) {
  if (!desk.versions.left_over) return;
  remove_unsaved_folder(state_of(desk), desk.versions.left_over->folder);
  Recovery::discard(*desk.versions.left_over);
  desk.versions.left_over.reset();
}

void compare_with(Desk& desk, const fs::path& path) {
  BoardFile file = read_board(path.string());
  const std::string name = path.filename().string();
  if (!file.sound()) {
    refuse(desk, name, std::move(file.problems));
    return;
  }
  desk.results.comparison = Comparison{name, std::move(file.board), nullptr};
  desk.view.narrow_shows_checks = true;
  desk.view.dialog = Dialog::none;
}

void compare_with_saved(Desk& desk) {
  desk.results.comparison = Comparison{"the saved board", desk.document.saved(), nullptr};
  desk.view.narrow_shows_checks = true;
}

}  // namespace sagitta::viewer
