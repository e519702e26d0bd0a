// Slots that fit another scale, slots in a wrong place, blanks too thin, short or narrow: worked out by hand (the
// closed form stands beside each) or by scanning.

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "rescue/Rescued.hpp"

namespace sagitta::test {
namespace {

std::vector<double> places_of(const Board& board) {
  std::vector<double> places;
  for (const Slot& slot : drawn(board).layout.slots)
    places.push_back(drawn(board).layout.frets[static_cast<std::size_t>(slot.fret)].middle.x);
  return places;
}

/// Sum of squares of what the places lie off a scale from a shifted nut.
long double misfit(const std::vector<double>& slots, long double scale, long double shift) {
  long double sum = 0;
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const long double place = shift + scale * (1 - std::exp2(-static_cast<long double>(i + 1) / 12));
    sum += (slots[i] - place) * (slots[i] - place);
  }
  return sum;
}

/// The value in [low, high] where f is least, by scanning ever finer grids down to 1e-9. In long doubles, for f is flat
/// to rounding where it is least.
long double scanned(long double low, long double high, const std::function<long double(long double)>& f) {
  while (high - low > 1e-9L) {
    const long double step = (high - low) / 20;
    long double best = low;
    for (int i = 0; i <= 20; ++i)
      if (f(low + i * step) < f(best)) best = low + i * step;
    low = best - step, high = best + step;
  }
  return (low + high) / 2;
}

/// Slots of a scale from a shifted nut, each off by its own error.
Board slotted(double scale, double shift, const std::vector<double>& errors) {
  Board board = good_board();
  for (int fret = 1; fret <= board.scale.frets; ++fret) {
    const double error = errors.empty() ? 0 : errors[static_cast<std::size_t>(fret) % errors.size()];
    board.measured.slots.push_back(shift + scale * (1 - std::exp2(-fret / 12.0)) + error);
  }
  return board;
}

class ExactScale : public ::testing::TestWithParam<double> {};

TEST_P(ExactScale, MovesTheSaddle) {
  const double more = GetParam();
  const Board board = slotted(647.7 + more, 0, {});
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "other-scale");
  ASSERT_TRUE(way);
  EXPECT_EQ(ways.front().name, "other-scale");
  EXPECT_NEAR(number(*way, "scale.length"), 647.7 + more, agree);
  EXPECT_NEAR(figure(*way, "saddle-move"), more, agree);
  EXPECT_NEAR(figure(*way, "cents-after"), 0, agree);
  // The last slot: more (1 - 2^(-22/12)) too far, of 647.7 2^(-22/12) that should be left.
  const double left = 647.7 * std::exp2(-22 / 12.0), off = more * (1 - std::exp2(-22 / 12.0));
  EXPECT_NEAR(figure(*way, "cents-before"), std::abs(1200 * std::log2(left / (left - off))), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, ExactScale, ::testing::Values(0.39, -0.45, 1.2));

class ScannedScale : public ::testing::TestWithParam<std::tuple<double, double, std::vector<double>>> {};

TEST_P(ScannedScale, IsTheBestOfAll) {
  const auto& [scale, shift, errors] = GetParam();
  const Board board = slotted(scale, shift, errors);
  const std::vector<double>& slots = board.measured.slots;
  using Number = long double;
  const auto best_shift = [&](Number s) { return scanned(-2, 2, [&](Number t) { return misfit(slots, s, t); }); };
  const Number best = scanned(640, 656, [&](Number s) { return misfit(slots, s, best_shift(s)); });
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "other-scale");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "scale.length"), static_cast<double>(best), agree);
  EXPECT_NEAR(figure(*way, "shift"), static_cast<double>(best_shift(best)), agree);
  const Way* at_nut = named(ways, "other-scale-at-nut");
  if (at_nut) {
    const Number at = scanned(640, 656, [&](Number s) { return misfit(slots, s, 0); });
    EXPECT_NEAR(number(*at_nut, "scale.length"), static_cast<double>(at), agree);
  }
}

