#include "app/DropPlace.hpp"

#include <algorithm>
#include <cmath>

#include "overlay/PlanStrip.hpp"

namespace sagitta::viewer {

namespace {

constexpr double centre_reach = 3;  ///< mm beside the middle of a space that still mean it
constexpr double parts = 2;         ///< of a mm: a hand that drops is no finer

bool holds(const Seen* seen, ImVec2 at) {
  return seen && at.x >= seen->low.x && at.x < seen->high.x && at.y >= seen->low.y && at.y < seen->high.y;
}

double meant(double shift) { return std::abs(shift) < centre_reach ? 0 : std::round(shift * parts) / parts; }

}  // namespace

std::optional<Point> place_at_pointer(const Desk& desk) {
  if (!desk.results.laid_out()) return std::nullopt;
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const Layout& layout = desk.results.good->prepared->layout();
  if (const Seen* plan = desk.ui.find("Board/plan"); holds(plan, pointer)) {
    const Point place = plan_strip_frame(desk.ui, layout, plan->low, plan->high).place(pointer);
    return winding(layout.outline, place) == 0 ? std::nullopt : std::optional(place);
  }
  const Seen* picture = desk.ui.find("Board/picture");
  const StageModel* stage = desk.results.at(desk.view.stage);
  if (!holds(picture, pointer) || !stage) return std::nullopt;
  const auto hit = cast(stage->mesh, desk.view.camera.ray({pointer.x - picture->low.x, pointer.y - picture->low.y}));
  if (!hit) return std::nullopt;
  return Point{static_cast<double>(hit->place.x), static_cast<double>(hit->place.y)};
}

void put_at(Inlay& inlay, Point place, const Board& board, const Layout& layout) {
  if (layout.frets.size() < 2) return;
  std::size_t fret = 1;
  while (fret + 1 < layout.frets.size() && layout.frets[fret].middle.x < place.x) ++fret;
  const Point middle = between(layout.frets[fret - 1].middle, layout.frets[fret].middle, 0.5);
  inlay.frets = {static_cast<int>(fret)};
  inlay.shift_along = meant(place.x - middle.x);
  inlay.shift_across = meant((board.hand == Hand::left ? -1 : 1) * (place.y - middle.y));
}

}  // namespace sagitta::viewer
