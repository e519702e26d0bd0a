#include "inlay/FittedFigure.hpp"

#include <algorithm>

#include "inlay/Extent.hpp"
#include "inlay/Fit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/PartPocket.hpp"
#include "inlay/Refit.hpp"
#include "plane/ParallelFor.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double crumb = 1e-4;      // mm^2; what is left of a region and is smaller is no piece
constexpr double sharper = 0.002;   // mm; arcs of a refitted corner may be by so much smaller than the cutter
constexpr double clear_of = 0.001;  // mm; what cutters leave standing and is thinner counts for nothing
constexpr int judgements = 3;       // of each region
constexpr int steps = 3;            // counted for each region: fitted, refitted, judged

/// One region on its way from the drawing to pieces and pockets.
struct RegionFit {
  struct Part {
    Loops piece, pocket;
    Region piece_polygons, pocket_polygons;
    Region kept_clear;  ///< the piece grown by the clearance, where its pocket is not that
    const Region& clear() const { return kept_clear.empty() ? pocket_polygons : kept_clear; }
  };
  Region drawn;
  Box box;                   ///< of what is drawn
  std::vector<int> earlier;  ///< regions near this one
  std::vector<Part> parts;
  Region piece, pocket;  ///< all parts' together
  RegionFigures figures;
  bool settled = true;
};

class FigureFit {
 public:
  FigureFit(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel, const Tally& tally)
      : artwork_(artwork), cut_(cut), cancel_(cancel), tally_(tally), radius_(std::max(cut.radius, tolerance::snap)) {
    const Box box = bounds(artwork);
    middle_ = between(box.low, box.high, 0.5);
  }

  std::variant<FittedFigure, Faults> run() {
    const int count = static_cast<int>(artwork_.regions.size());
    tally_.expect(steps * count);
    regions_.resize(artwork_.regions.size());
    parallel_for(count, [&](int i) {
      regions_[i].drawn = filled(flattened(artwork_.regions[i].outlines, cut_.scale, middle_), cancel_);
      if (!cut_.within.empty()) regions_[i].drawn = common(regions_[i].drawn, cut_.within, cancel_);
      regions_[i].box = bounds(regions_[i].drawn);
    });
    for (const std::vector<int>& turn : turns())
      parallel_for(static_cast<int>(turn.size()), [&](int i) {
        if (!cancel_.wanted()) fit_region(turn[i]);
      });
    if (cancel_.wanted()) return FittedFigure{};
    for (int i = 0; i < count; ++i)
      if (!regions_[i].settled) return unsettled(i);
    // Of each region side by side: one alone keeps both at work.
    parallel_for(judgements * count, [&](int i) {
      if (!cancel_.wanted()) judge(regions_[i / judgements], i / judgements, i % judgements);
    });
    return gathered();
  }

 private:
  Faults unsettled(int region) const {
    return {{"",
             "the drawing's region " + std::to_string(region + 1) + " in " + artwork_.regions[region].colour +
                 " cannot be made with these cutters: rounding its corners never comes to rest",
             "name smaller pocket-detail and piece cutters, or simplify the drawing there"}};
  }

  /// The regions in turns: each comes after all earlier ones near it, and those of one turn do not ask for each other.
  std::vector<std::vector<int>> turns() {
    std::vector<std::vector<int>> found;
    std::vector<std::size_t> turn(regions_.size());
    for (int i = 0; i < static_cast<int>(regions_.size()); ++i) {
      const Box reach = regions_[i].box.grown(2 * (cut_.clearance + radius_));
      for (int k = 0; k < i; ++k) {
        if (!reach.overlaps(regions_[k].box)) continue;
        regions_[i].earlier.push_back(k);
        turn[i] = std::max(turn[i], turn[k] + 1);
      }
      if (turn[i] >= found.size()) found.emplace_back();
      found[turn[i]].push_back(i);
    }
    return found;
  }

  void fit_region(int i) {
    RegionFit& region = regions_[i];
    const Region taken = near(i);
    auto piece = fit(taken.empty() ? region.drawn : without(region.drawn, taken), radius_, cancel_);
    region.settled = piece.has_value();
    if (!piece || cancel_.wanted()) return;
    // Filling inner corners may have come near an earlier piece again.
    if (!taken.empty() && !common(*piece, taken).empty()) piece = opened(without(*piece, taken), radius_, cancel_);
    tally_.count();
    for (const Region& polygons : parts(*piece)) {
      if (area(polygons) <= crumb) continue;
      if (cancel_.wanted()) return;
      RegionFit::Part part;
      part.piece = refitted(polygons, refit_tolerance, radius_ - sharper);
      part.piece_polygons = flattened(part.piece, fine_chords);
      PartPocket pocket = part_pocket(part.piece, cut_.clearance, radius_ - sharper, cancel_);
      if (!pocket.parallel) part.kept_clear = grown(part.piece_polygons, cut_.clearance, cancel_);
      part.pocket = std::move(pocket.outlines);
      part.pocket_polygons = std::move(pocket.polygons);
      region.piece.insert(region.piece.end(), part.piece_polygons.begin(), part.piece_polygons.end());
      region.pocket.insert(region.pocket.end(), part.pocket_polygons.begin(), part.pocket_polygons.end());
      region.parts.push_back(std::move(part));
    }
    tally_.count();
  }