INSTANTIATE_TEST_SUITE_P(Boards, ScannedScale,
                         ::testing::Values(std::tuple(648.3, 0.12, std::vector<double>{0.01, -0.02, 0.015}),
                                           std::tuple(647.1, -0.08, std::vector<double>{-0.01, 0.02}),
                                           std::tuple(648.0, 0.0, std::vector<double>{0.03, -0.03, 0.0, 0.01})));

class StretchedFan : public ::testing::TestWithParam<double> {};

TEST_P(StretchedFan, KeepsTheRatioOfItsScales) {
  Board board = good_board();
  board.scale.length.reset();
  board.scale.bass = 660, board.scale.treble = 630;
  board.board.past_last_fret = 25;
  for (const double x : places_of(board)) board.measured.slots.push_back(x * GetParam());
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "other-scale");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "scale.bass"), 660 * GetParam(), agree);
  EXPECT_NEAR(number(*way, "scale.treble"), 630 * GetParam(), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, StretchedFan, ::testing::Values(1.0006, 0.9993, 1.0011));

class OneWrongSlot : public ::testing::TestWithParam<int> {};

// One slot 3 mm off is 3 cents and more of others' notes, not of a scale's: it is filled, or a block covers it.
TEST_P(OneWrongSlot, IsFilledOrCovered) {
  Board board = good_board();
  board.measured.slots = places_of(board);
  const auto wrong = static_cast<std::size_t>(GetParam());
  const double place = board.measured.slots[wrong];
  board.measured.slots[wrong] += 3;
  const std::vector<Way> ways = ways_of(board);
  const Way* fill = named(ways, "fill-and-cut-again");
  ASSERT_TRUE(fill);
  EXPECT_NEAR(std::get<std::vector<double>>(fill->edits.front().value)[wrong], place, agree);
  EXPECT_NEAR(figure(*fill, "slots"), 1, 0);
  const Way* cover = named(ways, "cover-with-inlay");
  ASSERT_TRUE(cover);
  const Board next = edited(board, cover->edits);
  ASSERT_EQ(next.inlays.size(), 2U);
  EXPECT_NEAR(*next.inlays[1].along, 0.58, agree);  // as wide as the slot
  const Layout& layout = drawn(next).layout;
  EXPECT_NEAR(layout.markers.back().centre.x, place + 3, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, OneWrongSlot, ::testing::Values(1, 5, 9));

struct Thin {
  double blank, thickness;
};
class ThinBlank : public ::testing::TestWithParam<Thin> {};

// By hand: the board is as thick as the blank; with the edges as high as planned, the drop at half the nut's width, h =
// 304.8 - sqrt(304.8^2 - 27.78^2), is less by what the board lost, and R = w^2/2h + h/2.
TEST_P(ThinBlank, GivesAThinnerBoard) {
  Board board = good_board();
  board.measured.blank_thickness = GetParam().blank;
  EXPECT_FALSE(std::holds_alternative<PreparedBoard>(prepare(board)));
  const std::vector<Way> ways = ways_of(board);
  const Way* thinner = named(ways, "thinner-board");
  ASSERT_TRUE(thinner);
  EXPECT_NEAR(number(*thinner, "board.thickness"), GetParam().thickness, agree);
  const double w = 27.78, planned = 304.8 - std::sqrt(304.8 * 304.8 - w * w);
  const double h = planned - (6.35 - GetParam().thickness);
  const Way* flatter = named(ways, "flatter-radius");
  ASSERT_EQ(flatter != nullptr, h > 0);
  if (flatter) {
    EXPECT_NEAR(number(*flatter, "surface.radius_at_nut"), w * w / (2 * h) + h / 2, agree);
  }
}

INSTANTIATE_TEST_SUITE_P(Boards, ThinBlank, ::testing::Values(Thin{6.2, 6.2}, Thin{5.9, 5.9}, Thin{5.0, 5.0}));

class Sanded : public ::testing::TestWithParam<double> {};

TEST_P(Sanded, LessIsLeftForSanding) {
  Board board = good_board();
  board.sanding = 0.2;
  board.measured.blank_thickness = 6.35 + GetParam();
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "less-sanding");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "finish.sanding"), GetParam(), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, Sanded, ::testing::Values(0.0, 0.1, 0.17));

