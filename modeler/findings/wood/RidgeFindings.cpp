#include <algorithm>

#include "layout/Taper.hpp"
#include "rules/Work.hpp"
#include "wood/Scallop.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

/// The stepover that the ridges are stated for, unless the cutter is smaller. mm.
constexpr double usual_step = 0.5;

}  // namespace

void judge_ridges(const Subject& subject, Judge& judge) {
  const Rule& ridges = rule("radius-ridges");
  const double wanted = judge.limit(ridges), edge = taper_in(subject.prepared.layout()).larger_edge(0);
  const Surface& surface = subject.prepared.surface();
  for (const Cutter& cutter : subject.prepared.board().cutters) {
    if (!has_use(cutter, CutterUse::radius)) continue;
    const bool ball = cutter.shape == CutterShape::ball;
    if (surface.flat && !ball) continue;
    const double radius = surface.radius(0), step = std::min(usual_step, cutter.diameter / 2);
    const double tip = surface.flat ? cutter.diameter / 2 : ball_on_crown(cutter.diameter / 2, radius);
    const double left = ball ? ball_ridge(tip, step) : flat_stair(radius, edge, step);
    const double enough = ball ? ball_step(tip, wanted) : flat_step(radius, edge, wanted);
    const Point at{0, ball ? 0 : edge};
    judge.hold(ridges, left, {at, surface.height(at), {FeatureId::Kind::playing_surface}, "the playing surface"},
               "passes along the board, " + judge.shown(step) + " apart, with " + (ball ? "ball" : "flat") +
                   " cutter \"" + cutter.name + "\" leave " + (ball ? "cusps" : "facets at the edge") + " of " +
                   judge.shown(left) + " to sand away",
               "a stepover of " + judge.shown(enough) + " leaves " + judge.shown(wanted) +
                   (ball ? ", or a larger ball" : ", or a ball cutter"));
  }
}

}  // namespace sagitta
