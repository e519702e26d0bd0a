// Whole figures: pieces and pockets of random drawings against what is stated of any fit, and the time that they take.

#include <gtest/gtest.h>

#include <chrono>
#include <ctime>
#include <thread>

#include "inlay/FittedFigure.hpp"
#include "inlay/FittedShape.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/OpenClose.hpp"
#include "inlay/RandomDrawing.hpp"
#include "inlay/SampleDrawings.hpp"
#include "inlay/Stray.hpp"
#include "layout/Layout.hpp"
#include "made/WorkshopTime.hpp"
#include "polygon/HausdorffDistance.hpp"
#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

std::size_t pieces(const Loops& loops) {
  std::size_t sum = 0;
  for (const Loop& loop : loops) sum += loop.size();
  return sum;
}

/// The worst of all figures that a test looked at.
struct Worst {
  double gap = 0, neighbours = 0, corner = 0, walls = 0;
};

void expect_fits(const FittedFigure& figure, double r, double clearance, Worst& worst) {
  Region all, other_regions;
  int region = -1;
  for (const FittedFigure::Part& part : figure.parts) {
    if (part.region != region) other_regions = all;
    region = part.region;
    const Region piece = flattened(part.piece, 0.0001), pocket = flattened(part.pocket, 0.0001);
    EXPECT_LT(area(difference(piece, pocket)), 1e-6);  // inside everywhere
    const Region gap = offset(piece, clearance);
    worst.gap = std::max({worst.gap, stray(pocket, gap), stray(gap, pocket)});
    // The cutter comes into every corner.
    worst.corner = std::max(worst.corner, hausdorff_distance(pocket, opened(pocket, r - tolerance::gap)).distance);
    EXPECT_LT(area(intersection(all, piece)), 1e-6);  // no two overlap
    const OutlineIndex index(piece);
    double nearest = clearance;
    for (const Polygon& polygon : other_regions)
      for (const Point p : polygon) nearest = std::min(nearest, index.nearest(p).distance);
    worst.neighbours = std::max(worst.neighbours, clearance - nearest);
    all = union_of(all, piece);
  }
  EXPECT_LT(worst.gap, tolerance::gap);
  EXPECT_LT(worst.corner, tolerance::gap);
  EXPECT_LT(worst.neighbours, tolerance::gap);
}

TEST(Figure, HoldsOnRandomDrawings) {
  Worst worst;
  for (unsigned seed = 1; seed <= 300 && !HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const double r = 0.2 + 0.1 * (seed % 5), clearance = 0.03 + 0.01 * (seed % 4);
    const Artwork drawn = random_drawing(seed);
    const auto made = fit_figure(drawn, {1, r, clearance, 0}, {});
    if (const auto* faults = std::get_if<Faults>(&made)) {
      // Nothing may be left of a small drawing; but every alternation comes to rest within its eight rounds.
      EXPECT_NE(faults->front().message.find("leave nothing"), std::string::npos) << faults->front().message;
      continue;
    }
    expect_fits(std::get<FittedFigure>(made), r, clearance, worst);
  }
  RecordProperty("worst_gap_nm", static_cast<int>(1e6 * worst.gap));
  RecordProperty("worst_neighbours_nm", static_cast<int>(1e6 * worst.neighbours));
  RecordProperty("worst_corner_nm", static_cast<int>(1e6 * worst.corner));
}

