#include "dialogs/FileDialog.hpp"

#include <algorithm>
#include <cctype>
#include <chrono>
#include <ctime>
#include <filesystem>
#include <functional>
#include <system_error>

#include "board/BoardFile.hpp"
#include "document/Beside.hpp"
#include "document/Folders.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_places = 5;
constexpr float preview_height = 84;  // units

struct Entry {
  fs::path path;
  bool folder = false;
  std::string changed;  ///< "2026-03-14 09:26"
};

/// When it was last changed, by the clock on the wall; "" where that is not known.
std::string date_of(const fs::directory_entry& entry) {
  std::error_code unknown;
  const auto written = entry.last_write_time(unknown);
  if (unknown) return "";
  const auto seconds =
      std::chrono::duration_cast<std::chrono::seconds>(std::chrono::file_clock::to_sys(written).time_since_epoch())
          .count();
  const std::time_t time = static_cast<std::time_t>(seconds);
  std::tm local{};
  char text[32] = {};
  if (!::localtime_r(&time, &local) || std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &local) == 0) return "";
  return text;
}

/// Folders first, then the files that are wanted; hidden ones left out.
std::vector<Entry> entries(const fs::path& folder, const std::function<bool(const fs::path&)>& wanted) {
  std::vector<Entry> found;
  std::error_code trouble;
  for (fs::directory_iterator it(folder, fs::directory_options::skip_permission_denied, trouble), end;
       !trouble && it != end; it.increment(trouble)) {
    const std::string name = it->path().filename().string();
    std::error_code unknown;
    const bool is_folder = it->is_directory(unknown);
    if (name.empty() || name[0] == '.' || (!is_folder && !wanted(it->path()))) continue;
    found.push_back({it->path(), is_folder, date_of(*it)});
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

  bool picture() const { return dialog == Dialog::save_picture; }
  bool saving() const { return dialog == Dialog::save_as || picture(); }
  bool drawing() const { return dialog == Dialog::drawing; }
  /// Of the files that it lists, or makes.
  const char* ending() const { return picture() ? ".png" : ".toml"; }
  bool lists(const fs::path& path) const { return drawing() ? is_drawing(path) : path.extension() == ending(); }
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
  b.now.name = (name.empty() ? std::string("board") : name) + b.ending();
}

/// Asks for what the dialog is there for. It closes by itself, except on saving: that may not succeed.
void take(Browser& b, const fs::path& path) {
  if (b.dialog == Dialog::save_as) return b.asked.push_back(asked::SaveAs{path});
  b.now = {};
  b.asked.push_back(asked::Show{Dialog::none});
  if (b.picture())
    b.asked.push_back(asked::SavePicture{path});
  else if (b.drawing())
    b.asked.push_back(asked::PlaceDrawing{path});
  else if (b.dialog == Dialog::compare_with)
    b.asked.push_back(asked::CompareWith{path});
  else
    b.asked.push_back(asked::OpenBoard{path});
}

/// The path that the name field means, with its ending put on when saving.
fs::path meant(const Browser& b) {
  fs::path path = fs::path(b.now.name).is_absolute() ? fs::path(b.now.name) : fs::path(b.now.folder) / b.now.name;
  if (b.saving() && path.extension() != b.ending()) path += b.ending();
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
  for (const Entry& entry : entries(folder, [&](const fs::path& path) { return b.lists(path); })) {
    const std::string name = entry.path.filename().string();
    const float date = ImGui::CalcTextSize(entry.changed.c_str()).x,
                room = ImGui::GetContentRegionAvail().x - date - b.ui.px(16);
    const bool pressed = b.ui.row(name, fitted(entry.folder ? name + "/" : name, room), name == b.now.name);
    const float middle = (ImGui::GetItemRectMin().y + ImGui::GetItemRectMax().y) / 2;
    const ImVec2 end(ImGui::GetItemRectMax().x - date - b.ui.px(4), middle - ImGui::GetFontSize() / 2);
    ImGui::GetWindowDrawList()->AddText(end, b.ui.theme.quiet, entry.changed.c_str());
    if (!pressed) continue;
    if (entry.folder)
      b.now.folder = entry.path.string();
    else
      b.now.name = name;
    b.now.message.clear();
  }
}

void go_to(Browser& b, const fs::path& folder) {
  std::error_code unknown;
  if (fs::is_directory(folder, unknown)) b.now.folder = folder.string(), b.now.message.clear();
}

/// The folders that are wanted most: the user's own, the board's, those of the boards opened lately.
void draw_places(Browser& b) {
  std::vector<std::pair<std::string, fs::path>> places{{"Home", home_folder()}};
  if (!b.document.path().empty()) places.emplace_back("This board's folder", b.document.path().parent_path());
  for (const std::string& board : b.settings.recent) {
    const fs::path folder = fs::path(board).parent_path();
    const bool known = std::any_of(places.begin(), places.end(), [&](const auto& p) { return p.second == folder; });
    if (!known && places.size() < most_places) places.emplace_back(folder.filename().string(), folder);
  }
  const float right = ImGui::GetCursorPosX() + ImGui::GetContentRegionAvail().x;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i > 0) ImGui::SameLine();
    if (i > 0 && ImGui::GetCursorPosX() + button_width(b.ui, places[i].first.c_str()) > right) ImGui::NewLine();
    if (b.ui.button(places[i].first)) go_to(b, places[i].second);
  }
  if (!b.saving()) return;
  ImGui::SameLine();
  if (ImGui::GetCursorPosX() + button_width(b.ui, "New folder") > right) ImGui::NewLine();
  if (b.ui.button("New folder")) b.now.naming = !b.now.naming, b.now.new_folder.clear();
}

