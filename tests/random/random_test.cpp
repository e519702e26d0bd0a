// Random boards: plan and lift against quadrature and 3D booleans, solids and meshes sound, at every stage. Numbers of
// boards come from the environment: SAGITTA_RANDOM_BOARDS (core boards with both oracles), SAGITTA_WHOLE_BOARDS (the
// whole space with both), SAGITTA_MANY_BOARDS (the whole space without booleans), SAGITTA_FIRST_BOARD (the first
// number). With SAGITTA_REGRESSIONS=FOLDER every board that fails is made as small as it goes and kept there.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "board/Writer.hpp"
#include "random/Dice.hpp"
#include "random/RandomBoard.hpp"
#include "random/Shrink.hpp"
#include "random/Tally.hpp"
#include "random/Trial.hpp"

namespace sagitta::random_boards {
namespace {

int number_from(const char* variable, int otherwise) {
  const char* text = std::getenv(variable);
  return text ? std::atoi(text) : otherwise;
}

/// A board may take this long for plan, lift, solid and mesh of a stage, s.
constexpr double patience = 5;

std::string failure(const Board& board, Asked asked) {
  const Verdict verdict = tried(board, asked);
  if (const std::string wrong = verdict.trouble + verdict.unconfirmed; !wrong.empty()) return wrong;
  return verdict.seconds > patience ? "too slow: " + std::to_string(verdict.seconds) + " s\n" : "";
}

void report(std::uint64_t number, const Sample& sample, Asked asked, const std::string& trouble) {
  Board small = sample.board;
  if (std::getenv("SAGITTA_REGRESSIONS")) {
    asked.booleans = false;
    small = shrink(sample.board, [&](const Board& board) { return !failure(board, asked).empty(); });
    keep(small, "random-" + std::to_string(number));
  }
  ADD_FAILURE() << "board " << number << "\n" << trouble << write_board(small);
}

void run(Space space, int boards, Asked asked) {
  const auto first = static_cast<std::uint64_t>(number_from("SAGITTA_FIRST_BOARD", 1));
  Tally tally;
  for (std::uint64_t number = first; number < first + static_cast<std::uint64_t>(boards); ++number) {
    const Sample sample = random_board(number, space);
    const Verdict verdict = tried(sample.board, asked);
    tally.add(sample, verdict);
    const std::string wrong = verdict.trouble + verdict.unconfirmed;
    if (!wrong.empty()) report(number, sample, asked, wrong);
    if (verdict.seconds > patience) report(number, sample, asked, "too slow");
    if (verdict.overruled > 0) std::cout << "booleans overruled, board " << number << ": " << verdict.overruled_why;
  }
  tally.print(std::cout);
}

TEST(RandomBoards, AreTheSameForEver) {
  EXPECT_EQ(random_board(7, Space::core).board, random_board(7, Space::core).board);
  EXPECT_NE(random_board(7, Space::core).board, random_board(8, Space::core).board);
  Dice dice(1234567);  // first values for this start; from memory (M)
  EXPECT_EQ(dice.bits(), 6457827717110365317ULL);
  EXPECT_EQ(dice.bits(), 3203168211198807973ULL);
}

TEST(RandomBoards, CoreAgreesWithQuadratureAndBooleans) {
  run(Space::core, number_from("SAGITTA_RANDOM_BOARDS", 40), {.booleans = true, .stages = {Stage::board}});
}

TEST(RandomBoards, CoreIsSoundAtEveryStage) { run(Space::core, number_from("SAGITTA_MANY_BOARDS", 40), {}); }

TEST(RandomBoards, WholeAgreesWithQuadratureAndBooleans) {
  run(Space::whole, number_from("SAGITTA_WHOLE_BOARDS", 20), {.booleans = true, .stages = {Stage::board}});
}

TEST(RandomBoards, WholeIsSoundAtEveryStage) { run(Space::whole, number_from("SAGITTA_MANY_BOARDS", 40), {}); }

/// Shrinking keeps what fails and drops the rest.
TEST(Shrinking, FindsTheSmallestBoardThatFails) {
  std::uint64_t number = 1;
  while (random_board(number, Space::core).board.inlays.size() < 3) ++number;
  const auto has_deep_pocket = [](const Board& board) {
    return std::any_of(board.inlays.begin(), board.inlays.end(), [](const Inlay& i) { return i.depth > 0.4; });
  };
  const Board before = random_board(number, Space::core).board;
  ASSERT_TRUE(has_deep_pocket(before));
  const Board after = shrink(before, has_deep_pocket);
  EXPECT_TRUE(has_deep_pocket(after));
  EXPECT_EQ(after.inlays.size(), 1u);
  EXPECT_LE(after.scale.frets, 3);
  EXPECT_EQ(after.surface.profile, Profile::flat);
}

}  // namespace
}  // namespace sagitta::random_boards
