// The playing surface against its own implicit form, straightness along strings, and school geometry.

#include "surface/Surface.hpp"

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;

Surface surface_for(const Board& board) { return surface_of(board, sound(board)); }

Board with(Profile profile) {
  Board board = octaves();
  board.surface.profile = profile;
  board.strings.nut_spread = 40;
  board.strings.saddle_spread = 60;
  if (profile == Profile::compound) board.surface.radius_at_heel = 360;
  if (profile == Profile::flat) board.surface.radius_at_nut.reset();
  return board;
}

TEST(Surface, FlatHasNoDrop) {
  const Surface surface = surface_for(with(Profile::flat));
  EXPECT_TRUE(surface.flat);
  EXPECT_EQ(surface.height(100, 27), 6.5);
  EXPECT_TRUE(surface.exists(100, 1000));
}

TEST(Surface, CompoundIsLinearToTheHeelOrTheLastFret) {
  Board board = with(Profile::compound);
  Surface surface = surface_for(board);
  EXPECT_EQ(surface.radius(0), 240);
  EXPECT_DOUBLE_EQ(surface.radius(384), 360);
  EXPECT_DOUBLE_EQ(surface.radius(192), 300);
  board.surface.heel_at = HeelAt::last_fret;
  surface = surface_for(board);
  EXPECT_DOUBLE_EQ(surface.radius(375), 360);
  EXPECT_DOUBLE_EQ(surface.radius(-8), 240 - 120 * 8 / 375.0);
}

TEST(Surface, SatisfiesTheImplicitForm) {
  // y^2 + D^2 - 2 R D = 0 (a circle of radius R that touches the centre line), residual against R^2.
  for (Profile profile : {Profile::single, Profile::compound, Profile::string_line, Profile::even_edge}) {
    const Surface surface = surface_for(with(profile));
    for (double x = -8; x <= 384; x += 7)
      for (double y = -32; y <= 32; y += 0.5) {
        const double r = surface.radius(x), d = surface.drop(x, y);
        EXPECT_LE(std::abs(y * y + d * d - 2 * r * d), 9e-16 * r * r);
        EXPECT_EQ(surface.drop(x, -y), d);
      }
  }
}

TEST(Surface, StringLineIsStraightUnderEveryString) {
  Board board = with(Profile::string_line);
  board.strings.count = 6;
  const Layout layout = sound(board);
  const Surface surface = surface_of(board, layout);
  for (const LineSegment& string : layout.strings) {
    const double z0 = surface.height(string.a), z1 = surface.height(string.b);
    for (int i = 1; i < 40; ++i) {
      const double s = i / 40.0;
      EXPECT_NEAR(surface.height(between(string.a, string.b, s)), z0 + s * (z1 - z0), 1e-12);
    }
  }
  EXPECT_DOUBLE_EQ(surface.radius(400) / surface.radius(0), 60.0 / 40);
}

TEST(Surface, EvenEdgeKeepsTheEdgesHeight) {
  const Board board = with(Profile::even_edge);
  const Layout layout = sound(board);
  const Surface surface = surface_of(board, layout);
  const double edge = surface.height(0, layout.half_width(0));
  for (double x = -8; x <= 384; x += 4) EXPECT_NEAR(surface.height(x, layout.half_width(x)), edge, 1e-12);
  EXPECT_EQ(surface.radius(0), 240);
  EXPECT_GT(surface.r2, 0);
  const double h = 6.5 - edge, w = 2 * layout.half_width(384);
  EXPECT_NEAR(surface.radius(384), w * w / (8 * h) + h / 2, 1e-10);
}

TEST(Surface, FallsBeyondItsLineOnly) {
  Board board = with(Profile::compound);
  const Surface level = surface_for(board);
  board.surface.fall_from_fret = 2;
  board.surface.fall = 0.5;
  const Surface fallen = surface_for(board);
  EXPECT_EQ(fallen.crown(300), 6.5);
  EXPECT_DOUBLE_EQ(fallen.crown(384), 6);
  EXPECT_DOUBLE_EQ(fallen.crown(300.5), 6.5 - 0.5 * 0.5 / 84);  // it falls from the fret's line on, at once
  EXPECT_NEAR(fallen.height(342, 20), level.height(342, 20) - 0.25, 1e-14);
  EXPECT_EQ(fallen.height(250, 20), level.height(250, 20));
  EXPECT_EQ(fallen.radius(350), level.radius(350));
}

TEST(Surface, NearlyFlatLosesNoDigits) {
  Surface surface;
  surface.r0 = 1e8;
  // y^2/2R (1 + y^2/4R^2): the second term is 2e-14 of the first here.
  EXPECT_NEAR(surface.drop(0, 28) / (28.0 * 28 / 2e8), 1, 1e-13);
}

}  // namespace
}  // namespace sagitta
