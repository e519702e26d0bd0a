#include "inlay/FittedFigure.hpp"

#include <algorithm>

#include "inlay/Flatten.hpp"
#include "inlay/Island.hpp"
#include "inlay/Meetings.hpp"
#include "inlay/PartPocket.hpp"
#include "inlay/RegionJudge.hpp"
#include "plane/ParallelFor.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

class FigureFit {
 public:
  FigureFit(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel, const ProgressCounter& progress)
      : artwork_(artwork),
        cut_(cut),
        own_{std::max(cut.radius, tolerance::snap), cut.clearance},
        cancel_(cancel),
        progress_(progress) {
    const Box box = bounds(artwork);
    middle_ = between(box.low, box.high, 0.5);
  }

  std::variant<FittedFigure, Faults> run() {
    const int count = static_cast<int>(artwork_.regions.size());
    progress_.expect(count);
    drawn_.resize(artwork_.regions.size());
    parallel_for(count, [&](int i) {
      drawn_[i] = filled(flattened(artwork_.regions[i].outlines, cut_.scale, middle_), cancel_);
      if (!cut_.within.empty()) drawn_[i] = intersection(drawn_[i], cut_.within, cancel_);
    });
    islands_ = islands_of(drawn_, own_);
    progress_.expect(static_cast<int>(islands_.size()));
    for (const std::vector<int>& turn : turns_of(islands_))
      parallel_for(static_cast<int>(turn.size()), [&](int i) {
        if (!cancel_.wanted()) fit_island(islands_, turn[i], own_, cancel_);
        progress_.count();
      });
    if (cancel_.wanted()) return FittedFigure{};
    const std::vector<RegionFigures> figures = judged();
    return gathered(figures);
  }

 private:
  std::vector<RegionFigures> judged() const {
    const int count = static_cast<int>(drawn_.size());
    std::vector<RegionFigures> figures(drawn_.size());
    for (int i = 0; i < count; ++i) {
      figures[i].region = i;
      figures[i].colour = artwork_.regions[i].colour;
    }
    const RegionJudge judge(drawn_, islands_, own_, cut_.clearing_radius, cancel_);
    // Of each region side by side: one alone keeps both at work.
    parallel_for(judgements * count, [&](int i) {
      const int judgement = i % judgements;
      judge.judge(i / judgements, judgement, figures[i / judgements]);
      if (judgement == judgements - 1) progress_.count();
    });
    return figures;
  }

  std::variant<FittedFigure, Faults> gathered(const std::vector<RegionFigures>& figures) {
    if (cancel_.wanted()) return FittedFigure{};
    FittedFigure figure;
    figure.figures = figures;
    figure.meetings = meetings_of(islands_, own_);
    figure.pockets = run_together(islands_, figure.meetings, own_, cancel_);
    for (Island& island : islands_)
      for (IslandPart& part : island.parts)
        figure.parts.push_back({island.region, std::move(part.piece), std::move(part.pocket)});
    if (cancel_.wanted()) return FittedFigure{};
    if (figure.parts.empty())
      return Faults{{FaultCode::drawing_empty, "", "the cutters named leave nothing of this drawing",
                     "name smaller pocket-detail and piece cutters, or make the artwork larger"}};
    return figure;
  }

  const Artwork& artwork_;
  const FigureCut& cut_;
  IslandCut own_;
  const Cancel& cancel_;
  const ProgressCounter& progress_;
  Point middle_;
  std::vector<Region> drawn_;  ///< each region's polygons
  std::vector<Island> islands_;
};

}  // namespace

std::variant<FittedFigure, Faults> fit_figure(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel,
                                              const ProgressCounter& progress) {
  return FigureFit(artwork, cut, cancel, progress).run();
}

}  // namespace sagitta
