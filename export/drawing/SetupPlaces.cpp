#include "drawing/SetupPlaces.hpp"

#include <algorithm>

#include "board/CutSide.hpp"
#include "layout/CutMiddle.hpp"

namespace sagitta {
namespace {

class Places {
 public:
  Places(const PreparedBoard& ready, const ResolvedSetup& setup) : ready_(ready), setup_(setup) {}

  std::vector<SetupPlace> all() {
    const Box& blank = ready_.layout().blank;
    add("nut line, middle", {});
    add("blank, lower left", blank.low);
    add("blank, middle", between(blank.low, blank.high, 0.5));
    if (makes(Operation::pockets)) pockets();
    if (makes(Operation::slots)) slots();
    return std::move(places_);
  }

 private:
  bool makes(Operation operation) const {
    return std::find(setup_.operations.begin(), setup_.operations.end(), operation) != setup_.operations.end();
  }

  void add(const std::string& what, Point at) { places_.push_back({what, setup_.from_board(at)}); }

  void pockets() {
    for (const Marker& marker : markers_along(ready_))
      add("pocket, fret " + std::to_string(marker.fret), marker.centre);
    const Board& board = ready_.board();
    for (const Cut& cut : board.cuts)
      if (operation_of(cut) == Operation::pockets) add("cut " + cut.name, middle_of(cut, board.hand));
  }

  /// Of a slot that the end leaves in parts, the fret's own place.
  void slots() {
    for (const FretLine& line : ready_.layout().frets) {
      const auto is_cut = [&](const Slot& slot) { return slot.fret == line.fret; };
      if (std::ranges::any_of(ready_.slots(), is_cut)) add("slot, fret " + std::to_string(line.fret), line.middle);
    }
  }

  const PreparedBoard& ready_;
  const ResolvedSetup& setup_;
  std::vector<SetupPlace> places_;
};

}  // namespace

std::vector<Marker> markers_along(const PreparedBoard& ready) {
  std::vector<Marker> markers = ready.markers();
  std::ranges::stable_sort(markers, {}, [](const Marker& each) { return each.centre.x; });
  return markers;
}

std::vector<SetupPlace> setup_places(const PreparedBoard& ready, const ResolvedSetup& setup) {
  return Places(ready, setup).all();
}

}  // namespace sagitta