void draw_new_folder(Browser& b) {
  if (!b.now.naming) return;
  ImGui::SetNextItemWidth(-button_width(b.ui, "Make it") - b.ui.px(16));
  b.ui.text_field("new folder", b.now.new_folder, "name of the new folder");
  ImGui::SameLine();
  const bool plain = !b.now.new_folder.empty() && b.now.new_folder.find('/') == std::string::npos;
  if (!b.ui.button("Make it", plain)) return;
  const fs::path made = fs::path(b.now.folder) / b.now.new_folder;
  std::error_code trouble;
  fs::create_directory(made, trouble);
  if (trouble) {
    b.now.message = made.string() + " cannot be made: " + trouble.message() + ".";
    return;
  }
  b.now.naming = false;
  go_to(b, made);
}

/// The board that is chosen, from above.
void draw_preview(Browser& b) {
  std::error_code unknown;
  const fs::path path = meant(b);
  const bool board = !b.drawing() && !b.saving() && path.extension() == ".toml" && fs::is_regular_file(path, unknown);
  if (!board) return;
  if (b.now.shown != path.string())
    b.now.preview = card_of("preview", path.stem().string(), read_board(path.string())), b.now.shown = path.string();
  const ImVec2 low = ImGui::GetCursorScreenPos(), size(ImGui::GetContentRegionAvail().x, b.ui.px(preview_height));
  ImGui::GetWindowDrawList()->AddRectFilled(low, ImVec2(low.x + size.x, low.y + size.y), b.ui.theme.field, b.ui.px(4));
  const float pad = b.ui.px(8), line = ImGui::GetFontSize();
  draw_card_plan(b.ui, b.now.preview, ImVec2(low.x + pad, low.y + pad),
                 ImVec2(low.x + size.x - pad, low.y + size.y - pad - line));
  ImGui::GetWindowDrawList()->AddText(ImVec2(low.x + pad, low.y + size.y - line - pad / 2), b.ui.theme.quiet,
                                      fitted(b.now.preview.words, size.x - 2 * pad).c_str());
  b.ui.note_area("preview", low, ImVec2(low.x + size.x, low.y + size.y), b.now.preview.words);
  ImGui::Dummy(size);
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
  if (ImGui::IsWindowAppearing()) ui.lead_to(ui.panel() + "/name");
  draw_places(b);
  draw_new_folder(b);
  ui.quiet(browsing.folder);
  const bool over_or_said = !browsing.message.empty() || b.saving();
  const bool previews = dialog == Dialog::open || dialog == Dialog::compare_with;
  const float foot = 2 * ImGui::GetFrameHeightWithSpacing() + ui.px(14) +
                     (over_or_said ? ImGui::GetFrameHeightWithSpacing() : 0) +
                     (previews ? ui.px(preview_height) + ImGui::GetStyle().ItemSpacing.y : 0);
  ImGui::BeginChild("entries", ImVec2(0, -foot));
  draw_recent(b);
  if (b.asked.empty()) draw_entries(b);
  ImGui::EndChild();
  if (b.asked.empty()) draw_preview(b);
  if (b.asked.empty()) draw_foot(b);
  return b.asked;
}

}  // namespace sagitta::viewer
