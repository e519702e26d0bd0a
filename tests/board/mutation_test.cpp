// Valid files with numbers, words, lines and bytes changed, dropped, doubled and cut off: whatever comes out, reading
// ends with a board or with problems that lie in the file, and what is sound can be written and read again.

#include "made/Mutation.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "Places.hpp"
#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"
#include "board/Edit.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> sources() {
  std::vector<std::string> texts{sample::text};
  for (const auto& entry : fs::directory_iterator(places::tests() + "/cases")) {
    if (entry.path().extension() != ".toml") continue;
    std::ifstream in(entry.path());
    texts.emplace_back(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
  }
  std::ranges::sort(texts);
  return texts;
}

TEST(Mutations, NeverCrash) {
  const auto texts = sources();
  int sound = 0, refused = 0;
  for (int run = 0; run < 4000; ++run) {
    const std::string text =
        test::Mutation(static_cast<unsigned>(run)).of(texts[static_cast<std::size_t>(run) % texts.size()]);
    const BoardFile file = read_board_text(text, "board.toml", "/nonexistent");
    const auto lines = std::ranges::count(text, '\n') + 1;
    for (const Problem& problem : file.problems) {
      EXPECT_TRUE(problem.line >= 1 && problem.line <= lines && problem.column >= 1) << text;
      EXPECT_FALSE(problem.message.empty());
    }
    if (!file.sound()) {
      ++refused;
      continue;
    }
    ++sound;
    Board board = file.board;
    board.base.clear();
    const BoardFile again = read_board_text(write_board(board), "again.toml", "/nonexistent");
    EXPECT_TRUE(again.sound()) << text << sample::told(again.problems);
    EXPECT_TRUE(again.board == board) << text;
    EXPECT_EQ(edit_text(text, file.board, file.board), text);
  }
  EXPECT_GT(sound, 200);
  EXPECT_GT(refused, 200);
}

}  // namespace
}  // namespace sagitta