class ThinWithPockets : public ::testing::TestWithParam<double> {};

// The pockets keep 1.5 mm of wood under them: of a blank of 3 mm they may take 3 - 1.5.
TEST_P(ThinWithPockets, AreAsDeepAsTheBoardAllows) {
  Board board = good_board();
  board.inlays[0].depth = 2.2;
  board.wire.tang_depth = 1, board.slots.depth = 1.2;
  board.surface.profile = Profile::flat;
  board.surface.radius_at_nut.reset();
  board.nut.seat = NutSeat::none;
  board.measured.blank_thickness = GetParam();
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "thinner-board");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "inlays[0].depth"), GetParam() - 1.5, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, ThinWithPockets, ::testing::Values(3.0, 3.3, 3.65));

double strip_length(const Board& board) {
  const Box& strip = drawn(board).layout.strip;
  return strip.high.x - strip.low.x;
}

class ShortBlank : public ::testing::TestWithParam<double> {};

TEST_P(ShortBlank, TakesTheLackFromTheEnds) {
  Board board = good_board();
  const double need = strip_length(board);
  board.blank.length = need - GetParam();
  const std::vector<Way> ways = ways_of(board);
  const Way* heel = named(ways, "shorter-heel");
  if (GetParam() < 9) {
    ASSERT_TRUE(heel);
    EXPECT_NEAR(number(*heel, "board.past_last_fret"), 10 - GetParam(), agree);
  }
  const Way* fewer = named(ways, "fewer-frets");
  ASSERT_TRUE(fewer);
  // The most frets n whose last slot, 647.7 (1 - 2^(-n/12)), lies nearer by the lack.
  int most = 21;
  const auto at = [](int n) { return 647.7 * (1 - std::exp2(-n / 12.0)); };
  while (at(22) - at(most) < GetParam()) --most;
  EXPECT_NEAR(figure(*fewer, "frets"), most, 0);
}

INSTANTIATE_TEST_SUITE_P(Boards, ShortBlank, ::testing::Values(2.5, 5.0, 14.0));

class NarrowBlank : public ::testing::TestWithParam<double> {};

TEST_P(NarrowBlank, TakesTheLackFromTheWidth) {
  Board board = good_board();
  board.blank.width = 55.56 + 6 - GetParam();  // 3 mm more on each side is cut by the radius
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "narrower-board");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "board.nut_width"), 55.56 - GetParam(), agree);
  EXPECT_NEAR(number(*way, "board.heel_width"), 55.56 - GetParam(), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, NarrowBlank, ::testing::Values(0.5, 1.2, 3.0));

struct Misplaced {
  double length, width, x, y;
};
class MisplacedBoard : public ::testing::TestWithParam<Misplaced> {};

// The strip that is cut out is put into the middle of the blank.
TEST_P(MisplacedBoard, IsMovedToTheMiddle) {
  const auto& [length, width, x, y] = GetParam();
  Board board = good_board();
  const Box strip = drawn(board).layout.strip;
  board.blank.length = length, board.blank.width = width;
  board.blank.at = {x, y};
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "move-in-blank");
  ASSERT_TRUE(way);
  const Place2 at = std::get<Place2>(way->edits.front().value);
  EXPECT_NEAR(at[0] + (strip.low.x + strip.high.x) / 2, length / 2, agree);
  EXPECT_NEAR(at[1] + (strip.low.y + strip.high.y) / 2, width / 2, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, MisplacedBoard,
                         ::testing::Values(Misplaced{600, 80, 2, 40}, Misplaced{520, 70, 60, 35},
                                           Misplaced{500, 64, 10, 20}));

struct Across {
  double length, width;
};
class BlankAcross : public ::testing::TestWithParam<Across> {};

TEST_P(BlankAcross, IsTurned) {
  Board board = good_board();
  board.blank.length = GetParam().length, board.blank.width = GetParam().width;
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "turn-blank");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "blank.length"), GetParam().width, agree);
  EXPECT_NEAR(number(*way, "blank.width"), GetParam().length, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, BlankAcross, ::testing::Values(Across{80, 600}, Across{300, 520}, Across{64, 490}));

}  // namespace
}  // namespace sagitta::test
