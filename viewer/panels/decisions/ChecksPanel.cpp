#include "decisions/ChecksPanel.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "decisions/Decisions.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "decisions/Differences.hpp"
#include "decisions/FindingsList.hpp"
#include "decisions/NeckFound.hpp"
#include "layout/Taper.hpp"
#include "widgets/Block.hpp"
#include "widgets/Veil.hpp"

namespace sagitta::viewer {

namespace {

std::string place_of(const Problem& p) {
  return p.file.empty() ? ""
                        : p.file + ", line " + std::to_string(p.line) + ", column " + std::to_string(p.column) + ": ";
}

void draw_problems(const CheckState& state) {
  const std::vector<Problem> problems = problems_of(state.unopened, state.results);
  const bool of_file = !state.unopened.problems.empty();
  if (of_file) {
    state.ui.quiet(state.unopened.name + " could not be opened; the board before it is still here.");
    if (state.ui.button("Dismiss")) state.unopened.problems.clear();
  }
  for (std::size_t i = 0; i < problems.size(); ++i) {
    const Problem& p = problems[i];
    const bool pressed =
        draw_block(state.ui, {"problem " + std::to_string(i + 1), p.key.empty() ? "The file" : label_of_key(p.key),
                              (of_file ? place_of(p) : "") + capital(p.message), capital(p.hint), "Problem"});
    if (pressed && !of_file) lead_to_key(state.ui, state.view, state.rows, p.key);
  }
  if (problems.empty()) {
    const bool checked = state.results.model && state.results.model->prepared;
    const char* const sound = finding_count(state.results).empty()
                                  ? "The board can be built as it stands: nothing to look at before wood is cut."
                                  : "The board can be built. Before wood is cut:";
    state.ui.quiet(checked ? sound : "Looking at the board\u2026");
  }
}

void line(Ui& ui, const std::string& label, const std::string& value) {
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(label.c_str());
  ImGui::PopStyleColor();
  const float wide = ImGui::CalcTextSize(value.c_str()).x;
  ImGui::SameLine(std::max(ImGui::GetContentRegionMax().x - wide, ImGui::CalcTextSize(label.c_str()).x + ui.px(20)));
  ImGui::TextUnformatted(value.c_str());
  ui.note("figure " + label, value);
}

void draw_figures(const CheckState& state) {
  Ui& ui = state.ui;
  const Model& model = *state.results.good;
  const Manner m = state.manner;
  const Layout& l = model.prepared->layout();
  ui.heading("Figures");
  line(ui, "Length", shown((l.tongue ? l.tongue->end : l.heel_end) - l.nut_end, m, 2));
  line(ui, "Width at the nut", shown(2 * l.half_width(0), m, 2));
  line(ui, "Width at the body end", shown(2 * l.half_width(l.heel_end), m, 2));
  const Surface& surface = model.prepared->surface();
  const double side = taper_in(l).larger_edge(0), edge = surface.exists(0, side) ? surface.height(0, side) : 0;
  line(ui, "Edge at the nut", shown(edge, m, 2));
  line(ui, "Last fret", shown(l.frets.back().middle.x, m, 2));
  const bool current = model.exact && state.results.model == state.results.good;
  line(ui, "Volume, exact", current ? shown_number(model.exact->volume / 1000, 2) + " cm\u00b3" : "\u2026");
}

void draw_notes(const CheckState& state) {
  const StageModel* stage = state.results.at(state.view.stage);
  if (!stage || stage->shell->plan.notes.empty()) return;
  state.ui.heading("Cuts that only touch");
  for (std::size_t i = 0; i < stage->shell->plan.notes.size(); ++i) {
    const Fault& note = stage->shell->plan.notes[i];
    if (draw_block(state.ui,
                   {"note " + std::to_string(i + 1), "", capital(note.message), capital(note.hint), "", Weight::light}))
      lead_to_key(state.ui, state.view, state.rows, note.key);
  }
}

void draw_comparison(const CheckState& state, Requests& asked) {
  if (!state.results.comparison) return;
  state.ui.heading("Against " + state.results.comparison->name);
  const auto found = differences(state.document.board(), state.results.comparison->board, state.manner);
  if (found.empty()) state.ui.quiet("Nothing differs.");
  if (!state.results.comparison->trouble.empty())
    state.ui.warning("It cannot be built: " + state.results.comparison->trouble + ".");
  for (const Difference& d : found)
    if (draw_block(state.ui,
                   {"difference " + d.key, label_of_key(d.key), d.there + " \u2192 " + d.here, "", "", Weight::middle}))
      lead_to_key(state.ui, state.view, state.rows, d.key);
  if (state.ui.button("See both boards")) asked.push_back(asked::Run{"two boards"});
  state.ui.tick("Its lines over the picture", state.view.other);
  if (state.ui.button("Stop comparing")) asked.push_back(asked::Run{"stop comparing"});
  ImGui::Dummy(ImVec2(0, state.ui.px(6)));
}

}  // namespace

std::vector<Problem> problems_of(const Unopened& unopened, const Results& results) {
  if (!unopened.problems.empty()) return unopened.problems;
  std::vector<Problem> problems;
  if (!results.model) return problems;
  for (const Fault& fault : results.model->faults)
    problems.push_back({fault.code, "", 1, 1, fault.key, fault.message, fault.hint, fault.where});
  if (!results.model->trouble.empty())
    problems.push_back(
        {FaultCode::not_made, "", 1, 1, "", results.model->trouble, "Change the decision made last, or undo it."});
  return problems;
}

std::string check_count(const Unopened& unopened, const Results& results) {
  const std::size_t count = problems_of(unopened, results).size();
  return count == 0   ? finding_count(results)
         : count == 1 ? ": one problem"
                      : ": " + std::to_string(count) + " problems";
}

Requests draw_checks(const CheckState& state, ImVec2 low, ImVec2 size) {
  Requests asked;
  if (state.ui.begin_panel("Checks", low, size)) {
    draw_comparison(state, asked);
    state.ui.heading("Check" + check_count(state.unopened, state.results));
    draw_problems(state);
    const ImVec2 from = ImGui::GetCursorScreenPos();
    draw_findings(state);
    ImGui::Dummy(ImVec2(0, state.ui.px(6)));
    draw_notes(state);
    if (state.results.laid_out()) draw_figures(state);
    draw_neck_found(state);
    const ImVec2 to(low.x + size.x, ImGui::GetCursorScreenPos().y);
    if (state.results.behind.picture) draw_veil(from, to, state.ui.theme.panel);
  }
  state.ui.end_panel();
  return asked;
}

}  // namespace sagitta::viewer
