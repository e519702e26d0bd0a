#include "release/CutNumbers.hpp"

#include <algorithm>

#include "drawing/ResolvedSetup.hpp"
#include "drawing/WoodTop.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

/// Stations along the strip where the lowest and highest places of the radius cut are looked for.
constexpr int stations = 64;

class Numbers {
 public:
  Numbers(const PreparedBoard& ready, Operation operation, const ResolvedSetup& setup)
      : ready_(ready), operation_(operation), setup_(setup) {}

  std::vector<CutNumber> take() {
    if (setup_.tape > 0) add("tape under the blank", setup_.tape);
    height("glue face", 0);
    height("top of the wood", wood_top_before(ready_, operation_));
    switch (operation_) {
      case Operation::thickness:
        height("milled to", thickness_to(ready_.board()));
        break;
      case Operation::pockets:
        for (const InlayPiece& piece : ready_.pieces()) height("floor of the pocket of " + piece.name, floor_of(piece));
        break;
      case Operation::inlay:
        for (const InlayPiece& piece : ready_.pieces()) add("thickness of " + piece.name, piece.thickness);
        break;
      case Operation::radius:
        radius();
        break;
      case Operation::slots:
        slots();
        break;
      case Operation::outline:
        outline();
        break;
    }
    return std::move(numbers_);
  }

 private:
  void add(const std::string& what, double value) { numbers_.push_back({what, value}); }
  void height(const std::string& what, double above_glue_face) {
    add(what + ", z", setup_.z_from_board(above_glue_face));
  }

  double floor_of(const InlayPiece& piece) const { return ready_.board().board.thickness - piece.depth; }

  void radius() {
    const Box& strip = ready_.layout().strip;
    double high = -1e300, low = 1e300;
    for (int i = 0; i <= stations; ++i) {
      const double x = strip.low.x + (strip.high.x - strip.low.x) * i / stations;
      high = std::max(high, ready_.surface().height(x, 0));
      for (const double y : {strip.low.y, strip.high.y})
        if (ready_.surface().exists(x, y)) low = std::min(low, ready_.surface().height(x, y));
    }
    height("middle of the surface as it is cut", high + ready_.board().sanding);
    height("lowest edge of the radius cut", low + ready_.board().sanding);
    add("board as wide at the nut", ready_.layout().edge(0, 0) + ready_.layout().edge(1, 0));
  }

  void slots() {
    const Board& board = ready_.board();
    const double depth = slot_depth(board);
    double low = 1e300, high = -1e300;
    for (const Slot& slot : ready_.slots())
      for (const Point p : {slot.bass_end, between(slot.bass_end, slot.treble_end, 0.5), slot.treble_end}) {
        const double floor =
            board.slots.floor == SlotFloor::level ? board.board.thickness - depth : ready_.surface().height(p) - depth;
        low = std::min(low, floor), high = std::max(high, floor);
      }
    if (!ready_.slots().empty()) {
      add("slot width", board.slots.width);
      add("slot depth", depth);
      height("highest floor of the slots", high);
      height("lowest floor of the slots", low);
      add("length of the last slot", distance(ready_.slots().back().bass_end, ready_.slots().back().treble_end));
    }
    if (ready_.layout().nut) height("floor of the nut seat", board.board.thickness - ready_.layout().nut->depth);
  }

  void outline() {
    const Layout& layout = ready_.layout();
    add("width at the nut", layout.edge(0, 0) + layout.edge(1, 0));
    add("width at the body end", layout.edge(0, layout.heel_end) + layout.edge(1, layout.heel_end));
    for (const SideDot& dot : ready_.side_dots())
      height("side dot at fret " + std::to_string(dot.fret) + (dot.part ? ", the second" : "") +
                 (dot.side ? ", treble edge" : ""),
             ready_.surface().height(dot.mouth) / 2);
  }

  const PreparedBoard& ready_;
  Operation operation_;
  const ResolvedSetup& setup_;
  std::vector<CutNumber> numbers_;
};

/// The set-up that does it; where none does, one with its zero on the nut line and the glue face.
ResolvedSetup setup_for(const PreparedBoard& ready, Operation operation) {
  for (const ResolvedSetup& setup : setups_of(ready))
    if (std::find(setup.operations.begin(), setup.operations.end(), operation) != setup.operations.end()) return setup;
  return {};
}

}  // namespace

std::vector<CutNumber> cut_numbers(const PreparedBoard& ready, Operation operation) {
  const ResolvedSetup setup = setup_for(ready, operation);
  return Numbers(ready, operation, setup).take();
}

}  // namespace sagitta
