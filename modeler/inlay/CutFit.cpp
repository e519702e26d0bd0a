#include "inlay/CutFit.hpp"

#include <algorithm>
#include <cmath>

#include "board/Cutters.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/DrawnLoops.hpp"
#include "inlay/FittedShape.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/OpenClose.hpp"
#include "layout/CutMiddle.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Arcs that stand for a drawn curve stray from it by no more. mm.
constexpr double beside_curve = 2 * tolerance::vertex;
/// A drawing is no larger on the board, mm: the range of cuts.across.
constexpr double largest_cut = 3000;

/// The shapes that no drawing gives are those of inlays, without a clearance.
Inlay as_inlay(const Cut& cut) {
  Inlay inlay;
  inlay.shape = cut.shape == CutShape::dot     ? InlayShape::dot
                : cut.shape == CutShape::block ? InlayShape::block
                                               : InlayShape::oval;
  inlay.diameter = cut.diameter.value_or(0);
  inlay.along = cut.along;
  inlay.across = cut.across;
  inlay.clearance = 0;
  return inlay;
}

class CutFitter {
 public:
  CutFitter(const Board& board, const Layout& layout, const Drawings& drawings, const Cancel& cancel)
      : board_(board), layout_(layout), drawings_(drawings), cancel_(cancel), radius_(clearing_radius(board)) {}

  std::variant<std::vector<FittedCut>, Faults> run() {
    std::vector<FittedCut> cuts;
    const Region outline = flattened(Loops{layout_.outline});
    for (int i = 0; i < static_cast<int>(board_.cuts.size()); ++i) {
      own_ = i;
      const std::size_t before = faults_.size();
      FittedCut fitted = cut().shape == CutShape::drawn ? drawn() : plain();
      fitted.cut = i;
      if (cancel_.wanted()) return std::vector<FittedCut>{};
      if (faults_.size() > before) continue;
      if (area(intersection(flattened(fitted.outlines), outline, cancel_)) <= tolerance::crumb)
        blame(".at", FaultCode::off_board, named() + " lies beside the board",
              "move it with at = [x, y], measured from the nut line on the centre line");
      cuts.push_back(std::move(fitted));
    }
    if (!faults_.empty()) return faults_;
    return cuts;
  }

 private:
  const Cut& cut() const { return board_.cuts[static_cast<std::size_t>(own_)]; }
  std::string named() const { return "cut \"" + cut().name + "\""; }

  void blame(const std::string& key, FaultCode code, const std::string& message, const std::string& hint) {
    faults_.push_back({code, "cuts[" + std::to_string(own_) + "]" + key, message, hint, {FeatureId::Kind::cut, own_}});
  }

  void blame_cutter() {
    blame("", FaultCode::cutter_too_large,
          named() + ": the pocket-clear cutter, which cuts " + in_units(board_, 2 * radius_) +
              " wide, does not go into it",
          "name a smaller pocket-clear cutter, or make the cut larger");
  }

  Placement place() const {
    return {cut().turn_degrees * std::numbers::pi / 180, board_.hand == Hand::left, middle_of(cut(), board_.hand)};
  }

  FittedCut plain() {
    FittedShape shape = fit_shape(as_inlay(cut()), radius_, place());
    if (shape.pocket.empty()) {
      blame_cutter();
      return {};
    }
    return {own_,          std::move(shape.pocket), std::move(shape.rounded_pocket),
            shape.ellipse, shape.departure,         shape.departure_at};
  }

  FittedCut drawn() {
    const Artwork& artwork = drawings_.at(cut().file);
    const Box box = bounds(artwork);
    const Point size = box.high - box.low;
    const double own = cut().along ? size.x : size.y;
    if (!(own > 0)) {
      blame(".file", FaultCode::drawing_empty, cut().file + " has no filled area to cut",
            "fill the outlines in the drawing program");
      return {};
    }
    const double scale = (cut().along ? *cut().along : cut().across.value_or(own)) / own;
    if (scale * std::max(size.x, size.y) > largest_cut) {
      blame(cut().along ? ".along" : ".across", FaultCode::not_allowed,
            cut().file + " would be " + in_units(board_, std::round(scale * std::max(size.x, size.y))) +
                " long on the board; " + in_units(board_, largest_cut) + " are possible",
            "make it smaller, or look in the drawing for a shape that is far larger than the others");
      return {};
    }
    Loops loops;
    for (const DrawnRegion& region : artwork.regions)
      for (Loop& loop : drawn_loops(region.outlines, scale, between(box.low, box.high, 0.5), beside_curve))
        loops.push_back(std::move(loop));
    if (radius_ > 0) loops = opened_loops(loops);
    if (loops.empty() && !cancel_.wanted()) blame_cutter();
    FittedCut fitted;
    fitted.outlines = place()(loops);
    return fitted;
  }

  Loops opened_loops(const Loops& loops) const {
    const Region whole = filled(flattened(loops, tolerance::fine_chords), cancel_);
    const double room = std::min(tolerance::cutter_room, radius_ / 8);
    return fit_arc_splines(opened(whole, radius_ + room, cancel_), tolerance::refit, radius_);
  }

  const Board& board_;
  const Layout& layout_;
  const Drawings& drawings_;
  const Cancel& cancel_;
  double radius_;
  int own_ = 0;
  Faults faults_;
};

}  // namespace

bool covers(const FittedCut& cut, Point p) {
  int turns = 0;
  for (const Loop& loop : cut.outlines) turns += winding(loop, p);
  return turns > 0;
}

double clearing_radius(const Board& board) { return narrowest_cut(board, CutterUse::pocket_clear).value_or(0) / 2; }

std::variant<std::vector<FittedCut>, Faults> fit_cuts(const Board& board, const Layout& layout,
                                                      const Drawings& drawings, const Cancel& cancel) {
  return CutFitter(board, layout, drawings, cancel).run();
}

}  // namespace sagitta
