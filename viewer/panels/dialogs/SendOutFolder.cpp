#include "dialogs/SendOutFolder.hpp"

#include <cctype>
#include <filesystem>

#include "decisions/FindingMarks.hpp"
#include "document/Folders.hpp"
#include "document/OnDisk.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

using Kind = FolderState::Kind;

/// Letters, digits and hyphens of a board's name.
std::string file_name(const std::string& name) {
  std::string plain;
  for (const char c : name) {
    const bool letter = std::isalnum(static_cast<unsigned char>(c));
    if (letter) plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    if (!letter && !plain.empty() && plain.back() != '-') plain += '-';
  }
  while (plain.ends_with('-')) plain.pop_back();
  return plain.empty() ? "board" : plain;
}

constexpr double between_looks = 1;  ///< seconds

/// Looks at the folder when it or the board is another one, and again and again while it keeps from writing.
void look(const SendingPage& page) {
  SendingForm& form = page.form;
  const std::string about =
      form.folder + "\n" + page.document.path().string() + "\n" + std::to_string(page.document.revision());
  const bool another = form.looked_at != about, in_the_way = !form.place.free() && !form.place.replaceable();
  if (!another && !(in_the_way && page.ui.now() >= form.look_again)) return;
  if (another) form.over_other = false;
  form.looked_at = about;
  form.look_again = page.ui.now() + between_looks;
  form.place = form.folder.empty() ? FolderState() : look_at_folder(form.folder, inputs(page.document));
}

bool is_other_board(const SendingPage& page) {
  const SendingForm& form = page.form;
  if (!form.place.replaceable()) return false;
  const std::string& mine = page.document.board().name;
  const bool own_place = form.folder == usual_folder(page.document, form.trial);
  return form.place.board != mine || (mine.empty() && !own_place);
}

std::string quoted(const std::string& name) {
  return name.empty() ? "a board without a name" : "\u201c" + name + "\u201d";
}

std::vector<const Finding*> findings_that_say(const SendingPage& page, Severity severity) {
  std::vector<const Finding*> found;
  if (page.results.good)
    for (const Finding& finding : page.results.good->findings)
      if (finding.severity == severity) found.push_back(&finding);
  return found;
}

std::vector<const Finding*> stops_of(const SendingPage& page) { return findings_that_say(page, Severity::stop); }

/// "2 findings say look".
std::string count_words(std::size_t count, const char* word) {
  return (count == 1 ? "1 finding says " : std::to_string(count) + " findings say ") + word;
}

/// Names of the findings, each once.
std::string names_of(const std::vector<const Finding*>& findings) {
  std::set<std::string> names;
  for (const Finding* finding : findings) names.insert(finding_title(*finding));
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

/// Beside the button: nothing to tick, but to be read.
void draw_looks(Ui& ui, const std::vector<const Finding*>& looks, float room) {
  if (looks.empty()) return;
  ImGui::AlignTextToFramePadding();
  const std::string words = count_words(looks.size(), "look") + " (" + names_of(looks) + ")";
  ImGui::TextUnformatted(fitted(words, room).c_str());
  ui.note("looks", std::to_string(looks.size()));
}

}  // namespace

std::string usual_folder(const Document& document, bool trial) {
  const fs::path& board = document.path();
  const fs::path beside = board.empty() ? home_folder() : board.parent_path();
  const std::string name = board.empty() ? file_name(document.board().name) : board.stem().string();
  return (beside / (name + (trial ? "-trial" : "-export"))).string();
}

void follow_board(const SendingPage& page) {
  SendingForm& form = page.form;
  const std::string of = page.document.path().empty() ? page.document.title() : page.document.path().string();
  if (form.of_board == of && !form.folder.empty()) return;
  form.of_board = of;
  form.folder = usual_folder(page.document, form.trial);
}

void draw_folder(const SendingPage& page) {
  Ui& ui = page.ui;
  SendingForm& form = page.form;
  ImGui::TextUnformatted("Folder");
  ImGui::SetNextItemWidth(-1);
  ui.text_field("folder", form.folder, "folder to write");
  look(page);
  const FolderState& place = form.place;
  const std::string files = std::to_string(place.files) + (place.files == 1 ? " file" : " files");
  if (is_other_board(page)) {
    ui.warning("This folder holds the " + std::string(place.trial ? "trial strip" : "export") + " of another board, " +
               quoted(place.board) + ": " + files + ".");
    ui.note("place", place.board);
    ui.tick("Replace that of " + quoted(place.board), form.over_other);
  } else if (place.replaceable()) {
    ui.quiet("This folder holds the last " + std::string(place.trial ? "trial strip" : "export") + " of this board, " +
             files + "; exporting replaces it.");
    ui.note("place", place.board);
  } else if (!place.free()) {
    ui.warning("Nothing is written here: " + why_left_alone(place) + ".");
    ui.note("place", place.found.empty() ? "" : place.found.front());
  }
}

void draw_stops(const SendingPage& page, float room) {
  SendingForm& form = page.form;
  const std::vector<const Finding*> stops = stops_of(page);
  const std::string names = names_of(stops);
  if (form.stops != names) form.stops = names, form.despite_stops = false;
  Ui& ui = page.ui;
  const std::vector<const Finding*> looks = findings_that_say(page, Severity::look);
  if (stops.empty()) return draw_looks(ui, looks, room);
  const std::string more =
      looks.empty() ? ""
                    : "; " + std::to_string(looks.size()) + (looks.size() == 1 ? " more says look" : " more say look");
  ui.tick("##stops", form.despite_stops);
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  const std::string number = count_words(stops.size(), "stop");
  const float left = room - ImGui::GetFrameHeight() - ui.px(16);
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.accent);
  ImGui::TextUnformatted(fitted(number + " (" + names + "): export all the same" + more, left).c_str());
  ImGui::PopStyleColor();
}

bool may_be_written(const SendingPage& page) {
  const SendingForm& form = page.form;
  if (form.folder.empty() || !(form.place.free() || form.place.replaceable())) return false;
  if (is_other_board(page) && !form.over_other) return false;
  return form.despite_stops || stops_of(page).empty();
}

bool replaces(const SendingPage& page) { return page.form.place.replaceable(); }

}  // namespace sagitta::viewer
