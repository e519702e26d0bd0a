/// The builder's own cuts: the wood that is left under, over and between them.

#include <algorithm>
#include <map>

#include "board/CutSide.hpp"
#include "inlay/CutFit.hpp"
#include "inlay/Flatten.hpp"
#include "plan/Slender.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// Points along an edge of the plan.
constexpr int stations = 16;

/// The least wood over a cell, and where.
struct Least {
  double wood = 1e300;
  Point at;
};

class CutCheck {
 public:
  CutCheck(const Subject& subject, Judge& judge)
      : ready_(subject.prepared), board_(ready_.board()), plan_(ready_.plan(Stage::board)), judge_(judge) {}

  void run() {
    for (int face = 1; face < static_cast<int>(plan_.cells.size()); ++face)
      plan_.cells[face].wood() ? look_at_wood(face) : look_at_hole(face);
    for (const FittedCut& cut : ready_.inlays().cuts) {
      tell_of(cut);
      look_at_inlays(cut);
    }
  }

 private:
  const Cut& key_of(const FittedCut& cut) const { return board_.cuts[static_cast<std::size_t>(cut.cut)]; }
  std::string name_of(int cut) const { return "cut \"" + board_.cuts[static_cast<std::size_t>(cut)].name + "\""; }
  const PlanFeature* feature(int index) const {
    return index < 0 ? nullptr : &plan_.features[static_cast<std::size_t>(index)];
  }
  static bool is_cut(const PlanFeature* feature) { return feature && feature->kind == Source::Kind::cut; }

  /// Heights in a cell depend on its border: a floor is level, and over a level ceiling the surface, which bulges, is
  /// lowest at the border.
  Least least_over(int face) const {
    const Cell& cell = plan_.cells[static_cast<std::size_t>(face)];
    Least least;
    for (const HalfEdge start : plan_.map.faces[face].loops) {
      HalfEdge h = start;
      do {
        for (int i = 0; i <= stations; ++i) {
          const Point p = plan_.map.at(plan_.map.edges[h >> 1], static_cast<double>(i) / stations);
          const double wood = height(plan_.surface, cell.top, p) - height(plan_.surface, cell.bottom, p);
          if (wood < least.wood) least = {wood, p};
        }
        h = plan_.map.next[h];
      } while (h != start);
    }
    return least;
  }

  /// The feature as a builder calls it.
  static std::string told(const PlanFeature& feature) {
    if (feature.id.kind != FeatureId::Kind::slot) return feature.name;
    return feature.id.fret == 0 ? "slot zero" : "the slot of fret " + std::to_string(feature.id.fret);
  }

  void look_at_wood(int face) {
    const Cell& cell = plan_.cells[static_cast<std::size_t>(face)];
    if (!cell.below() || cell.above()) return;  // a side dot's hole lies between: its own findings
    const PlanFeature *top = feature(cell.feature), *bottom = feature(cell.bottom_feature);
    if (!is_cut(top) && !is_cut(bottom)) return;
    const Least least = least_over(face);
    const auto keep = [&](std::map<int, Least>& list, const PlanFeature* cut) {
      if (is_cut(cut) && least.wood < list[cut->id.index].wood) list[cut->id.index] = least;
    };
    if (top && bottom && judge_.breaks(rule("thin-between-cuts"), least.wood)) {
      if (least.wood < between_.wood) between_ = least, upper_ = top, lower_ = bottom;
      return;
    }
    bottom ? keep(over_, bottom) : keep(under_, top);
  }

