#include "overlay/ChosenInlay.hpp"

#include <cstdlib>

#include "decisions/Decisions.hpp"
#include "overlay/InlaySize.hpp"
#include "plan/Feature.hpp"

namespace sagitta::viewer {

namespace {

constexpr float flattest = 0.25f;  ///< sine of the angle under which a frame can still be worked at

/// Markers of one inlay, in the layout's order.
std::vector<Marker> markers_of(const Layout& layout, int inlay) {
  std::vector<Marker> markers;
  for (const Marker& marker : layout.markers)
    if (marker.inlay == inlay) markers.push_back(marker);
  return markers;
}

/// The chosen one; the inlay's first where its space has none any more.
const Marker* chosen_of(const std::vector<Marker>& markers, const ChosenInlay& chosen) {
  int in_space = 0;
  for (const Marker& marker : markers)
    if (marker.fret == chosen.fret && in_space++ == chosen.in_space) return &marker;
  return markers.empty() ? nullptr : &markers.front();
}

bool can_be_worked_at(const PictureState& state) {
  using What = BoardHand::What;
  if (!has_chosen(state.view, state.board) || !state.results.at(state.view.stage) || !state.results.good->fitted)
    return false;
  if (state.view.camera.back().z < flattest) return false;
  if (state.results.good->board.inlays.size() != state.board.inlays.size()) return false;
  if (!work_done_at(state.board, state.view.stage).pockets) return false;
  const bool in_hand = state.hand.what == What::grip || state.hand.what == What::inlay;
  return in_hand || state.sound;
}

}  // namespace

void choose_inlay(View& view, const Board& board, const Results& results, int inlay, std::optional<Point> near) {
  auto& chosen = view.chosen;
  const std::size_t count = board.inlays.size();
  if (inlay < 0 || static_cast<std::size_t>(inlay) >= count) return chosen.reset();
  if (!chosen || chosen->inlay != inlay || chosen->of != count) chosen = ChosenInlay{inlay, 0, 0, count};
  if (!near || !results.laid_out()) return;
  double least = 1e300;
  int fret = 0, in_space = 0;
  for (const Marker& marker : markers_of(results.good->prepared->layout(), inlay)) {
    in_space = marker.fret == fret ? in_space + 1 : 0;
    fret = marker.fret;
    if (const double far = distance(marker.centre, *near); far < least)
      least = far, chosen->fret = fret, chosen->in_space = in_space;
  }
}

void choose_from_rows(FieldRows& rows, View& view, const Board& board, const Results& results) {
  const std::string key = rows.taken();
  if (key.empty()) return;
  if (key.rfind("inlays[", 0) == 0) return choose_inlay(view, board, results, std::atoi(key.c_str() + 7));
  view.chosen.reset();
}

bool has_chosen(const View& view, const Board& board) {
  return view.chosen && view.chosen->of == board.inlays.size() && !view.measuring &&
         view.decision == group_of_key("inlays.shape");
}

std::optional<InlayFrame> chosen_frame(const PictureState& state) {
  if (!can_be_worked_at(state)) return std::nullopt;
  const Board& board = state.board;
  const Model& good = *state.results.good;
  const int index = state.view.chosen->inlay;
  const std::vector<Marker> markers = markers_of(good.prepared->layout(), index);
  const Marker* marker = chosen_of(markers, *state.view.chosen);
  if (!marker) return std::nullopt;
  const Inlay &inlay = board.inlays[static_cast<std::size_t>(index)],
              &built = good.board.inlays[static_cast<std::size_t>(index)];
  const double side = board.hand == Hand::left ? -1 : 1, turn = inlay.turn_degrees * std::numbers::pi / 180;
  InlayFrame frame;
  frame.inlay = index, frame.fret = marker->fret;
  frame.centre =
      marker->centre + Point{inlay.shift_along - built.shift_along, side * (inlay.shift_across - built.shift_across)};
  frame.along = {std::cos(turn), side * std::sin(turn)}, frame.up = {-std::sin(turn), side * std::cos(turn)};
  frame.growth = growth_in(good.prepared->layout(), built, marker->fret);  // the document's list may be half typed
  frame.half = 0.5 * size_of(inlay, *good.fitted, frame.growth);
  if (!(frame.half.x > 0 && frame.half.y > 0)) return std::nullopt;
  const bool wood = good.prepared->surface().exists(frame.centre.x, frame.centre.y);
  frame.z = static_cast<float>(wood ? good.prepared->surface().height(frame.centre.x, frame.centre.y)
                                    : good.prepared->surface().thickness);
  if (state.view.cutting && frame.centre.x < state.view.cut) return std::nullopt;
  return frame;
}

}  // namespace sagitta::viewer
