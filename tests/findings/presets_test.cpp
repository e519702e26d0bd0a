// Boards that a builder starts from have nothing to stop for and nothing to look at.

#include <filesystem>

#include "GoodBoard.hpp"
#include "board/BoardFile.hpp"

namespace sagitta::test {
namespace {

TEST(Presets, HaveNothingToStopForOrLookAt) {
  int seen = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(SAGITTA_SOURCE) / "presets")) {
    if (entry.path().extension() != ".toml") continue;
    const BoardFile file = read_board(entry.path().string());
    ASSERT_TRUE(file.sound()) << entry.path();
    ++seen;
    for (const Finding& finding : findings(file.board))
      EXPECT_EQ(finding.severity, Severity::note) << entry.path() << ": " << finding.name << ": " << finding.message;
  }
  EXPECT_GT(seen, 5);
}

}  // namespace
}  // namespace sagitta::test
