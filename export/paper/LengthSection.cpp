#include "paper/LengthSection.hpp"

#include <algorithm>
#include <cmath>

#include "board/CutSide.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Stations along a scalloped space, and along a piece of an outline.
constexpr int stations = 32;

/// Where outlines cross the centre line, from left to right.
std::vector<double> crossings(const Loops& loops) {
  std::vector<double> at;
  for (const Loop& loop : loops)
    for (const CurveSegment& segment : loop)
      for (int i = 0; i < stations; ++i) {
        const Point a = segment.at(static_cast<double>(i) / stations);
        const Point b = segment.at(static_cast<double>(i + 1) / stations);
        if ((a.y < 0) != (b.y < 0)) at.push_back(a.x + (b.x - a.x) * a.y / (a.y - b.y));
      }
  std::ranges::sort(at);
  return at;
}

class Along {
 public:
  explicit Along(const PreparedBoard& ready)
      : ready_(ready), board_(ready.board()), layout_(ready.layout()), surface_(ready.surface()) {}

  LengthSection section() {
    top();
    slots();
    nut();
    pockets();
    cuts();
    for (const ScallopedSpace& space : surface_.scallops) trough(space);
    if (surface_.fall_start) {
      own_.fall_from = *surface_.fall_start;
      own_.fall = surface_.height(own_.fall_from, 0) - surface_.height(layout_.heel_end, 0);
    }
    return std::move(own_);
  }

 private:
  double thickness() const { return board_.board.thickness; }

  void top() {
    std::vector<double> at{layout_.nut_end, layout_.heel_end};
    if (surface_.fall_start) at.push_back(*surface_.fall_start);
    for (const ScallopedSpace& space : surface_.scallops)
      for (int i = 0; i <= stations; ++i) at.push_back(space.x(static_cast<double>(i) / stations, 0));
    std::ranges::sort(at);
    for (const double x : at)
      if (x >= layout_.nut_end && x <= layout_.heel_end) own_.top.push_back({x, surface_.lowest(x, 0)});
  }

  void slots() {
    const double depth = slot_depth(board_);
    for (const Slot& slot : ready_.slots()) {
      const Point a = slot.bass_end, b = slot.treble_end;
      if (a.y * b.y > 0) continue;
      const double x = a.x + (b.x - a.x) * a.y / (a.y - b.y), along = slot.width * distance(a, b) / std::abs(b.y - a.y);
      own_.slots.push_back(
          {slot.fret, x, along,
           board_.slots.floor == SlotFloor::level ? thickness() - depth : surface_.height(x, 0) - depth});
    }
  }

  void recess(const Loops& outlines, double low, double high) {
    const std::vector<double> at = crossings(outlines);
    for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
      const double from = std::max(at[i], layout_.nut_end), to = std::min(at[i + 1], layout_.heel_end);
      if (to > from) own_.recesses.push_back({from, to, low, high});
    }
  }

  void nut() {
    if (!layout_.nut) return;
    const double from = layout_.nut->shelf ? layout_.nut_end : layout_.nut->back.x, to = layout_.nut->face.x;
    const double below = board_.nut.floor == NutFloor::arc ? surface_.height(to, 0) : thickness();
    own_.recesses.push_back({from, to, below - layout_.nut->depth, thickness()});
  }

  void pockets() {
    for (const InlayPiece& piece : ready_.pieces()) recess(piece.pocket, thickness() - piece.depth, thickness());
  }

  void cuts() {
    for (const FittedCut& fitted : ready_.inlays().cuts) {
      const Cut& cut = board_.cuts[static_cast<std::size_t>(fitted.cut)];
      if (is_from_below(cut))
        recess(fitted.outlines, 0, cut.depth);
      else
        recess(fitted.outlines, is_through(cut) ? 0 : thickness() - cut.depth, thickness());
    }
  }

  void trough(const ScallopedSpace& space) {
    LengthSection::Trough own;
    own.fret = space.fret;
    own.depth = space.depth;
    own.x = space.x(0.5, 0);
    own.left = surface_.lowest(own.x, 0);
    for (const int side : {0, 1}) {
      const double y = (side == 0 ? -1 : 1) * layout_.edge(side, own.x), x = space.x(0.5, y);
      own.left_at_edge[side] = surface_.height(x, y) - space.depth;
    }
    own_.troughs.push_back(own);
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const Layout& layout_;
  const Surface& surface_;
  LengthSection own_;
};

}  // namespace

bool is_shaped_along(const PreparedBoard& ready) {
  return !ready.surface().scallops.empty() || ready.surface().fall_start.has_value();
}

LengthSection length_section_of(const PreparedBoard& ready) { return Along(ready).section(); }

}  // namespace sagitta
