#include "paper/Section.hpp"

#include <cmath>

namespace sagitta {
namespace {

constexpr double octave = 1200, half_a_step = 50;

Section section_at(const PreparedBoard& ready, double x, std::string name) {
  const Board& board = ready.board();
  const Surface& surface = ready.surface();
  Section section;
  section.name = std::move(name);
  section.x = x;
  if (!surface.flat) section.radius = surface.radius(x);
  section.middle = surface.height(x, 0);
  const double depth = slot_depth(board), level = board.board.thickness - depth;
  const bool follows = board.slots.floor == SlotFloor::arc;
  section.floor_middle = follows ? section.middle - depth : level;
  section.depth_middle = section.middle - section.floor_middle;
  for (const int i : {0, 1}) {
    SectionSide& side = section.sides[i];
    side.edge = ready.layout().edge(i, x);
    side.height = surface.height(x, side.edge);
    side.slot_end = side.edge - (board.slots.ends == SlotEnds::blind ? board.slots.edge_left : 0);
    const double end = surface.height(x, side.slot_end);
    side.floor = follows ? end - depth : level;
    side.depth = end - side.floor;
  }
  return section;
}

}  // namespace

std::vector<Section> sections_of(const PreparedBoard& ready) {
  const Layout& layout = ready.layout();
  std::vector<Section> sections{section_at(ready, 0, "At the nut")};
  const FretLine* nearest = nullptr;
  for (const FretLine& fret : layout.frets)
    if (!nearest || std::abs(fret.cents - octave) < std::abs(nearest->cents - octave)) nearest = &fret;
  if (nearest && std::abs(nearest->cents - octave) < half_a_step)
    sections.push_back(section_at(ready, nearest->middle.x, "At fret " + std::to_string(nearest->fret)));
  sections.push_back(section_at(ready, layout.heel_end, "At the body end"));
  return sections;
}

}  // namespace sagitta
