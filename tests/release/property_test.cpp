// A released cut leads to a board without a stop: random boards with random errors, judged again by closed forms that
// share no code with findings, measured or layout.

#include <gtest/gtest.h>

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

Board board_of(const Trial& t) {
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
  board.measured.pocket_depths = {{"shell-01", t.depth + t.deeper[0]}, {"shell-02", t.depth + t.deeper[1]}};
  board.measured.thickness = {{50, 0, t.thickness + t.thinner}, {200, 0, t.thickness + t.thinner}};
  board.measured.widths = {{0, t.width + t.narrower}, {250, t.width + t.narrower}};
  for (int fret = 1; fret <= 12; ++fret)
    board.measured.slots.push_back(t.scale * (1 - std::exp2(-fret / 12.0)) + t.off[static_cast<std::size_t>(fret) - 1]);
  return board;
}

/// Whether the final board has anything that the list of stops names, by closed forms.
bool has_stop(const Trial& t) {
  const double made = t.thickness + t.thinner, half = t.dot / 2;
  if (t.blank < made - 1e-9) return true;  // the wood is not there
  const double drop = t.radius - std::sqrt(t.radius * t.radius - half * half);
  for (const double deeper : t.deeper)
    if (made - drop - (t.thickness - t.depth - deeper) < -1e-9) return true;  // the piece is sanded through at its rim
  for (int fret = 1; fret <= 12; ++fret) {
    const double left = t.scale * std::exp2(-fret / 12.0), off = t.off[static_cast<std::size_t>(fret) - 1];
    if (std::abs(1200 * std::log2(left / (left - off))) > 5 + 1e-9) return true;  // heard
  }
  // The slots are cut: their floors stay where they are under the surface that was cut before them.
  if (t.slot + t.thinner < t.tang - 1e-9) return true;
  return t.width + t.narrower < t.neck - 1e-9;
}

TEST(Release, KeepsEveryStopAway) {
  std::mt19937 chance(20240611);
  int released = 0, refused = 0, needless = 0;
  for (int i = 0; i < 500; ++i) {
    const Trial trial = random_trial(chance);
    BoardFile file;
    file.board = board_of(trial);
    const Release release = release_before(file, Operation::outline);
    const bool stop = has_stop(trial);
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

}  // namespace
}  // namespace sagitta::test
