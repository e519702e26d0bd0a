#include "inlay/RegionJudge.hpp"

#include <algorithm>

#include "inlay/DrawnGap.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/NarrowPlaces.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/OpenClose.hpp"
#include "polygon/Extent.hpp"
#include "polygon/HausdorffDistance.hpp"

namespace sagitta {
namespace {

constexpr double clear_of = 0.0003;  // mm; what cutters leave standing and is thinner counts for nothing

void append(const Region& more, Region& all) { all.insert(all.end(), more.begin(), more.end()); }

/// The middle of the largest part.
Point place_of(const Region& region) {
  double most = 0;
  Point place;
  for (const Region& part : parts(region)) {
    const double own = area(part);
    if (own <= most) continue;
    most = own;
    const Box box = bounds(part);
    place = between(box.low, box.high, 0.5);
  }
  return place;
}

}  // namespace

RegionJudge::RegionJudge(const std::vector<Region>& drawn, const std::vector<Island>& islands, const IslandCut& cut,
                         double clearing_radius, const Cancel& cancel)
    : drawn_(drawn),
      islands_(islands),
      cut_(cut),
      clearing_radius_(clearing_radius),
      cancel_(cancel),
      made_(drawn.size()) {
  for (const Island& island : islands) {
    Made& made = made_[static_cast<std::size_t>(island.region)];
    made.box.add(island.box.low);
    made.box.add(island.box.high);
    for (const IslandPart& part : island.parts) {
      append(part.piece_polygons, made.piece);
      append(part.pocket_polygons, made.pocket);
      const double own = area(part.piece_polygons);
      made.smallest = made.smallest == 0 ? own : std::min(made.smallest, own);
    }
  }
  for (Made& made : made_) made.pocket = filled(made.pocket, cancel);
}

void RegionJudge::judge(int region, int judgement, RegionFigures& figures) const {
  if (cancel_.wanted()) return;
  const Made& made = made_[static_cast<std::size_t>(region)];
  if (judgement == 0) {
    judge_clearing(made, figures);
  } else if (judgement == 1) {
    judge_areas(region, figures);
  } else if (judgement == 2) {
    judge_necks(made, figures);
  } else {
    judge_gaps(region, figures);
  }
}

void RegionJudge::judge_clearing(const Made& made, RegionFigures& figures) const {
  const double whole = area(made.pocket);
  Region left = made.pocket;
  if (clearing_radius_ > 0) {
    // Outlines that run along each other within tolerance cross at every point, so one is moved away from the other.
    const Region middles = offset(made.pocket, -clearing_radius_, cancel_);
    left = difference(made.pocket, offset(middles, clearing_radius_ + clear_of, cancel_), cancel_);
  }
  figures.detail_area = area(left);
  figures.cleared_area = whole - figures.detail_area;
  if (clearing_radius_ > 0) figures.detail_at = place_of(left);
}

Region RegionJudge::near(int region, bool pockets) const {
  const double reach = 2 * cut_.clearance;
  const Box box = made_[static_cast<std::size_t>(region)].box;
  Extent extent(drawn_[static_cast<std::size_t>(region)]);
  Region found;
  for (int i = 0; i < static_cast<int>(made_.size()); ++i) {
    const Made& made = made_[static_cast<std::size_t>(i)];
    if (!made.box.overlaps(box, reach) || (!pockets && i == region)) continue;
    const Region& other = pockets ? made.pocket : made.piece;
    if (i == region || extent.may_meet(Extent(other), reach)) append(other, found);
  }
  return found;
}

void RegionJudge::judge_areas(int region, RegionFigures& figures) const {
  const Region& drawn = drawn_[static_cast<std::size_t>(region)];
  const Made& made = made_[static_cast<std::size_t>(region)];
  figures.drawn_area = area(drawn);
  figures.lost = difference(drawn, made.piece, cancel_);
  figures.lost_area = area(figures.lost);
  figures.lost_at = place_of(figures.lost);
  figures.void_area = area(difference(figures.lost, near(region, true), cancel_));
  figures.covered_area = area(intersection(figures.lost, near(region, false), cancel_));
  figures.gap_area = std::max(0.0, figures.lost_area - figures.void_area - figures.covered_area);
  const Region added = difference(made.piece, drawn, cancel_);
  judge_added(added, figures);
  if (made.piece.empty() || cancel_.wanted()) return;
  const HausdorffDistance most = hausdorff_distance(drawn, made.piece, figures.lost, added);
  figures.departure = most.distance;
  figures.departure_at = most.at;
}

void RegionJudge::judge_added(const Region& added, RegionFigures& figures) const {
  // A piece may stray so far from what the cutters make of its drawing all along its walls: that is no area added.
  double most = 0;
  for (const Region& place : true_parts(added, tolerance::fitted)) {
    const double own = area(place);
    figures.added_area += own;
    if (own <= most) continue;
    const Box box = bounds(place);
    most = own;
    figures.added_at = between(box.low, box.high, 0.5);
  }
}

void RegionJudge::judge_necks(const Made& made, RegionFigures& figures) const {
  if (made.piece.empty()) return;
  if (const Narrowest narrow = narrowest(thinned(made.piece, tolerance::flattening), true, widest_neck);
      narrow.width <= widest_neck)
    figures.piece_neck = narrow.width, figures.piece_neck_at = narrow.p;
  if (const Narrowest narrow = narrowest(thinned(made.pocket, tolerance::flattening), true, widest_neck);
      narrow.width <= widest_neck)
    figures.pocket_neck = narrow.width, figures.pocket_neck_at = narrow.p;
  figures.smallest_piece = made.smallest;
}

void RegionJudge::judge_gaps(int region, RegionFigures& figures) const {
  for (const Island& island : islands_) {
    if (island.region != region) continue;
    const double cut = 2 * cut_.radius;
    if (const Narrowest gap = drawn_gap(island.drawn, cut); gap.width < figures.drawn_gap.value_or(cut)) {
      figures.drawn_gap = gap.width;
      figures.drawn_gap_at = gap.p;
    }
    if (!island.narrow) continue;
    for (const IslandPart& part : island.parts)
      if (const Narrowest gap = drawn_gap(part.piece_polygons, cut); gap.width < figures.left_gap.value_or(cut)) {
        figures.left_gap = gap.width;
        figures.left_gap_at = *island.narrow;
      }
  }
}

}  // namespace sagitta
