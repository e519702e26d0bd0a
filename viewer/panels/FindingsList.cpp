#include "panels/FindingsList.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "board/Fields.hpp"
#include "panels/Block.hpp"
#include "panels/Decisions.hpp"
#include "panels/DecisionsPanel.hpp"
#include "panels/FindingMarks.hpp"

namespace sagitta::viewer {

namespace {

Weight weight_of(Severity severity) {
  return severity == Severity::stop ? Weight::heavy : severity == Severity::look ? Weight::middle : Weight::light;
}

/// The findings are of the board as it stands, not of one before it.
bool current(const Desk& desk) { return desk.good && desk.good->layout && desk.model == desk.good; }

std::string lower_first(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

/// "Set slot depth to 2.05 mm".
std::string fix_words(const Desk& desk, const Fix& fix) {
  const std::string label = lower_first(label_of_key(fix.key));
  const Field* field = find_field(fix.key);
  const bool whole = field && field->kind == Kind::integer;
  const Value value = whole ? Value(static_cast<int>(std::lround(fix.value))) : Value(fix.value);
  return "Set " + label + " to " + (field ? shown_value(*field, value, desk.manner()) : shown_number(fix.value));
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

std::string limit_words(const Desk& desk, const Finding& finding) {
  const std::string number =
      finding.unit == "mm" ? shown(finding.limit, desk.manner()) : shown_number(finding.limit, 2) + " " + finding.unit;
  return number + ", " + source_words(finding.source);
}

void draw_remedies(Desk& desk, const Finding& finding) {
  const std::string key = key_of_finding(finding, desk.good->board);
  ImGui::Indent(desk.ui.px(12));
  if (!finding.cost.empty()) desk.ui.quiet("If it stays, " + finding.cost + ".");
  desk.ui.quiet("Limit: " + limit_words(desk, finding) + ".");
  if (finding.fix && can_apply(desk.document.board(), *finding.fix)) {
    const std::string words = fix_words(desk, *finding.fix);
    if (desk.ui.button(words)) desk.document.change(apply(desk.document.board(), *finding.fix), words);
    desk.ui.note("apply", words);
  }
  if (desk.ui.button("Open its decision", !key.empty())) lead_to_key(desk, key);
  ImGui::Unindent(desk.ui.px(12));
}

}  // namespace

void draw_findings(Desk& desk) {
  if (!current(desk)) return;
  const Finding* marked = marked_finding(desk);
  const auto& all = desk.good->findings;
  const auto notes =
      std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::note; });
  bool folded = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Finding& f = all[i];
    if (f.severity == Severity::note && (i == 0 || all[i - 1].severity != Severity::note)) {
      bool open = desk.view.notes_open || (marked && marked->severity == Severity::note);
      if (desk.ui.toggle("Worth knowing: " + std::to_string(notes), open)) desk.view.notes_open = open;
      desk.ui.note("notes", open ? "open" : "closed");
      folded = !open;
    }
    if (folded) continue;
    const bool chosen = &f == marked;
    const bool pressed =
        draw_block(desk.ui, {"finding " + std::to_string(i + 1), finding_title(f), capital(with_labels(f.message)),
                             capital(with_labels(f.suggestion)), capital(std::string(severity_name(f.severity))),
                             weight_of(f.severity), chosen});
    if (chosen) draw_remedies(desk, f);
    if (pressed) fly_to(desk, f);
  }
}

std::string finding_count(const Desk& desk) {
  if (!current(desk)) return "";
  int counts[3] = {};
  for (const Finding& f : desk.good->findings) ++counts[static_cast<int>(f.severity)];
  std::string text;
  const char* const words[] = {"stop", "look"};
  for (int i = 0; i < 2; ++i)
    if (counts[i])
      text += (text.empty() ? ": " : ", ") + std::to_string(counts[i]) + " " + words[i] + (counts[i] > 1 ? "s" : "");
  return text;
}

}  // namespace sagitta::viewer
