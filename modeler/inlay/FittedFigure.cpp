#include "inlay/FittedFigure.hpp"

#include <algorithm>

#include "inlay/Fit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/Refit.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double crumb = 1e-4;  // mm^2; what is left of a region and is smaller is no piece

Region without_crumbs(const Region& region) {
  Region kept;
  for (const Region& part : parts(region))
    if (area(part) > crumb) kept.insert(kept.end(), part.begin(), part.end());
  return kept;
}

/// Skins of wood thinner than two snaps do not stand: the plan could not carry them.
Region without_skins(const Region& pocket) {
  return grown(grown(pocket, tolerance::snap), -tolerance::snap);
}

class FigureFit {
 public:
  FigureFit(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel)
      : artwork_(artwork), cut_(cut), cancel_(cancel), radius_(std::max(cut.radius, tolerance::snap)) {
    const Box box = bounds(artwork);
    middle_ = between(box.low, box.high, 0.5);
  }

  std::variant<FittedFigure, Faults> run() {
    for (int i = 0; i < static_cast<int>(artwork_.regions.size()); ++i) {
      drawn_.push_back(filled(flattened(artwork_.regions[i].outlines, cut_.scale, middle_)));
      if (!fit_region(i)) return cancel_.wanted() ? std::variant<FittedFigure, Faults>(FittedFigure{}) : unsettled(i);
    }
    Region all;
    for (const Region& pocket : pockets_) all = united(all, pocket);
    all = without_skins(all);
    for (int i = 0; i < static_cast<int>(drawn_.size()) && !cancel_.wanted(); ++i) judge(i, all);
    figure_.pockets = refitted(all);
    if (figure_.parts.empty() && !cancel_.wanted())
      return Faults{{"", "the cutters named leave nothing of this drawing",
                     "name smaller pocket-detail and piece cutters, or make the artwork larger"}};
    return std::move(figure_);
  }

 private:
  Faults unsettled(int region) const {
    return {{"", "the drawing's region " + std::to_string(region + 1) + " in " + artwork_.regions[region].colour +
                     " cannot be made with these cutters: rounding its corners never comes to rest",
             "name smaller pocket-detail and piece cutters, or simplify the drawing there"}};
  }

  bool fit_region(int i) {
    const Region taken = near(drawn_[i]);
    auto piece = fit(taken.empty() ? drawn_[i] : without(drawn_[i], taken), radius_, cancel_);
    if (!piece) return false;
    // Filling inner corners may have come near an earlier piece again.
    if (!taken.empty() && !common(*piece, taken).empty()) piece = opened(without(*piece, taken), radius_);
    Region whole = without_crumbs(*piece);
    pockets_.push_back(without_skins(grown(whole, cut_.clearance)));
    for (const Region& part : parts(whole))
      figure_.parts.push_back({i, refitted(part), refitted(without_skins(grown(part, cut_.clearance)))});
    pieces_.push_back(std::move(whole));
    return true;
  }

  /// What lies within the clearance of earlier pieces near a region.
  Region near(const Region& region) const {
    const Box box = bounds(region).grown(cut_.clearance);
    Region taken;
    for (const Region& piece : pieces_)
      if (!piece.empty() && bounds(piece).overlaps(box)) taken = united(taken, grown(piece, cut_.clearance));
    return taken;
  }

  void judge(int i, const Region& all) {
    RegionFigures figures;
    const Region &drawn = drawn_[i], &piece = pieces_[i], &pocket = pockets_[i];
    figures.region = i;
    figures.colour = artwork_.regions[i].colour;
    figures.drawn_area = area(drawn);
    figures.lost = without(drawn, piece);
    figures.lost_area = area(figures.lost);
    figures.void_area = area(without(figures.lost, all));
    figures.gap_area = figures.lost_area - figures.void_area;
    if (!piece.empty()) {
      const Departure most = departure(drawn, piece);
      figures.departure = most.distance;
      figures.departure_at = most.at;
      if (const Narrowest narrow = narrowest(piece, true, widest_neck); narrow.width <= widest_neck)
        figures.piece_neck = narrow.width, figures.piece_neck_at = narrow.p;
      if (const Narrowest narrow = narrowest(pocket, true, widest_neck); narrow.width <= widest_neck)
        figures.pocket_neck = narrow.width, figures.pocket_neck_at = narrow.p;
      figures.smallest_piece = 1e300;
      for (const Region& part : parts(piece)) figures.smallest_piece = std::min(figures.smallest_piece, area(part));
    }
    judge_clearing(pocket, figures);
    figure_.figures.push_back(std::move(figures));
  }

  void judge_clearing(const Region& pocket, RegionFigures& figures) const {
    const Region reached = opened(pocket, cut_.clearing_radius);
    const Region left = without(pocket, reached);
    figures.cleared_area = cut_.clearing_radius > 0 ? area(reached) : 0;
    figures.detail_area = area(pocket) - figures.cleared_area;
    double most = 0;
    for (const Region& part : parts(left)) {
      if (area(part) <= most) continue;
      most = area(part);
      const Box box = bounds(part);
      figures.detail_at = between(box.low, box.high, 0.5);
    }
  }

  const Artwork& artwork_;
  const FigureCut& cut_;
  const Cancel& cancel_;
  double radius_;
  Point middle_;
  std::vector<Region> drawn_, pieces_, pockets_;  ///< one a region
  FittedFigure figure_;
};

}  // namespace

std::variant<FittedFigure, Faults> fit_figure(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel) {
  return FigureFit(artwork, cut, cancel).run();
}

}  // namespace sagitta
