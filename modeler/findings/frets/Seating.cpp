#include "frets/Seating.hpp"

#include <algorithm>
#include <cmath>

#include "board/Cutters.hpp"
#include "board/Materials.hpp"

namespace sagitta {

std::optional<Seating> seating_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  if (layout.slots.size() < 2) return {};
  Seating seating;
  const double cut = board.measured.slot_width
                         ? board.slots.width
                         : std::max(board.slots.width, widest_cut(board, CutterUse::slot).value_or(0));
  seating.interference = std::max(board.wire.barb_width.value_or(0), board.wire.tang_width) - cut;
  const auto middle = [&](const Slot& slot) { return layout.frets[static_cast<std::size_t>(slot.fret)].middle.x; };
  seating.length = middle(layout.slots.back()) - middle(layout.slots.front());
  if (seating.interference <= 0 || seating.length <= 0) return seating;
  const double h = ready.surface().thickness, d = std::min(slot_depth(board), h);
  const double strain = seating.interference * static_cast<double>(layout.slots.size() - 1) / seating.length;
  seating.rise = 6 * strain * d * (h - d) / std::pow(h, 3) * std::pow(seating.length, 2) / 8;
  const double width = 2 * layout.half_width((middle(layout.slots.back()) + middle(layout.slots.front())) / 2);
  const double modulus = 1000 * material(board, board.blank.material).modulus;  // N/mm2
  seating.load = 48 * modulus * width * std::pow(h, 3) / 12 * seating.rise / std::pow(seating.length, 3);
  return seating;
}

}  // namespace sagitta
