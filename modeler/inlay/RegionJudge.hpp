#pragma once

/// What the cutters make of each drawn region, in figures.

#include "inlay/Inlays.hpp"
#include "inlay/Island.hpp"

namespace sagitta {

/// Judgements of each region; none asks for another, and no two write the same figures.
inline constexpr int judgements = 4;

class RegionJudge {
 public:
  /// `drawn` holds each region's polygons; all islands must have been fitted. All must outlive this.
  RegionJudge(const std::vector<Region>& drawn, const std::vector<Island>& islands, const IslandCut& cut,
              double clearing_radius, const Cancel& cancel);
  /// Writes what one judgement (0 .. judgements - 1) says of a region into its figures.
  void judge(int region, int judgement, RegionFigures& figures) const;

 private:
  /// A region's pieces and pockets, each run together.
  struct Made {
    Region piece, pocket;
    double smallest = 0;
    Box box;
  };

  void judge_clearing(const Made& made, RegionFigures& figures) const;
  void judge_areas(int region, RegionFigures& figures) const;
  void judge_added(const Region& added, RegionFigures& figures) const;
  void judge_necks(const Made& made, RegionFigures& figures) const;
  void judge_gaps(int region, RegionFigures& figures) const;
  /// The pieces of all other regions, or all regions' pockets, near a region.
  Region near(int region, bool pockets) const;

  const std::vector<Region>& drawn_;
  const std::vector<Island>& islands_;
  IslandCut cut_;
  double clearing_radius_;
  const Cancel& cancel_;
  std::vector<Made> made_;
};

}  // namespace sagitta
