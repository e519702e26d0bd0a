#include "panels/ChecksPanel.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "panels/Block.hpp"
#include "panels/Decisions.hpp"
#include "panels/DecisionsPanel.hpp"
#include "panels/FindingsList.hpp"

namespace sagitta::viewer {

namespace {

std::string place_of(const Problem& p) {
  return p.file.empty() ? ""
                        : p.file + ", line " + std::to_string(p.line) + ", column " + std::to_string(p.column) + ": ";
}

void draw_problems(Desk& desk) {
  const std::vector<Problem> problems = problems_of(desk);
  const bool of_file = !desk.file_problems.empty();
  if (of_file) {
    desk.ui.quiet(desk.file_problems_of + " could not be opened; the board before it is still here.");
    if (desk.ui.button("Dismiss")) desk.file_problems.clear();
  }
  for (std::size_t i = 0; i < problems.size(); ++i) {
    const Problem& p = problems[i];
    const bool pressed =
        draw_block(desk.ui, {"problem " + std::to_string(i + 1), p.key.empty() ? "The file" : label_of_key(p.key),
                             (of_file ? place_of(p) : "") + capital(p.message), capital(p.hint), "Problem"});
    if (pressed && !of_file) lead_to_key(desk, p.key);
  }
  if (problems.empty()) {
    const bool checked = desk.model && desk.model->layout;
    const char* const sound = finding_count(desk).empty()
                                  ? "The board can be built as it stands: nothing to look at before wood is cut."
                                  : "The board can be built. Before wood is cut:";
    desk.ui.quiet(checked ? sound : "Looking at the board\u2026");
  }
}

void line(Desk& desk, const std::string& label, const std::string& value) {
  ImGui::PushStyleColor(ImGuiCol_Text, desk.ui.theme.quiet);
  ImGui::TextUnformatted(label.c_str());
  ImGui::PopStyleColor();
  const float wide = ImGui::CalcTextSize(value.c_str()).x;
  ImGui::SameLine(
      std::max(ImGui::GetContentRegionMax().x - wide, ImGui::CalcTextSize(label.c_str()).x + desk.ui.px(20)));
  ImGui::TextUnformatted(value.c_str());
  desk.ui.note("figure " + label, value);
}

void draw_figures(Desk& desk) {
  const Model& model = *desk.good;
  const Manner m = desk.manner();
  const Layout& l = *model.layout;
  desk.ui.heading("Figures");
  line(desk, "Length", shown(l.heel_end - l.nut_end, m, 2));
  line(desk, "Width at the nut", shown(2 * l.half_width(0), m, 2));
  line(desk, "Width at the heel", shown(2 * l.half_width(l.heel_end), m, 2));
  const double edge = model.surface.exists(0, l.half_width(0)) ? model.surface.height(0, l.half_width(0)) : 0;
  line(desk, "Edge at the nut", shown(edge, m, 2));
  line(desk, "Last fret", shown(l.frets.back().middle.x, m, 2));
  const bool current = model.exact && desk.model == desk.good;
  line(desk, "Volume, exact", current ? shown_number(model.exact->volume / 1000, 2) + " cm\u00b3" : "\u2026");
}

void draw_notes(Desk& desk) {
  const StageModel* stage = desk.shown();
  if (!stage || stage->shell.plan.notes.empty()) return;
  desk.ui.heading("Cuts that only touch");
  for (std::size_t i = 0; i < stage->shell.plan.notes.size(); ++i) {
    const Fault& note = stage->shell.plan.notes[i];
    if (draw_block(desk.ui,
                   {"note " + std::to_string(i + 1), "", capital(note.message), capital(note.hint), "", Weight::light}))
      lead_to_key(desk, note.key);
  }
}

void draw_comparison(Desk& desk) {
  if (!desk.comparison) return;
  desk.ui.heading("Against " + desk.comparison->name);
  const auto found = differences(desk.document.board(), desk.comparison->board, desk.manner());
  if (found.empty()) desk.ui.quiet("Nothing differs.");
  for (const Difference& d : found)
    if (draw_block(desk.ui,
                   {"difference " + d.key, label_of_key(d.key), d.there + " \u2192 " + d.here, "", "", Weight::middle}))
      lead_to_key(desk, d.key);
  if (desk.ui.button("Stop comparing")) desk.ask("stop comparing");
  ImGui::Dummy(ImVec2(0, desk.ui.px(6)));
}

}  // namespace

std::vector<Problem> problems_of(const Desk& desk) {
  if (!desk.file_problems.empty()) return desk.file_problems;
  std::vector<Problem> problems;
  if (!desk.model) return problems;
  for (const Fault& fault : desk.model->faults) problems.push_back({"", 1, 1, fault.key, fault.message, fault.hint});
  if (!desk.model->trouble.empty())
    problems.push_back({"", 1, 1, "", desk.model->trouble, "Change the decision made last, or undo it."});
  return problems;
}

std::string check_count(const Desk& desk) {
  const std::size_t count = problems_of(desk).size();
  return count == 0 ? finding_count(desk) : count == 1 ? ": one problem" : ": " + std::to_string(count) + " problems";
}

void draw_checks(Desk& desk, ImVec2 low, ImVec2 size) {
  if (desk.ui.begin_panel("Checks", low, size)) {
    draw_comparison(desk);
    desk.ui.heading("Check" + check_count(desk));
    draw_problems(desk);
    draw_findings(desk);
    ImGui::Dummy(ImVec2(0, desk.ui.px(6)));
    draw_notes(desk);
    if (desk.good && desk.good->layout) draw_figures(desk);
  }
  desk.ui.end_panel();
}

}  // namespace sagitta::viewer
