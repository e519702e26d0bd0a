#include "gui/GripHand.hpp"

#include <cmath>

namespace sagitta::test {

namespace {

/// A drawing of 20 x 10 mm.
std::string oblong() {
  return "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='10mm' viewBox='0 0 20 10'>"
         "<rect width='20' height='10' fill='#c02020'/></svg>";
}

}  // namespace

GripHand::GripHand(const HandSpec& spec, std::vector<int> frets, bool by_space) : Hand(spec) {
  write(folder() / "oblong.svg", oblong());
  Board draft = board();
  Inlay inlay;
  inlay.shape = InlayShape::artwork, inlay.file = "oblong.svg", inlay.along = 20, inlay.depth = 1.5;
  inlay.frets = std::move(frets);
  if (by_space) inlay.sizes = InlaySizes::by_space;
  draft.inlays = {inlay};
  show(draft);
  look("view above");
  near(marker());
}

void GripHand::show(const Board& draft) {
  desk().document.change(draft, "Test");
  wait();
}

void GripHand::look(const std::string& view) {
  desk().ask(view);
  frames(3), wait();
}

void GripHand::near(Point place) {
  desk().view.camera.target = {static_cast<float>(place.x), static_cast<float>(place.y), 6};
  desk().view.camera.distance = desk().view.camera.height / 2;  // some 4 pixels a mm, however high the picture is
  frames(3), wait();
}

void GripHand::choose(std::size_t i) {
  const ImVec2 at = window_of(marker(i), {-2, 1});
  click_at(at.x, at.y);
  frames(3);
  wait();
}

ImVec2 GripHand::window_of(Point marker, Point off) {
  const viewer::Seen picture = see("Board/picture");
  const auto z = static_cast<float>(desk().results.good->prepared->surface().height(marker.x, marker.y));
  const Point p = marker + off;
  const auto at = desk().view.camera.project({static_cast<float>(p.x), static_cast<float>(p.y), z});
  return {picture.low.x + at->x, picture.low.y + at->y};
}

Point GripHand::board_at(Point marker, ImVec2 at) {
  Point off;
  for (int i = 0; i < 12; ++i) {
    const ImVec2 here = window_of(marker, off), x = window_of(marker, off + Point{1, 0}),
                 y = window_of(marker, off + Point{0, 1});
    const Point along{x.x - here.x, x.y - here.y}, across{y.x - here.x, y.y - here.y},
        left{at.x - here.x, at.y - here.y};
    off = off + (1 / cross(along, across)) * Point{cross(left, across), cross(along, left)};
  }
  return off;
}

ImVec2 GripHand::grip(const std::string& name) {
  const viewer::Seen seen = see("Board/" + name);
  return {(seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2};
}

Pulled GripHand::pull(ImVec2 from, ImVec2 to, bool snaps, bool let_go, std::size_t i) {
  from = {std::floor(from.x), std::floor(from.y)}, to = {std::floor(to.x), std::floor(to.y)};
  const Point a = board_at(marker(i), from), b = board_at(marker(i), to);
  drag_from(from.x, from.y, std::floor((to.x - from.x) / 2), std::floor((to.y - from.y) / 2), false);
  if (!snaps) hold_shift();
  move(to.x, to.y);
  frames(4);
  if (let_go) release();
  if (!snaps) hold_shift(false);
  if (let_go) wait();
  return {std::atan2(cross(a, b), dot(a, b)) * 180 / half_turn, length(b) / length(a)};
}

Pulled GripHand::turn(double by, bool snaps, bool let_go) {
  const ImVec2 from = grip("turning grip");
  return pull(from, window_of(marker(), turned(board_at(marker(), from), by * half_turn / 180)), snaps, let_go);
}

Pulled GripHand::size(double by, bool snaps, bool let_go, int corner) {
  const ImVec2 from = grip("sizing grip " + std::to_string(corner));
  return pull(from, window_of(marker(), by * board_at(marker(), from)), snaps, let_go);
}

}  // namespace sagitta::test