// Two halves of a box drawn with one common side: the gap is the clearance along all of it, none of the two crosses it.
TEST(Figure, LeavesTheClearanceBetweenNeighbours) {
  const double clearance = 0.06;
  const auto made = fit_figure(drawing({{"#101010", {box({0, 0}, {5, 8})}}, {"#202020", {box({5, 0}, {9, 8})}}}),
                               {1, 0.3, clearance, 0}, {});
  const auto& figure = std::get<FittedFigure>(made);
  ASSERT_EQ(figure.parts.size(), 2u);
  const Box first = bounds(flattened(figure.parts[0].piece)), second = bounds(flattened(figure.parts[1].piece));
  EXPECT_NEAR(second.low.x - first.high.x, clearance, 1e-5);
  // Both pockets run together. Of the second box a strip is lost to the gap, and (1 - pi/4) r^2 at each corner.
  EXPECT_EQ(figure.pockets.size(), 1u);
  const RegionFigures& later = figure.figures[1];
  EXPECT_NEAR(later.lost_area, clearance * 8 + 4 * (1 - pi / 4) * 0.3 * 0.3, 32 * tolerance::refit);
  EXPECT_NEAR(later.lost_area, later.gap_area + later.void_area, 1e-9);
  EXPECT_GT(later.gap_area, clearance * (8 - 2 * 0.3));
  EXPECT_GT(later.void_area, 0);
}

// A drawing of the shape itself, put through the polygons, against the closed form that simple shapes have.
TEST(Figure, AgreesWithTheClosedFormOfSimpleShapes) {
  Board board;
  Cutter cutter;
  cutter.diameter = 0.8;
  cutter.use = {CutterUse::pocket_detail};
  board.cutters = {cutter};
  const double r = inlay_cutter_radius(board);
  ASSERT_NEAR(r, 0.4, 0.05);
  Inlay inlay;
  inlay.clearance = 0.05;
  inlay.along = 7;
  inlay.across = 4;
  inlay.across_nut = 3;
  inlay.across_heel = 5;
  const std::pair<InlayShape, PathLoop> shapes[] = {
      {InlayShape::dot, disc({0, 0}, inlay.diameter / 2)},
      {InlayShape::block, box({-3.5, -2}, {3.5, 2})},
      {InlayShape::trapezoid, polygon({{-3.5, -1.5}, {3.5, -2.5}, {3.5, 2.5}, {-3.5, 1.5}})},
      {InlayShape::diamond, polygon({{-3.5, 0}, {0, -2}, {3.5, 0}, {0, 2}})}};
  for (const auto& [shape, drawn] : shapes) {
    inlay.shape = shape;
    const Region closed = flattened(fit_shape(board, inlay, {}).pocket, 0.0001);
    const auto made = fit_figure(drawing({{"#101010", {drawn}}}), {1, r, inlay.clearance, 0}, {});
    const Region pocket = flattened(std::get<FittedFigure>(made).pockets, 0.0001);
    EXPECT_LT(stray(pocket, closed), tolerance::gap) << static_cast<int>(shape);
    EXPECT_LT(stray(closed, pocket), tolerance::gap) << static_cast<int>(shape);
  }
}

TEST(Figure, HasAtMostFourWallsForEachDrawnSegment) {
  double most = 0;
  for (const auto& [n, radius, swing] :
       {std::tuple(300, 40.0, 3.0), std::tuple(60, 25.0, 1.0), std::tuple(24, 8.0, 1.0), std::tuple(12, 4.0, 0.6)})
    for (unsigned seed = 1; seed <= 4; ++seed) {
      const auto made =
          fit_figure(drawing({{"#101010", {wave({0, 0}, n, radius, swing, seed)}}}), {1, 0.3, 0.05, 0}, {});
      const double walls = static_cast<double>(pieces(std::get<FittedFigure>(made).pockets)) / n;
      EXPECT_LE(walls, 4) << n << " curves, seed " << seed;
      most = std::max(most, walls);
    }
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const Artwork drawn = random_drawing(seed);
    const auto made = fit_figure(drawn, {1, 0.3, 0.05, 0}, {});
    if (const auto* figure = std::get_if<FittedFigure>(&made)) {
      EXPECT_LE(pieces(figure->pockets), 4 * strokes(drawn)) << "seed " << seed;
    }
  }
  RecordProperty("most_walls_per_thousand", static_cast<int>(1000 * most));
}