  /// What lies within the clearance of earlier pieces near a region.
  Region near(int i) const {
    Extent own(regions_[i].drawn);
    Region taken;
    for (const int k : regions_[i].earlier)
      for (const RegionFit::Part& part : regions_[k].parts) {
        if (own.may_meet(Extent(part.clear()), radius_))
          taken.insert(taken.end(), part.clear().begin(), part.clear().end());
      }
    return taken;
  }

  void judge(RegionFit& region, int own, int judgement) {
    if (judgement == 0) {
      judge_clearing(region);
    } else if (judgement == 1) {
      judge_lost(region, own);
      tally_.count();
    } else {
      judge_necks(region);
    }
  }

  void judge_lost(RegionFit& region, int own) {
    RegionFigures& figures = region.figures;
    figures.region = own;
    figures.colour = artwork_.regions[own].colour;
    figures.drawn_area = area(region.drawn);
    figures.lost = without(region.drawn, region.piece, cancel_);
    figures.lost_area = area(figures.lost);
    figures.void_area = area(without(figures.lost, pockets_at(region.drawn), cancel_));
    figures.gap_area = figures.lost_area - figures.void_area;
    if (region.piece.empty() || cancel_.wanted()) return;
    const Departure most = departure(region.drawn, region.piece, figures.lost);
    figures.departure = most.distance;
    figures.departure_at = most.at;
  }

  static void judge_necks(RegionFit& region) {
    if (region.piece.empty()) return;
    RegionFigures& figures = region.figures;
    if (const Narrowest narrow = narrowest(thinned(region.piece, flattening), true, widest_neck);
        narrow.width <= widest_neck)
      figures.piece_neck = narrow.width, figures.piece_neck_at = narrow.p;
    if (const Narrowest narrow = narrowest(thinned(region.pocket, flattening), true, widest_neck);
        narrow.width <= widest_neck)
      figures.pocket_neck = narrow.width, figures.pocket_neck_at = narrow.p;
    figures.smallest_piece = 1e300;
    for (const RegionFit::Part& part : region.parts)
      figures.smallest_piece = std::min(figures.smallest_piece, area(part.piece_polygons));
  }

  Region pockets_at(const Region& drawn) const {
    Extent own(drawn);
    Region found;
    for (const RegionFit& region : regions_) {
      if (!own.box().overlaps(region.box, 2 * cut_.clearance)) continue;
      for (const RegionFit::Part& part : region.parts)
        if (own.may_meet(Extent(part.pocket_polygons), 0))
          found.insert(found.end(), part.pocket_polygons.begin(), part.pocket_polygons.end());
    }
    return found;
  }

  void judge_clearing(RegionFit& region) const {
    if (cancel_.wanted()) return;
    const double whole = area(region.pocket);
    Region left = region.pocket;
    if (cut_.clearing_radius > 0) {
      // Outlines that run along each other a hair apart cross at every point: one is moved clear of the other.
      const Region middles = grown(region.pocket, -cut_.clearing_radius, cancel_);
      left = without(region.pocket, grown(middles, cut_.clearing_radius + clear_of, cancel_), cancel_);
    }
    region.figures.detail_area = area(left);
    region.figures.cleared_area = whole - region.figures.detail_area;
    if (cut_.clearing_radius <= 0) return;
    double most = 0;
    for (const Region& part : parts(left)) {
      if (area(part) <= most) continue;
      most = area(part);
      const Box box = bounds(part);
      region.figures.detail_at = between(box.low, box.high, 0.5);
    }
  }

  std::variant<FittedFigure, Faults> gathered() {
    FittedFigure figure;
    if (cancel_.wanted()) return figure;
    std::vector<PartPocket> pockets;
    for (const RegionFit& region : regions_)
      for (const RegionFit::Part& part : region.parts)  // not refitted twice
        pockets.push_back({part.pocket, part.clear()});
    figure.pockets = run_together(pockets, radius_ - sharper, cancel_);
    for (RegionFit& region : regions_) {
      for (RegionFit::Part& part : region.parts)
        figure.parts.push_back({region.figures.region, std::move(part.piece), std::move(part.pocket)});
      figure.figures.push_back(std::move(region.figures));
    }
    if (cancel_.wanted()) return FittedFigure{};
    if (figure.parts.empty())
      return Faults{{"", "the cutters named leave nothing of this drawing",
                     "name smaller pocket-detail and piece cutters, or make the artwork larger"}};
    return figure;
  }

  const Artwork& artwork_;
  const FigureCut& cut_;
  const Cancel& cancel_;
  const Tally& tally_;
  double radius_;
  Point middle_;
  std::vector<RegionFit> regions_;
};

}  // namespace

std::variant<FittedFigure, Faults> fit_figure(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel,
                                              const Tally& tally) {
  return FigureFit(artwork, cut, cancel, tally).run();
}

}  // namespace sagitta
