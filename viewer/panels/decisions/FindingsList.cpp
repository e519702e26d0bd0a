#include "decisions/FindingsList.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "board/Fields.hpp"
#include "decisions/Decisions.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "decisions/FindingMarks.hpp"
#include "widgets/Block.hpp"

namespace sagitta::viewer {

namespace {

Weight weight_of(Severity severity) {
  return severity == Severity::stop ? Weight::heavy : severity == Severity::look ? Weight::middle : Weight::light;
}

std::string lower_first(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

/// "Set slot depth to 2.05 mm".
std::string fix_words(const Manner& manner, const Fix& fix) {
  const std::string label = lower_first(label_of_key(fix.key));
  const Field* field = find_field(fix.key);
  const bool whole = field && field->kind == Kind::integer;
  const Value value = whole ? Value(static_cast<int>(std::lround(fix.value))) : Value(fix.value);
  return "Set " + label + " to " + (field ? shown_value(*field, value, manner) : shown_number(fix.value));
}

/// Where a limit comes from, with decisions under their names in the window.
std::string source_words(const std::string& source) {
  if (source.starts_with("key limits.")) return "set in this board's file";
  if (!source.starts_with("key ")) return source;
  std::string words, key;
  for (const char c : source.substr(4) + ",") {
    if (c == ' ') continue;
    if (c != ',') {
      key += c;
      continue;
    }
    words += (words.empty() ? "from " : ", ") + lower_first(label_of_key(key));
    key.clear();
  }
  return words;
}

std::string limit_words(const Manner& manner, const Finding& finding) {
  const std::string number =
      finding.unit == "mm" ? shown(finding.limit, manner) : shown_number(finding.limit, 2) + " " + finding.unit;
  return number + ", " + source_words(finding.source);
}

constexpr const char* finding_menu_name = "finding menu";

bool can_fix(const CheckState& state, const Finding& finding) {
  return finding.fix && can_apply(state.document.board(), *finding.fix);
}

void apply_fix(const CheckState& state, const Finding& finding) {
  state.document.change(apply(state.document.board(), *finding.fix), fix_words(state.manner, *finding.fix));
}

/// The row of the board's note on a finding; nothing where there is none.
std::optional<std::size_t> note_on(const Board& board, const Finding& finding) {
  for (std::size_t i = 0; i < board.notes.size(); ++i)
    if (board.notes[i].finding == finding.name) return i;
  return std::nullopt;
}

/// Makes a note on the finding, where it has none, as one step, and opens it for what is to be said.
void open_note(const CheckState& state, const Finding& finding) {
  if (!note_on(state.document.board(), finding)) {
    Board draft = state.document.board();
    draft.notes.push_back({"Seen.", finding.name, ""});
    state.document.change(std::move(draft), "Note on " + lower_first(finding_title(finding)));
  }
  const std::size_t row = *note_on(state.document.board(), finding);
  lead_to_key(state.ui, state.view, state.rows, "notes[" + std::to_string(row) + "].text");
}

const char* note_label(const CheckState& state, const Finding& finding) {
  return note_on(state.document.board(), finding) ? "Change its note" : "Note that it was seen";
}

/// The menu of the finding that is marked.
void draw_finding_menu(const CheckState& state, const Finding* marked) {
  if (!ImGui::BeginPopup(finding_menu_name)) return;
  if (!marked) {
    ImGui::CloseCurrentPopup();
    return ImGui::EndPopup();
  }
  Ui& ui = state.ui;
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(finding_title(*marked).c_str());
  ImGui::PopStyleColor();
  ImGui::Separator();
  if (can_fix(state, *marked) && ui.menu_item(fix_words(state.manner, *marked->fix))) apply_fix(state, *marked);
  const std::string key = key_of_finding(*marked, state.results.good->board);
  if (ui.menu_item("Open its decision", !key.empty())) lead_to_key(ui, state.view, state.rows, key);
  if (ui.menu_item(note_label(state, *marked))) open_note(state, *marked);
  if (ui.menu_item("Go to its place")) fly_to(state.view, *state.results.good, *marked, ui.now());
  ImGui::EndPopup();
}

/// Whether the right button asks for the menu of a block drawn in this frame.
bool asks_for_menu(const Ui& ui, const std::string& name) {
  const Seen* seen = ui.find(name);
  return seen && ImGui::IsWindowHovered() && ImGui::IsMouseHoveringRect(seen->low, seen->high) &&
         ImGui::IsMouseReleased(ImGuiMouseButton_Right);
}

void draw_remedies(const CheckState& state, const Finding& finding) {
  const std::string key = key_of_finding(finding, state.results.good->board);
  ImGui::Indent(state.ui.px(12));
  for (const Note& note : state.document.board().notes)
    if (note.finding == finding.name)
      state.ui.quiet("Note" + (note.by.empty() ? "" : " of " + note.by) + ": " + note.text);
  if (!finding.cost.empty()) state.ui.quiet("If it stays, " + finding.cost + ".");
  state.ui.quiet("Limit: " + limit_words(state.manner, finding) + ".");
  if (can_fix(state, finding)) {
    const std::string words = fix_words(state.manner, *finding.fix);
    if (state.ui.button(words)) apply_fix(state, finding);
    state.ui.note("apply", words);
  }
  if (state.ui.button("Open its decision", !key.empty())) lead_to_key(state.ui, state.view, state.rows, key);
  if (state.ui.button(note_label(state, finding))) open_note(state, finding);
  ImGui::Unindent(state.ui.px(12));
}

}  // namespace

void draw_findings(const CheckState& state) {
  if (!state.results.current()) return;
  const Finding* marked = marked_finding(state.view, state.results);
  const auto& all = state.results.good->findings;
  const auto notes =
      std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::note; });
  bool folded = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Finding& f = all[i];
    if (f.severity == Severity::note && (i == 0 || all[i - 1].severity != Severity::note)) {
      bool open = state.view.notes_open || (marked && marked->severity == Severity::note);
      if (state.ui.toggle("Worth knowing: " + std::to_string(notes), open)) state.view.notes_open = open;
      state.ui.note("notes", open ? "open" : "closed");
      folded = !open;
    }
    if (folded) continue;
    const bool chosen = &f == marked;
    const bool pressed = draw_block(state.ui, {"finding " + std::to_string(i + 1), finding_title(f),
                                               capital(with_labels(f.message)), capital(with_labels(f.suggestion)),
                                               capital(std::string(severity_name(f.severity))) +
                                                   (note_on(state.document.board(), f) ? ", noted" : ""),
                                               weight_of(f.severity), chosen});
    if (chosen) draw_remedies(state, f);
    const bool menu = asks_for_menu(state.ui, "Checks/finding " + std::to_string(i + 1));
    if (pressed || menu) fly_to(state.view, *state.results.good, f, state.ui.now());
    if (menu) ImGui::OpenPopup(finding_menu_name);
  }
  draw_finding_menu(state, marked_finding(state.view, state.results));
}

std::string finding_count(const Results& results) {
  if (!results.current()) return "";
  int counts[3] = {};
  for (const Finding& f : results.good->findings) ++counts[static_cast<int>(f.severity)];
  std::string text;
  const char* const words[] = {"stop", "look"};
  for (int i = 0; i < 2; ++i)
    if (counts[i])
      text += (text.empty() ? ": " : ", ") + std::to_string(counts[i]) + " " + words[i] + (counts[i] > 1 ? "s" : "");
  return text;
}

}  // namespace sagitta::viewer
