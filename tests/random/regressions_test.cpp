// Boards that once failed, made small: each through every stage, STEP and all its pieces, in the folder
// presets/regressions.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "random/Trial.hpp"

namespace sagitta::random_boards {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> kept() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(places::tests() + "/../presets/regressions"))
    names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

class Regression : public testing::TestWithParam<std::string> {};

TEST_P(Regression, IsSoundAtEveryStage) {
  const BoardFile file = read_board(places::tests() + "/../presets/regressions/" + GetParam() + ".toml");
  ASSERT_TRUE(file.sound()) << file.problems.front().message;
  const Verdict verdict = tried(file.board, everything(file.board));
  EXPECT_EQ(verdict.trouble + verdict.unconfirmed, "");
}

std::string plain_name(const testing::TestParamInfo<std::string>& kept_board) {
  std::string name = kept_board.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Kept, Regression, testing::ValuesIn(kept()), plain_name);

}  // namespace
}  // namespace sagitta::random_boards