// No hollow of the wave is as tight as the cutter, so nothing is added to it: that its walls stray by up to two microns
// counts for nothing. A notch of a square adds two corners of (1 - pi/4) r^2.
TEST(Figure, CountsAsAddedWhatIsThickerThanItsWallsStray) {
  const double r = 0.3 + tolerance::cutter_room;
  const Artwork smooth = drawing({{"#101010", {wave({0, 0}, 60, 25, 0.05, 3)}}});
  const auto made = fit_figure(smooth, {1, 0.3, 0.05, 0}, {});
  const auto& figure = std::get<FittedFigure>(made);
  ASSERT_EQ(figure.parts.size(), 1U);
  const Region drawn = flattened(smooth.regions[0].outlines, 1, {0, 0});
  const Box box = bounds(smooth);
  Region moved = drawn;
  for (Point& p : moved[0]) p = p - between(box.low, box.high, 0.5);
  EXPECT_GT(area(difference(flattened(figure.parts[0].piece, 0.0001), moved)), 0.01) << "what the walls stray by";
  EXPECT_EQ(figure.figures[0].added_area, 0);

  const PathLoop notched = polygon({{0, 0}, {9, 0}, {9, 6}, {6, 6}, {6, 3}, {3, 3}, {3, 6}, {0, 6}});
  const auto cut = fit_figure(drawing({{"#101010", {notched}}}), {1, 0.3, 0.05, 0}, {});
  EXPECT_NEAR(std::get<FittedFigure>(cut).figures[0].added_area, 2 * (1 - pi / 4) * r * r, 0.0005);
}

/// 500 regions that touch their neighbours, or one ring.
Artwork large(int segments, bool one) {
  if (one) return drawing({{"#101010", {wave({0, 0}, segments, 40, 0.02, 1)}}});
  std::vector<std::pair<std::string, std::vector<PathLoop>>> regions;
  for (int i = 0; i < 500; ++i)
    regions.push_back(
        {"#101010", {wave({5.0 * (i % 25), 5.0 * (i / 25)}, segments / 500, 2.4, 0.2, static_cast<unsigned>(i))}});
  return drawing(std::move(regions));
}

// The bars are 1 s and 60 s of a workshop's machine with both of its cores at work.
TEST(Figure, IsQuick) {
  for (const auto& [segments, bar] : {std::pair(5000, 1.0), std::pair(50000, 60.0)})
    for (const bool one : {true, false}) {
      const Artwork drawn = large(segments, one);
      const double took = workshop_seconds(workshop_cores * bar, [&] {
        const std::clock_t since = std::clock();
        const ProgressCounter progress;
        const auto made = fit_figure(drawn, {1, 0.4, 0.05, 0.8}, {}, progress);
        const double seconds = processor_seconds(since);
        EXPECT_TRUE(std::holds_alternative<FittedFigure>(made));
        EXPECT_GT(progress.expected(), 0);
        EXPECT_EQ(progress.done(), progress.expected());
        return seconds;
      });
      EXPECT_LT(took, workshop_cores * bar) << segments << (one ? " in one outline" : " in many regions");
      RecordProperty((one ? "ms_one_" : "ms_many_") + std::to_string(segments), static_cast<int>(1000 * took));
    }
}

