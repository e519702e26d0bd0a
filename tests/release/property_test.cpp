// A released cut leads to a board without a stop: random boards with random errors, judged again by closed forms that
// share no code with findings, measured or layout.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "findings/GoodBoard.hpp"
#include "release/Release.hpp"

namespace sagitta::test {
namespace {

/// A board of 12 frets with dots at two of them, and what was measured on it.
struct Trial {
  double scale, thickness, radius, width, dot, depth, tang, slot, blank;
  double thinner, deeper[2], narrower, neck;  ///< errors of the surface, of two pockets, of the width; the neck's width
  std::vector<double> off;                    ///< of each slot
};

Trial random_trial(std::mt19937& chance) {
  const auto in = [&](double low, double high) { return std::uniform_real_distribution(low, high)(chance); };
  Trial t{};
  t.scale = in(600, 700), t.thickness = in(5, 7), t.radius = in(180, 420), t.width = in(50, 60);
  t.dot = in(4, 14), t.depth = in(0.4, 2), t.tang = in(1.4, 1.8), t.slot = t.tang + in(-0.02, 0.4);
  t.blank = t.thickness + in(-0.15, 1);
  t.thinner = in(-0.3, 0.1), t.narrower = in(-0.3, 0.3), t.neck = t.width + in(-0.6, 0.1);
  for (double& each : t.deeper) each = in(-0.3, 0.15);
  const double spread = in(0, 1.2);
  for (int fret = 1; fret <= 12; ++fret) t.off.push_back(in(-spread, spread));
  return t;
}

/// The cuts that take wood, in the default order of work.
constexpr std::array cuts{Operation::pockets, Operation::radius, Operation::slots, Operation::outline};

/// The same trial when only the first `made` cuts are made: the others are as planned.
Trial as_far_as(Trial t, std::size_t made) {
  if (made < 1) t.deeper[0] = t.deeper[1] = 0;
  if (made < 2) t.thinner = 0;
  if (made < 3) std::fill(t.off.begin(), t.off.end(), 0);
  if (made < 4) t.narrower = 0;
  return t;
}

/// The board, with what was measured of its first `made` cuts.
Board board_of(const Trial& t, std::size_t made) {
  Board board = good_board();
  board.scale.length = t.scale, board.scale.frets = 12;
  board.board.thickness = t.thickness;
  board.board.nut_width = board.board.heel_width = t.width;
  board.surface.radius_at_nut = t.radius;
  board.wire.tang_depth = t.tang, board.slots.depth = t.slot;
  board.inlays[0].frets = {3, 5};
  board.inlays[0].diameter = t.dot, board.inlays[0].depth = t.depth;
  board.neck.emplace();
  board.neck->nut_width = t.neck;
  board.measured.blank_thickness = t.blank;
  if (made >= 1)
    board.measured.pocket_depths = {{"shell-01", t.depth + t.deeper[0]}, {"shell-02", t.depth + t.deeper[1]}};
  if (made >= 2) board.measured.thickness = {{50, 0, t.thickness + t.thinner}, {200, 0, t.thickness + t.thinner}};
  if (made >= 4) board.measured.widths = {{0, t.width + t.narrower}, {250, t.width + t.narrower}};
  if (made >= 3)
    for (int fret = 1; fret <= 12; ++fret)
      board.measured.slots.push_back(t.scale * (1 - std::exp2(-fret / 12.0)) +
                                     t.off[static_cast<std::size_t>(fret) - 1]);
  return board;
}

/// Whether the final board has anything that the list of stops names, by closed forms, when `cut` cuts are made.
bool has_stop(const Trial& t, std::size_t cut) {
  const double made = t.thickness + t.thinner, half = t.dot / 2;
  if (t.blank < made - 1e-9) return true;  // the wood is not there
  const double drop = t.radius - std::sqrt(t.radius * t.radius - half * half);
  for (const double deeper : t.deeper)
    if (made - drop - (t.thickness - t.depth - deeper) < -1e-9) return true;  // the piece is sanded through at its rim
  for (int fret = 1; fret <= 12; ++fret) {
    const double left = t.scale * std::exp2(-fret / 12.0), off = t.off[static_cast<std::size_t>(fret) - 1];
    if (std::abs(1200 * std::log2(left / (left - off))) > 5 + 1e-9) return true;  // heard
  }
  // Slots that are cut keep their floors under the surface that was cut before them; others are cut from what there is.
  if (t.slot + (cut >= 3 ? t.thinner : 0) < t.tang - 1e-9) return true;
  return t.width + t.narrower < t.neck - 1e-9;
}

/// The cuts that are made before the next one is asked for; 4: all, and their outline is measured.
class Released : public ::testing::TestWithParam<std::size_t> {};

TEST_P(Released, CutKeepsEveryStopAway) {
  const std::size_t made = GetParam();
  std::mt19937 chance(20240611);
  int released = 0, refused = 0, needless = 0;
  for (int i = 0; i < 500; ++i) {
    const Trial trial = as_far_as(random_trial(chance), made);
    BoardFile file;
    file.board = board_of(trial, made);
    const Release release = release_before(file, cuts[std::min(made, cuts.size() - 1)]);
    const bool stop = has_stop(trial, made);
    if (release.answer == Release::Answer::refused) {
      ++refused;
      needless += !stop;
      continue;
    }
    ++released;
    EXPECT_FALSE(stop) << "board " << i;
  }
  EXPECT_GT(released, 50);
  EXPECT_GT(refused, 50);
  EXPECT_EQ(needless, 0) << "boards that were refused without a stop";
}

INSTANTIATE_TEST_SUITE_P(Cuts, Released, ::testing::Values(0, 1, 2, 3, 4));

}  // namespace
}  // namespace sagitta::test
