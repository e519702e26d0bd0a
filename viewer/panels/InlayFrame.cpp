#include "panels/InlayFrame.hpp"

#include <cstdlib>

#include "app/Desk.hpp"
#include "panels/ChecksPanel.hpp"
#include "panels/Decisions.hpp"
#include "panels/InlaySize.hpp"
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

bool can_be_worked_at(const Desk& desk) {
  using What = BoardHand::What;
  const Board& board = desk.document.board();
  if (!has_chosen(desk) || !desk.shown() || !desk.good->fitted || desk.view.camera.back().z < flattest) return false;
  if (desk.good->board.inlays.size() != board.inlays.size()) return false;
  if (!work_done_at(board, desk.view.stage).pockets) return false;
  const bool in_hand = desk.hand.what == What::grip || desk.hand.what == What::inlay;
  return in_hand || problems_of(desk).empty();
}

}  // namespace

void choose_inlay(Desk& desk, int inlay, std::optional<Point> near) {
  auto& chosen = desk.view.chosen;
  const std::size_t count = desk.document.board().inlays.size();
  if (inlay < 0 || static_cast<std::size_t>(inlay) >= count) return chosen.reset();
  if (!chosen || chosen->inlay != inlay || chosen->of != count) chosen = ChosenInlay{inlay, 0, 0, count};
  if (!near || !desk.good || !desk.good->layout) return;
  double least = 1e300;
  int fret = 0, in_space = 0;
  for (const Marker& marker : markers_of(*desk.good->layout, inlay)) {
    in_space = marker.fret == fret ? in_space + 1 : 0;
    fret = marker.fret;
    if (const double far = distance(marker.centre, *near); far < least)
      least = far, chosen->fret = fret, chosen->in_space = in_space;
  }
}

void choose_from_rows(Desk& desk) {
  const std::string key = desk.rows.taken();
  if (key.empty()) return;
  if (key.rfind("inlays[", 0) == 0) return choose_inlay(desk, std::atoi(key.c_str() + 7));
  desk.view.chosen.reset();
}

bool has_chosen(const Desk& desk) {
  const View& view = desk.view;
  return view.chosen && view.chosen->of == desk.document.board().inlays.size() && !view.measuring &&
         view.decision == group_of_key("inlays.shape");
}

std::optional<InlayFrame> chosen_frame(const Desk& desk) {
  if (!can_be_worked_at(desk)) return std::nullopt;
  const Board& board = desk.document.board();
  const Model& good = *desk.good;
  const int index = desk.view.chosen->inlay;
  const std::vector<Marker> markers = markers_of(*good.layout, index);
  const Marker* marker = chosen_of(markers, *desk.view.chosen);
  if (!marker) return std::nullopt;
  const Inlay &inlay = board.inlays[static_cast<std::size_t>(index)],
              &built = good.board.inlays[static_cast<std::size_t>(index)];
  const double side = board.hand == Hand::left ? -1 : 1, turn = inlay.turn_degrees * std::numbers::pi / 180;
  InlayFrame frame;
  frame.inlay = index, frame.fret = marker->fret;
  frame.centre =
      marker->centre + Point{inlay.shift_along - built.shift_along, side * (inlay.shift_across - built.shift_across)};
  frame.along = {std::cos(turn), side * std::sin(turn)}, frame.up = {-std::sin(turn), side * std::cos(turn)};
  frame.growth = growth_in(*good.layout, built, marker->fret);  // the document's list may be half typed
  frame.half = 0.5 * size_of(inlay, *good.fitted, frame.growth);
  if (!(frame.half.x > 0 && frame.half.y > 0)) return std::nullopt;
  const bool wood = good.surface.exists(frame.centre.x, frame.centre.y);
  frame.z = static_cast<float>(wood ? good.surface.height(frame.centre.x, frame.centre.y) : good.surface.thickness);
  if (desk.view.cutting && frame.centre.x < desk.view.cut) return std::nullopt;
  return frame;
}

}  // namespace sagitta::viewer
