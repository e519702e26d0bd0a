#include <algorithm>
#include <cctype>
#include <filesystem>
#include <system_error>

#include "app/Drawings.hpp"
#include "app/Files.hpp"
#include "document/Folders.hpp"
#include "panels/Dialogs.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

struct Entry {
  fs::path path;
  bool folder = false;
};

/// Folders first, then board files, or drawings; hidden ones left out.
std::vector<Entry> entries(const fs::path& folder, bool drawings) {
  std::vector<Entry> found;
  std::error_code trouble;
  for (fs::directory_iterator it(folder, fs::directory_options::skip_permission_denied, trouble), end;
       !trouble && it != end; it.increment(trouble)) {
    const std::string name = it->path().filename().string();
    std::error_code unknown;
    const bool is_folder = it->is_directory(unknown);
    if (name.empty() || name[0] == '.' ||
        (!is_folder && !(drawings ? is_drawing(it->path()) : it->path().extension() == ".toml")))
      continue;
    found.push_back({it->path(), is_folder});
  }
  std::sort(found.begin(), found.end(), [](const Entry& a, const Entry& b) {
    return a.folder != b.folder ? a.folder : a.path.filename() < b.path.filename();
  });
  return found;
}

void begin(Desk& desk) {
  if (!desk.browsing.folder.empty()) return;
  const fs::path& now = desk.document.path();
  std::error_code trouble;
  if (!now.empty())
    desk.browsing.folder = now.parent_path().string();
  else if (!desk.settings.recent.empty() && fs::exists(fs::path(desk.settings.recent[0]).parent_path(), trouble))
    desk.browsing.folder = fs::path(desk.settings.recent[0]).parent_path().string();
  else
    desk.browsing.folder = home_folder().string();
  if (desk.view.dialog != Dialog::save_as) return;
  std::string name = now.empty() ? desk.document.board().name : now.stem().string();
  for (char& c : name)
    if (!std::isalnum(static_cast<unsigned char>(c)) && c != '-' && c != '_' && c != '.') c = '-';
  desk.browsing.name = (name.empty() ? std::string("board") : name) + ".toml";
}

void finish(Desk& desk) {
  desk.browsing = {};
  desk.view.dialog = Dialog::none;
}

void take(Desk& desk, const fs::path& path) {
  const Dialog dialog = desk.view.dialog;
  if (dialog == Dialog::open) {
    finish(desk);
    open_board(desk, path);
  } else if (dialog == Dialog::drawing) {
    finish(desk);
    place_drawing(desk, path);
  } else if (dialog == Dialog::compare_with) {
    finish(desk);
    compare_with(desk, path);
  } else if (save_board_as(desk, path)) {
    finish(desk);
    if (desk.after_unsaved) {
      const auto next = std::move(desk.after_unsaved);
      desk.after_unsaved = nullptr;
      next(desk);
    }
  } else if (desk.view.dialog != dialog) {
    desk.browsing = {};  // the file was changed elsewhere: that is to be settled first
  } else {
    desk.browsing.message = desk.view.message;
  }
}

/// The path that the name field means, with ".toml" put on when saving.
fs::path meant(const Desk& desk) {
  fs::path path = fs::path(desk.browsing.name).is_absolute() ? fs::path(desk.browsing.name)
                                                             : fs::path(desk.browsing.folder) / desk.browsing.name;
  if (desk.view.dialog == Dialog::save_as && path.extension() != ".toml") path += ".toml";
  return path;
}

void draw_recent(Desk& desk) {
  if (desk.view.dialog != Dialog::open && desk.view.dialog != Dialog::compare_with) return;
  if (desk.settings.recent.empty()) return;
  ImGui::PushStyleColor(ImGuiCol_Text, desk.ui.theme.quiet);
  ImGui::TextUnformatted("Opened lately");
  ImGui::PopStyleColor();
  for (std::size_t i = 0; i < desk.settings.recent.size() && i < 4; ++i)
    if (desk.ui.row("recent " + std::to_string(i + 1), desk.settings.recent[i], false))
      return take(desk, fs::path(desk.settings.recent[i]));
  ImGui::Separator();
}

void draw_entries(Desk& desk) {
  const fs::path folder = desk.browsing.folder;
  if (folder.has_parent_path() && folder != folder.root_path() && desk.ui.row("up", "..  (the folder above)", false))
    desk.browsing.folder = folder.parent_path().string();
  for (const Entry& entry : entries(folder, desk.view.dialog == Dialog::drawing)) {
    const std::string name = entry.path.filename().string();
    if (!desk.ui.row(name, entry.folder ? name + "/" : name, name == desk.browsing.name)) continue;
    if (entry.folder)
      desk.browsing.folder = entry.path.string();
    else
      desk.browsing.name = name;
    desk.browsing.message.clear();
  }
}

}  // namespace

void draw_file_dialog(Desk& desk) {
  begin(desk);
  Ui& ui = desk.ui;
  const bool saving = desk.view.dialog == Dialog::save_as, drawing = desk.view.dialog == Dialog::drawing;
  ui.quiet(desk.browsing.folder);
  const float foot = 2 * ImGui::GetFrameHeightWithSpacing() + ui.px(14) +
                     (desk.browsing.message.empty() ? 0 : ImGui::GetFrameHeightWithSpacing());
  ImGui::BeginChild("entries", ImVec2(0, -foot));
  const Dialog before = desk.view.dialog;
  draw_recent(desk);
  if (desk.view.dialog == before) draw_entries(desk);
  ImGui::EndChild();
  if (desk.view.dialog != before) return;
  ImGui::SetNextItemWidth(-1);
  ui.text_field("name", desk.browsing.name,
                saving    ? "name of the file"
                : drawing ? "choose an SVG or DXF file, or type its path"
                          : "choose a board, or type its path");
  const bool entered = ImGui::IsItemDeactivated() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false);
  std::error_code trouble;
  const bool there = !desk.browsing.name.empty() && fs::is_regular_file(meant(desk), trouble);
  const bool over = saving && there && meant(desk) != desk.document.path();
  if (!desk.browsing.message.empty())
    ui.warning(desk.browsing.message);
  else if (over)
    ui.warning("A file of this name is there; saving replaces it.");
  const char* go = saving                             ? (over ? "Replace" : "Save")
                   : drawing                          ? "Take it"
                   : desk.view.dialog == Dialog::open ? "Open"
                                                      : "Compare";
  dialog_foot(ui, button_width(ui, "Cancel") + button_width(ui, go) + ui.px(8));
  if (ui.button("Cancel")) return finish(desk);
  ImGui::SameLine();
  const bool ready = saving ? !desk.browsing.name.empty() : there;
  if (ui.primary(go, ready) || (entered && ready && !over)) take(desk, meant(desk));
}

}  // namespace sagitta::viewer