  /// A place without wood that a cut from below has opened.
  void look_at_hole(int face) {
    const HalfEdge h = plan_.map.faces[face].loops.front();
    const Point from = plan_.map.vertices[plan_.map.origin(h)], to = plan_.map.vertices[plan_.map.target(h)];
    const Point p = plan_.map.at(plan_.map.edges[h >> 1], 0.5) + tolerance::snap / 2 * left_of(unit(to - from));
    if (winding(ready_.layout().outline, p) == 0) return;
    for (const FittedCut& cut : ready_.inlays().cuts)
      if (is_through(key_of(cut)) && covers(cut, p)) return;
    for (const FittedCut& cut : ready_.inlays().cuts)
      if (is_from_below(key_of(cut)) && covers(cut, p)) {
        open_[cut.cut] += std::abs(area(plan_.map, face));
        open_at_[cut.cut] = p;
        return;
      }
  }

  void tell_of(const FittedCut& cut) {
    const int i = cut.cut;
    const auto spot = [&](Point at, double z) { return Spot{at, z, id_of(cut), name_of(i)}; };
    if (const auto found = under_.find(i); found != under_.end())
      judge_.hold(rule("thin-under-cut"), found->second.wood, spot(found->second.at, found->second.wood),
                  "under " + name_of(i) + " " + judge_.wood_left(found->second.wood),
                  "make it less deep, or go right through with depth = \"through\"");
    if (const auto found = over_.find(i); found != over_.end())
      judge_.hold(rule("thin-over-cut"), found->second.wood, spot(found->second.at, key_of(cut).depth),
                  "over " + name_of(i) + " " + judge_.wood_left(found->second.wood),
                  "make it less deep, or move it from under other cuts");
    if (upper_ && (upper_->id.index == i || lower_->id.index == i) && !told_between_ &&
        (is_cut(upper_) ? upper_ : lower_)->id.index == i) {
      told_between_ = true;
      judge_.hold(rule("thin-between-cuts"), between_.wood, spot(between_.at, key_of(cut).depth),
                  "between the floor of " + told(*upper_) + " and " + told(*lower_) + " below it " +
                      judge_.wood_left(between_.wood),
                  "make one of them less deep, or so deep that they open into each other");
    }
    if (const auto found = open_.find(i); found != open_.end())
      judge_.hold(rule("cuts-meet"), found->second, spot(open_at_[i], key_of(cut).depth),
                  name_of(i) + " comes out at the top: there is a hole right through",
                  "make it less deep where that is not meant");
    judge_.hold(rule("corner-rounded"), cut.departure, spot(cut.departure_at, ready_.surface().thickness),
                "a cutter of radius " + judge_.shown(clearing_radius(board_)) + " stays " +
                    judge_.shown(cut.departure) + " away from the corners of " + name_of(i) + ": they are round",
                "name a smaller cutter for pocket-clear, or finish the corners by hand");
  }

  void look_at_inlays(const FittedCut& cut) {
    const Region own = flattened(cut.outlines);
    const Box box = bounds(own);
    double most = 0;
    const InlayPiece* worst = nullptr;
    for (const InlayPiece& piece : ready_.inlays().pieces) {
      const Region pocket = flattened(piece.pocket);
      if (!bounds(pocket).overlaps(box)) continue;
      if (const double common = area(intersection(own, pocket)); common > most) most = common, worst = &piece;
    }
    if (!worst || most <= tolerance::crumb) return;
    const Box there = bounds(flattened(worst->pocket));
    judge_.hold(rule("cut-on-inlay"), most,
                {between(there.low, there.high, 0.5), ready_.surface().thickness, id_of(cut), name_of(cut.cut)},
                name_of(cut.cut) + " and the pocket of " + worst->name + " overlap: cuts never cut pieces",
                "move one of the two");
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const Plan& plan_;
  Judge& judge_;
  std::map<int, Least> under_, over_;  ///< by cut
  std::map<int, double> open_;         ///< mm^2
  std::map<int, Point> open_at_;
  Least between_;
  const PlanFeature *upper_ = nullptr, *lower_ = nullptr;
  bool told_between_ = false;
};

}  // namespace

void judge_cuts(const Subject& subject, Judge& judge) {
  if (!subject.prepared.board().cuts.empty()) CutCheck(subject, judge).run();
}

}  // namespace sagitta