/// Drawings of 5,000 segments that are hard in different ways: crowded, nested, rough, wound up, dovetailed.
std::vector<std::pair<std::string, Artwork>> kinds() {
  std::vector<PathLoop> apart, nested, two[2];
  for (int i = 0; i < 100; ++i)
    apart.push_back(wave({12.0 * (i % 10), 12.0 * (i / 10)}, 50, 4.5, 0.4, static_cast<unsigned>(i)));
  for (int i = 0; i < 100; ++i)
    two[(i % 10 + i / 10) % 2].push_back(
        wave({5.0 * (i % 10), 5.0 * (i / 10)}, 50, 2.4, 0.2, static_cast<unsigned>(i)));
  for (const auto& ring : rings(25, 200, 1.5, 1.2)) nested.insert(nested.end(), ring.begin(), ring.end());
  const auto regions = [](const auto& outlines) {
    std::vector<std::pair<std::string, std::vector<PathLoop>>> all;
    for (const auto& own : outlines) {
      if constexpr (std::is_same_v<std::decay_t<decltype(own)>, PathLoop>) {
        all.push_back({"#101010", {own}});
      } else {
        all.push_back({"#101010", own});
      }
    }
    return drawing(std::move(all));
  };
  return {{"outlines_apart", drawing({{"#101010", apart}})},
          {"two_regions_dovetailed", drawing({{"#101010", two[0]}, {"#202020", two[1]}})},
          {"bands", regions(bands(3, 5000))},
          {"rough", drawing({{"#101010", {wave({0, 0}, 5000, 200, 2, 1)}}})},
          {"rings_in_one_region", drawing({{"#101010", nested}})},
          {"rings_apart", regions(rings(25, 200, 1.5, 1.2))},
          {"rings_that_touch", regions(rings(25, 200, 2, 0))},
          {"comb", drawing({{"#101010", {comb(1250, 1, 1, 10)}}})},
          {"fine_comb", drawing({{"#101010", {comb(1250, 0.9, 0.3, 10)}}})},
          {"spiral", drawing({{"#101010", {spiral(5000, 20, 1.2, 2.4)}}})}};
}

// The bar is 1 s of a workshop's machine for every kind, with both of its cores at work.
TEST(Figure, IsQuickWhateverIsDrawn) {
  for (const auto& [name, drawn] : kinds()) {
    EXPECT_NEAR(static_cast<double>(strokes(drawn)), 5000, 10) << name;
    const double took = workshop_seconds(workshop_cores, [&, &artwork = drawn, &kind = name] {
      const std::clock_t since = std::clock();
      const auto made = fit_figure(artwork, {1, 0.4, 0.05, 0.8}, {});
      const double seconds = processor_seconds(since);
      EXPECT_TRUE(std::holds_alternative<FittedFigure>(made)) << kind;
      return seconds;
    });
    EXPECT_LT(took, workshop_cores) << name;
    RecordProperty("ms_" + name, static_cast<int>(1000 * took));
  }
}

// No thread waits for anything, so what passes until the answer is the processor's time: at most 0.2 s of all threads.
TEST(Figure, AnswersACancelAtOnce) {
  double worst = 0;
  for (const bool one : {true, false}) {
    const Artwork drawn = large(50000, one);
    for (const int after : {50, 200, 600}) {
      const double took = workshop_seconds(0.2, [&] {
        Cancel cancel;
        std::clock_t asked = 0;
        std::thread other([&] {
          std::this_thread::sleep_for(std::chrono::milliseconds(after));
          asked = std::clock();
          cancel.request();
        });
        const auto made = fit_figure(drawn, {1, 0.4, 0.05, 0.8}, cancel);
        const std::clock_t answered = std::clock();
        other.join();
        const auto* figure = std::get_if<FittedFigure>(&made);
        EXPECT_TRUE(figure && figure->parts.empty());
        return static_cast<double>(answered - asked) / CLOCKS_PER_SEC;
      });
      worst = std::max(worst, took);
    }
  }
  EXPECT_LT(worst, 0.2);
  RecordProperty("worst_cancel_ms", static_cast<int>(1000 * worst));
}

// Two threads work on it: the outcome must not depend on which is first.
TEST(Figure, IsTheSameEveryTime) {
  const Artwork drawn = large(5000, false);
  const auto first = fit_figure(drawn, {1, 0.4, 0.05, 0.8}, {}), again = fit_figure(drawn, {1, 0.4, 0.05, 0.8}, {});
  const auto &a = std::get<FittedFigure>(first), &b = std::get<FittedFigure>(again);
  EXPECT_EQ(a.pockets, b.pockets);
  EXPECT_EQ(a.figures, b.figures);
  ASSERT_EQ(a.parts.size(), b.parts.size());
  for (std::size_t i = 0; i < a.parts.size(); ++i) EXPECT_EQ(a.parts[i].piece, b.parts[i].piece);
}

}  // namespace
}  // namespace sagitta
