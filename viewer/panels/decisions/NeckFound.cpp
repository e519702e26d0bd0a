#include "decisions/NeckFound.hpp"

namespace sagitta::viewer {

namespace {

/// A point of the board's centre line in the neck's file.
Place3 in_file(const NeckPlace& place, double x) {
  Place3 point{};
  for (std::size_t i = 0; i < 3; ++i) point[i] = place.origin[i] + x * place.along[i];
  return point;
}

std::string words(const Place3& p, const Manner& m) {
  return shown_bare(p[0], m) + ", " + shown_bare(p[1], m) + ", " + shown_bare(p[2], m);
}

void say(Ui& ui, const std::string& what, const std::string& value) {
  ui.quiet(what + ": " + value);
  ui.note("neck " + what, value);
}

/// The neck end for end: what was its nut is its heel end.
void turn_round(Document& document, const NeckPlace& place, double heel_end) {
  Board draft = document.board();
  draft.neck->file_nut = in_file(place, heel_end);
  draft.neck->file_heel = in_file(place, 0);
  document.change(std::move(draft), "Turn the neck round");
}

}  // namespace

void draw_neck_found(const CheckState& state) {
  if (!state.results.current() || !state.results.good->neck || !state.results.good->neck->shape) return;
  const NeckPlace& place = state.results.good->neck->shape->place;
  const double heel = state.results.good->prepared->layout().heel_end;
  state.ui.heading("Neck's file");
  say(state.ui, "nut at", words(in_file(place, 0), state.manner));
  say(state.ui, "heel end at", words(in_file(place, heel), state.manner));
  say(state.ui, "edges lie off by", shown(place.fit, state.manner));
  say(state.ui, "compared", shown_number(100 * place.compared, 0) + " % of the board's edges");
  say(state.ui, "sure", place.sure ? "yes" : "no; give the nut's and the heel end's points in the file");
  if (state.document.board().neck && state.ui.button("Turn the neck round")) turn_round(state.document, place, heel);
}

}  // namespace sagitta::viewer
