#include "dialogs/SentPage.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "widgets/Buttons.hpp"
#include "widgets/LengthText.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

std::string size_words(std::uintmax_t bytes) {
  constexpr double kilo = 1000;
  const double size = static_cast<double>(bytes);
  if (size < kilo) return std::to_string(bytes) + " B";
  return size < kilo * kilo ? shown_number(size / kilo, 0) + " kB" : shown_number(size / kilo / kilo, 1) + " MB";
}

WrittenEntry folder_entry(const fs::path& folder) {
  WrittenEntry entry{folder.filename().string() + "/", ""};
  std::uintmax_t bytes = 0;
  std::size_t files = 0;
  std::error_code trouble;
  for (fs::recursive_directory_iterator it(folder, trouble), end; !trouble && it != end; it.increment(trouble)) {
    std::error_code unknown;
    if (it->is_regular_file(unknown)) ++files, bytes += it->file_size(unknown);
  }
  entry.holds = std::to_string(files) + (files == 1 ? " file, " : " files, ") + size_words(bytes);
  return entry;
}

/// What lies in a folder, its folders first, by name.
std::vector<WrittenEntry> entries_of(const fs::path& folder) {
  std::vector<WrittenEntry> folders, files;
  std::error_code trouble;
  for (fs::directory_iterator it(folder, trouble), end; !trouble && it != end; it.increment(trouble)) {
    std::error_code unknown;
    if (it->is_directory(unknown))
      folders.push_back(folder_entry(it->path()));
    else
      files.push_back({it->path().filename().string(), size_words(it->file_size(unknown))});
  }
  const auto by_name = [](const WrittenEntry& a, const WrittenEntry& b) { return a.name < b.name; };
  std::sort(folders.begin(), folders.end(), by_name), std::sort(files.begin(), files.end(), by_name);
  folders.insert(folders.end(), files.begin(), files.end());
  return folders;
}

/// Read once for each outcome.
void look_into_folder(const SendingPage& page) {
  SendingForm& form = page.form;
  const std::string of = page.sending.outcome + "\n" + form.folder;
  if (form.written_of == of) return;
  form.written_of = of;
  form.written = entries_of(form.folder);
}

/// What a file is, by its ending.
const char* kind_words(const std::string& name) {
  constexpr std::pair<const char*, const char*> kinds[] = {{"-r12.dxf", "the same outlines for old programs"},
                                                           {".step", "exact solid, for CAM"},
                                                           {".stl", "triangles, for CAM"},
                                                           {".3mf", "triangles with unit and colour"},
                                                           {".dxf", "outlines, for CAM"},
                                                           {".svg", "outlines in true size"},
                                                           {".pdf", "paper for the bench"},
                                                           {".html", "the job sheet, for a screen"},
                                                           {".csv", "a table"},
                                                           {".json", "figures for other programs"},
                                                           {".png", "a picture"},
                                                           {".toml", "the board as it was exported"},
                                                           {"setups/", "outlines of each set-up in its own zero"},
                                                           {"sources/", "the board file and what it is made from"},
                                                           {"neck/", "the neck from the board"}};
  for (const auto& [ending, words] : kinds)
    if (name.ends_with(ending)) return words;
  return "";
}

void draw_content(const SendingPage& page, float height) {
  Ui& ui = page.ui;
  ImGui::BeginChild("content", ImVec2(0, height));
  const float room = ImGui::GetContentRegionAvail().x, column = std::min(room * 0.5f, ui.px(320)),
              third = column + ui.px(150);
  for (const WrittenEntry& entry : page.form.written) {
    ImGui::TextUnformatted(fitted(entry.name, column - ui.px(12)).c_str());
    ui.note("written " + entry.name, entry.holds);
    ImGui::SameLine(column);
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    ImGui::TextUnformatted(entry.holds.c_str());
    const char* const kind = kind_words(entry.name);
    if (third + ImGui::CalcTextSize(kind).x < room) {
      ImGui::SameLine(third);
      ImGui::TextUnformatted(kind);
    }
    ImGui::PopStyleColor();
  }
  ImGui::EndChild();
}

}  // namespace

Requests draw_sent(const SendingPage& page) {
  Ui& ui = page.ui;
  const SendingState& state = page.sending;
  const float foot = ImGui::GetFrameHeight() + ui.px(24);
  if (state.good)
    ui.quiet(state.outcome);
  else
    ui.warning(state.outcome);
  ui.note("outcome", state.outcome);
  if (state.good) {
    look_into_folder(page);
    draw_content(page, ImGui::GetContentRegionAvail().y - foot);
  }
  const float ways = button_width(ui, "Copy the folder's path") + button_width(ui, "Open folder") + ui.px(16);
  dialog_foot(ui, button_width(ui, "Done") + (state.good ? ways : 0));
  Requests asked;
  if (state.good) {
    if (ui.button("Copy the folder's path")) ImGui::SetClipboardText(page.form.folder.c_str());
    ImGui::SameLine();
    if (ui.button("Open folder")) asked.push_back(asked::OpenFolder{page.form.folder});
    ImGui::SameLine();
  }
  if (ui.primary("Done")) asked = {asked::ForgetExport{}, asked::Show{Dialog::none}};
  return asked;
}

}  // namespace sagitta::viewer
