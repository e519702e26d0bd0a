#include "decisions/DecisionForms.hpp"

namespace sagitta::viewer {

namespace {

enum class Widths { margin, margins, widths, at_fret };
Widths widths_of(const Shape& s) {
  return s.width_at_fret                 ? Widths::at_fret
         : s.nut_width || s.heel_width   ? Widths::widths
         : s.nut_margin || s.heel_margin ? Widths::margins
                                         : Widths::margin;
}

/// Draws the choice in the columns of the rows.
bool form_choice(Ui& ui, const std::string& name, const std::string& label, const std::vector<std::string>& options,
                 int& chosen) {
  ImGui::SetNextItemWidth(row_label(ui, label));
  return ui.choice(name, options, chosen);
}

void scale_form(Ui& ui, Board& draft, Edit& edit, std::string& what) {
  int way = draft.scale.bass ? 1 : 0;
  if (form_choice(ui, "form.scale", "Scales", {"one length", "fan, two lengths"}, way)) {
    if (way == 1)
      draft.scale.bass = draft.scale.treble = draft.scale.length.value_or(648), draft.scale.length.reset();
    else
      draft.scale.length = draft.scale.treble, draft.scale.bass.reset(), draft.scale.treble.reset(),
      draft.scale.square_fret = 0;
    edit = Edit::done, what = "Scales";
  }
  int steps = draft.scale.cents.empty() ? 0 : 1;
  if (form_choice(ui, "form.steps", "Fret places from", {"equal steps", "a list of cents"}, steps)) {
    if (steps == 1)
      draft.scale.cents = fret_cents(draft.scale), draft.scale.cents.erase(draft.scale.cents.begin()),
      draft.scale.steps_per_octave.reset();
    else
      draft.scale.cents.clear();
    edit = Edit::done, what = "Fret places";
  }
}

/// The last fret and the board's width there.
std::array<double, 2> width_at_last_fret(const Results& results, const Board& draft, double width) {
  if (!results.laid_out()) return {static_cast<double>(draft.scale.frets), width};
  const Layout& layout = results.good->prepared->layout();
  const FretLine& last = layout.frets.back();
  return {static_cast<double>(last.fret), 2 * layout.half_width(last.middle.x)};
}

void width_form(Ui& ui, const Results& results, Board& draft, Edit& edit, std::string& what) {
  int way = static_cast<int>(widths_of(draft.board));
  if (!form_choice(ui, "form.width", "Width given by", {"one margin", "two margins", "two widths", "nut and a fret"},
                   way))
    return;
  Shape& s = draft.board;
  const double nut = results.laid_out() ? 2 * results.good->prepared->layout().half_width(0) : 44;
  const double heel = results.laid_out()
                          ? 2 * results.good->prepared->layout().half_width(results.good->prepared->layout().heel_end)
                          : 58;
  const double spread_at_heel = results.laid_out()
                                    ? results.good->prepared->layout().spread(results.good->prepared->layout().heel_end)
                                    : draft.strings.saddle_spread;
  s.edge_margin.reset(), s.nut_margin.reset(), s.heel_margin.reset(), s.nut_width.reset(), s.heel_width.reset(),
      s.width_at_fret.reset();
  const double nut_margin = (nut - draft.strings.nut_spread) / 2;
  switch (static_cast<Widths>(way)) {
    case Widths::margin:
      s.edge_margin = nut_margin;
      break;
    case Widths::margins:
      s.nut_margin = nut_margin, s.heel_margin = (heel - spread_at_heel) / 2;
      break;
    case Widths::widths:
      s.nut_width = nut, s.heel_width = heel;
      break;
    case Widths::at_fret:
      s.nut_width = nut, s.width_at_fret = width_at_last_fret(results, draft, heel);
      break;
  }
  edit = Edit::done, what = "Way of giving the width";
}

}  // namespace

void draw_forms(Ui& ui, const Results& results, Board& draft, std::string_view table, Edit& edit, std::string& what) {
  if (table == "scale") scale_form(ui, draft, edit, what);
  if (table == "board") width_form(ui, results, draft, edit, what);
}

bool shows(const Board& b, std::string_view key) {
  const bool fan = b.scale.bass.has_value() || b.scale.treble.has_value();
  if (key == "scale.length") return !fan;
  if (key == "scale.bass" || key == "scale.treble" || key == "scale.square_fret") return fan;
  if (key == "scale.steps_per_octave") return b.scale.cents.empty();
  if (key == "scale.cents") return !b.scale.cents.empty();
  if (key == "strings.course_gap") return b.strings.course > 1;
  const Widths widths = widths_of(b.board);
  if (key == "board.edge_margin") return widths == Widths::margin;
  if (key == "board.nut_margin" || key == "board.heel_margin") return widths == Widths::margins;
  if (key == "board.nut_width") return widths == Widths::widths || widths == Widths::at_fret;
  if (key == "board.heel_width") return widths == Widths::widths;
  if (key == "board.width_at_fret") return widths == Widths::at_fret;
  return true;
}

}  // namespace sagitta::viewer
