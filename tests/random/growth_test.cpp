// Four times the pieces take about four times as long. A quadratic step anywhere would take sixteen times as long.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <ctime>
#include <filesystem>

#include "board/BoardFile.hpp"
#include "findings/Findings.hpp"
#include "inlay/Inlays.hpp"
#include "made/Growing.hpp"
#include "plan/Plan.hpp"
#include "rules/Finding.hpp"

namespace sagitta::test {
namespace {

/// The processor's seconds, which other programs at work change less than the clock's.
double processor_seconds() {
  timespec now{};
  ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

struct Cost {
  double check = 1e300, plan = 1e300;
};

/// The least of two.
Cost cost_of(int dots) {
  const std::string folder = testing::TempDir() + "sagitta-growth-" + std::to_string(dots);
  Board board = read_board(write_growing(Growing::dots, dots, folder)).board;
  board.limits["inlays-close"] = -10;  // where pieces crowd there is more to tell of each
  std::filesystem::remove_all(folder);
  Cost least;
  for (int i = 0; i < 2; ++i) {
    double begun = processor_seconds();
    const PreparedBoard ready = std::get<PreparedBoard>(prepare(board));
    EXPECT_EQ(ready.pieces().size(), static_cast<std::size_t>(dots));
    findings_of(ready);
    least.check = std::min(least.check, processor_seconds() - begun);
    begun = processor_seconds();
    ready.planned(Stage::board);
    least.plan = std::min(least.plan, processor_seconds() - begun);
  }
  return least;
}

TEST(Growth, OfTimeIsThatOfThePieces) {
  constexpr int few = 1056, times = 4;
  constexpr double noise = 1.4;  // of a busy machine
  const double most = noise * std::pow(times, 1.2);
  const Cost one = cost_of(few), four = cost_of(times * few);
  EXPECT_LT(four.check, most * one.check) << one.check << " s, " << four.check << " s";
  EXPECT_LT(four.plan, most * one.plan) << one.plan << " s, " << four.plan << " s";
  std::printf("%d and %d pieces: check %.3f and %.3f s, plan %.3f and %.3f s\n", few, times * few, one.check,
              four.check, one.plan, four.plan);
}

}  // namespace
}  // namespace sagitta::test
