// Boards that a builder starts from have nothing to stop for and nothing to look at.

#include <filesystem>
#include <map>

#include "GoodBoard.hpp"
#include "Places.hpp"
#include "SensibleBoard.hpp"
#include "board/BoardFile.hpp"

namespace sagitta::test {
namespace {

TEST(Presets, HaveNothingToStopForOrLookAt) {
  int seen = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(places::source()) / "presets")) {
    if (entry.path().extension() != ".toml") continue;
    const BoardFile file = read_board(entry.path().string());
    ASSERT_TRUE(file.sound()) << entry.path();
    ++seen;
    for (const Finding& finding : findings(file.board))
      EXPECT_EQ(finding.severity, Severity::note) << entry.path() << ": " << finding.name << ": " << finding.message;
  }
  EXPECT_GT(seen, 5);
}

// Two hundred boards that a builder would draw: nothing to stop for, and most of them with nothing to look at.
TEST(SensibleBoards, HaveNothingToStopFor) {
  int looked_at = 0;
  std::map<std::string, int> looks;
  for (std::uint64_t number = 0; number < 200; ++number) {
    const Board board = sensible_board(number);
    bool look = false;
    for (const Finding& finding : findings(board)) {
      EXPECT_NE(finding.severity, Severity::stop)
          << "board " << number << ": " << finding.name << ": " << finding.message;
      if (finding.severity == Severity::look) look = true, ++looks[finding.name];
    }
    looked_at += look;
  }
  std::printf("200 sensible boards: %d with something to look at\n", looked_at);
  for (const auto& [name, count] : looks) std::printf("  %s: %d\n", name.c_str(), count);
  EXPECT_LT(looked_at, 50);
}

// The same boards with one number spoiled do stop: what is sensible is not merely silent.
TEST(SensibleBoards, StopWhenTheyAreSpoiled) {
  for (std::uint64_t number = 0; number < 200; ++number) {
    Board board = sensible_board(number);
    board.slots.depth = board.wire.tang_depth - 0.1;
    EXPECT_TRUE(found(board, "slot-too-shallow")) << number;
    board.neck = Neck{};
    board.neck->nut_width = board.strings.nut_spread + board.board.edge_margin->sum() + 0.2;
    EXPECT_TRUE(found(board, "board-narrower-than-neck")) << number;
  }
}

}  // namespace
}  // namespace sagitta::test
