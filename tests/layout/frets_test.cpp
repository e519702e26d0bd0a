// The fan formula's two conditions are checked by themselves: they are its definition.

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;

/// x where the line through a and b crosses the centre line.
double crossing(Point a, Point b) { return a.x - a.y * (b.x - a.x) / (b.y - a.y); }

TEST(Frets, OctavesFallOnExactPlaces) {
  const Layout layout = sound(octaves());
  ASSERT_EQ(layout.frets.size(), 5u);
  const double x[] = {0, 200, 300, 350, 375};
  for (std::size_t n = 0; n < 5; ++n) {
    EXPECT_EQ(layout.frets[n].middle, (Point{x[n], 0}));
    EXPECT_EQ(layout.frets[n].bass, (Point{x[n], -25}));
    EXPECT_EQ(layout.frets[n].treble, (Point{x[n], 25}));
    EXPECT_EQ(layout.frets[n].bass_edge, (Point{x[n], -28}));
    EXPECT_EQ(layout.frets[n].bass_to_saddle, 400 - x[n]);
  }
  EXPECT_EQ(layout.slots.size(), 4u);
  EXPECT_EQ(layout.slots[0].fret, 1);
  EXPECT_EQ(layout.heel_end, 384);
  EXPECT_EQ(layout.nut_end, -8);
}

TEST(Frets, FanZerosOfTheCaseCatalogue) {
  // Reference values computed apart from this program, nine decimals.
  const Layout seven = sound(fan());
  EXPECT_NEAR(seven.frets[0].bass.x, -6.300313701, 5e-10);
  EXPECT_NEAR(seven.frets[0].treble.x, 6.337729070, 5e-10);
  const Layout eight = sound(steep_fan());
  EXPECT_NEAR(eight.frets[0].bass.x, -19.796401192, 5e-10);
  EXPECT_NEAR(eight.frets[0].treble.x, 20.203598808, 5e-10);
}

TEST(Frets, FanMeetsItsDefinition) {
  for (double bass : {600.0, 686.0, 720.0, 640.0})
    for (int square : {0, 3, 7, 12, 20}) {
      Board board = steep_fan();
      board.scale.bass = bass;
      board.scale.square_fret = square;
      board.board.past_last_fret = 60;
      board.board.behind_nut = 60;
      const Layout layout = sound(board);
      const FretLine& nut = layout.frets[0];
      EXPECT_NEAR(crossing(nut.bass, nut.treble), 0, 2e-13);
      EXPECT_EQ(nut.middle.x, 0);
      const FretLine& straight = layout.frets[static_cast<std::size_t>(square)];
      EXPECT_EQ(straight.bass.x, straight.treble.x);
      for (const FretLine& fret : layout.frets) {
        EXPECT_NEAR(fret.bass.x - nut.bass.x, bass * (1 - std::pow(2, -fret.fret / 12.0)), 2e-12);
        EXPECT_NEAR(fret.treble.x - nut.treble.x, 640 * (1 - std::pow(2, -fret.fret / 12.0)), 2e-12);
        EXPECT_NEAR(fret.bass.y, -layout.spread(fret.bass.x) / 2, 1e-14);
        EXPECT_NEAR(crossing(fret.bass, fret.treble), fret.middle.x, 1e-12);
        EXPECT_NEAR(crossing(fret.bass_edge, fret.treble_edge), fret.middle.x, 1e-12);
        EXPECT_NEAR(-fret.bass_edge.y, layout.half_width(fret.bass_edge.x), 1e-13);
        EXPECT_NEAR(cross(unit(fret.treble - fret.bass), unit(fret.treble_edge - fret.bass_edge)), 0, 1e-14);
      }
    }
}

TEST(Frets, EqualScalesAreTheSingleScaleExactly) {
  Board single = octaves(), twin = octaves();
  twin.scale.length.reset();
  twin.scale.bass = twin.scale.treble = 400;
  twin.scale.square_fret = 3;
  single.strings.saddle_spread = twin.strings.saddle_spread = 61;
  const Layout a = sound(single), b = sound(twin);
  EXPECT_EQ(a.frets, b.frets);
  EXPECT_EQ(a.outline, b.outline);
  EXPECT_EQ(a.slots, b.slots);
  EXPECT_EQ(a.strings, b.strings);
  EXPECT_EQ(a.half_width_slope, b.half_width_slope);
}

TEST(Frets, AnyDivisionOfTheOctaveReachesTheOctave) {
  for (int steps : {5, 12, 19, 31, 53}) {
    Scale scale;
    scale.frets = steps;
    scale.steps_per_octave = steps;
    EXPECT_DOUBLE_EQ(fret_cents(scale).back(), 1200);
    EXPECT_NEAR(fret_distance(650, fret_cents(scale).back()), 325, 1e-12);
  }
  Scale written;
  written.frets = 2;
  written.cents = {90, 204, 294};
  EXPECT_EQ(fret_cents(written), (std::vector<double>{0, 90, 204}));
}

TEST(Frets, ZeroFretHasASlotAtZero) {
  Board board = octaves();
  board.scale.zero_fret = true;
  const Layout layout = sound(board);
  ASSERT_EQ(layout.slots.size(), 5u);
  EXPECT_EQ(layout.slots[0].fret, 0);
  EXPECT_EQ(layout.slots[0].bass_end, (Point{0, -28}));
}

TEST(Strings, EqualCentresAndEqualGaps) {
  Board board = octaves();
  board.strings.saddle_spread = 60;
  const Layout centres = sound(board);
  ASSERT_EQ(centres.strings.size(), 4u);
  EXPECT_EQ(centres.strings[0], (LineSegment{{0, -25}, {400, -30}}));
  EXPECT_EQ(centres.strings[3], (LineSegment{{0, 25}, {400, 30}}));
  EXPECT_NEAR(centres.strings[1].a.y, -25.0 / 3, 1e-14);

  board.strings.spacing = StringSpacing::equal_gaps;
  board.strings.gauges = {1.4, 1.0, 0.7, 0.3};
  const Layout gaps = sound(board);
  for (bool saddle : {false, true}) {
    std::vector<double> air;
    for (std::size_t i = 1; i < 4; ++i) {
      const double y0 = saddle ? gaps.strings[i - 1].b.y : gaps.strings[i - 1].a.y;
      const double y1 = saddle ? gaps.strings[i].b.y : gaps.strings[i].a.y;
      air.push_back(y1 - y0 - (board.strings.gauges[i - 1] + board.strings.gauges[i]) / 2);
    }
    EXPECT_NEAR(air[0], air[1], 1e-13);
    EXPECT_NEAR(air[1], air[2], 1e-13);
  }
  EXPECT_EQ(gaps.strings[3].b.y, 30);
  EXPECT_EQ(gaps.strings[0].a.y, -25);
  Board one = octaves();
  one.strings.count = 1;
  EXPECT_EQ(sound(one).strings[0].a, (Point{0, 0}));
}

}  // namespace
}  // namespace sagitta
