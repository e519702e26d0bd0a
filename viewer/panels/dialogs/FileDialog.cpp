#include "dialogs/FileDialog.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <system_error>

#include "document/Beside.hpp"
#include "document/Folders.hpp"
#include "widgets/Buttons.hpp"

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

/// What the dialog's parts work with.
struct Browser {
  Ui& ui;
  Dialog dialog;
  Browsing& now;
  const Document& document;
  const Settings& settings;
  Requests asked = {};

  bool saving() const { return dialog == Dialog::save_as; }
  bool drawing() const { return dialog == Dialog::drawing; }
};

void begin(Browser& b) {
  if (!b.now.folder.empty()) return;
  const fs::path& path = b.document.path();
  std::error_code trouble;
  if (!path.empty())
    b.now.folder = path.parent_path().string();
  else if (!b.settings.recent.empty() && fs::exists(fs::path(b.settings.recent[0]).parent_path(), trouble))
    b.now.folder = fs::path(b.settings.recent[0]).parent_path().string();
  else
    b.now.folder = home_folder().string();
  if (!b.saving()) return;
  std::string name = path.empty() ? b.document.board().name : path.stem().string();
  for (char& c : name)
    if (!std::isalnum(static_cast<unsigned char>(c)) && c != '-' && c != '_' && c != '.') c = '-';
  b.now.name = (name.empty() ? std::string("board") : name) + ".toml";
}

/// Asks for what the dialog is there for. It closes by itself, except on saving: that may not succeed.
void take(Browser& b, const fs::path& path) {
  if (b.saving()) return b.asked.push_back(asked::SaveAs{path});
  b.now = {};
  b.asked.push_back(asked::Show{Dialog::none});
  if (b.drawing())
    b.asked.push_back(asked::PlaceDrawing{path});
  else if (b.dialog == Dialog::compare_with)
    b.asked.push_back(asked::CompareWith{path});
  else
    b.asked.push_back(asked::OpenBoard{path});
}

/// The path that the name field means, with ".toml" put on when saving.
fs::path meant(const Browser& b) {
  fs::path path = fs::path(b.now.name).is_absolute() ? fs::path(b.now.name) : fs::path(b.now.folder) / b.now.name;
  if (b.saving() && path.extension() != ".toml") path += ".toml";
  return path;
}

void draw_recent(Browser& b) {
  if (b.dialog != Dialog::open && b.dialog != Dialog::compare_with) return;
  if (b.settings.recent.empty()) return;
  ImGui::PushStyleColor(ImGuiCol_Text, b.ui.theme.quiet);
  ImGui::TextUnformatted("Opened lately");
  ImGui::PopStyleColor();
  for (std::size_t i = 0; i < b.settings.recent.size() && i < 4; ++i)
    if (b.ui.row("recent " + std::to_string(i + 1), b.settings.recent[i], false))
      return take(b, fs::path(b.settings.recent[i]));
  ImGui::Separator();
}

void draw_entries(Browser& b) {
  const fs::path folder = b.now.folder;
  if (folder.has_parent_path() && folder != folder.root_path() && b.ui.row("up", "..  (the folder above)", false))
    b.now.folder = folder.parent_path().string();
  for (const Entry& entry : entries(folder, b.drawing())) {
    const std::string name = entry.path.filename().string();
    if (!b.ui.row(name, entry.folder ? name + "/" : name, name == b.now.name)) continue;
    if (entry.folder)
      b.now.folder = entry.path.string();
    else
      b.now.name = name;
    b.now.message.clear();
  }
}

const char* words_for_name(const Browser& b) {
  return b.saving()    ? "name of the file"
         : b.drawing() ? "choose an SVG or DXF file, or type its path"
                       : "choose a board, or type its path";
}

const char* words_for_taking(const Browser& b, bool over) {
  return b.saving()                 ? (over ? "Replace" : "Save")
         : b.drawing()              ? "Take it"
         : b.dialog == Dialog::open ? "Open"
                                    : "Compare";
}

/// The field for the name, and the buttons.
void draw_foot(Browser& b) {
  ImGui::SetNextItemWidth(-1);
  b.ui.text_field("name", b.now.name, words_for_name(b));
  const bool entered = ImGui::IsItemDeactivated() && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false);
  std::error_code trouble;
  const bool there = !b.now.name.empty() && fs::is_regular_file(meant(b), trouble);
  const bool over = b.saving() && there && meant(b) != b.document.path();
  if (!b.now.message.empty())
    b.ui.warning(b.now.message);
  else if (over)
    b.ui.warning("A file of this name is there; saving replaces it.");
  const char* go = words_for_taking(b, over);
  dialog_foot(b.ui, button_width(b.ui, "Cancel") + button_width(b.ui, go) + b.ui.px(8));
  if (b.ui.button("Cancel")) {
    b.now = {};
    return b.asked.push_back(asked::Show{Dialog::none});
  }
  ImGui::SameLine();
  const bool ready = b.saving() ? !b.now.name.empty() : there;
  if (b.ui.primary(go, ready) || (entered && ready && !over)) take(b, meant(b));
}

}  // namespace

Requests draw_file_dialog(Ui& ui, Dialog dialog, Browsing& browsing, const Document& document,
                          const Settings& settings) {
  Browser b{ui, dialog, browsing, document, settings};
  begin(b);
  ui.quiet(browsing.folder);
  const float foot = 2 * ImGui::GetFrameHeightWithSpacing() + ui.px(14) +
                     (browsing.message.empty() ? 0 : ImGui::GetFrameHeightWithSpacing());
  ImGui::BeginChild("entries", ImVec2(0, -foot));
  draw_recent(b);
  if (b.asked.empty()) draw_entries(b);
  ImGui::EndChild();
  if (b.asked.empty()) draw_foot(b);
  return b.asked;
}

}  // namespace sagitta::viewer
