// Every board of the catalogue of special cases is read without a problem, except the one that a single value refuses.

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <vector>

#include "Places.hpp"
#include "board/BoardFile.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> case_files(const std::vector<std::string>& folders) {
  std::vector<std::string> files;
  for (const std::string& folder : folders) {
    for (const auto& entry : fs::directory_iterator(places::tests() + folder)) {
      if (entry.path().extension() == ".toml") files.push_back(entry.path().string());
    }
  }
  return files;
}

std::string told(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& p : problems) {
    text += p.file + ":" + std::to_string(p.line) + ":" + std::to_string(p.column) + ": " + p.key + ": " + p.message +
            " (" + p.hint + ")\n";
  }
  return text;
}

TEST(Cases, AllAreThere) { EXPECT_EQ(case_files({"/cases", "/cases/singles"}).size(), 96u); }

TEST(Cases, AreRead) {
  for (const std::string& file : case_files({"/cases", "/cases/singles", "/cases/families"})) {
    if (fs::path(file).stem() == "S63") continue;
    const BoardFile read = read_board(file);
    EXPECT_TRUE(read.sound()) << told(read.problems);
    EXPECT_EQ(read.board.name, fs::path(file).stem().string());
  }
}

TEST(Cases, BlindSlotsNeedAnEdge) {
  const BoardFile read = read_board(places::tests() + "/cases/singles/S63.toml");
  ASSERT_EQ(read.problems.size(), 1u);
  EXPECT_EQ(read.problems[0].key, "slots.edge_left");
  EXPECT_EQ(read.problems[0].line, 25);
}

TEST(Cases, ValuesArrive) {
  const Board board = read_board(places::tests() + "/cases/c09-break-through.toml").board;
  EXPECT_EQ(board.scale.length, 400);
  EXPECT_EQ(board.scale.cents.back(), 9600);
  EXPECT_EQ(board.strings.count, 4);
  EXPECT_EQ(board.board.edge_margin, 3);
  EXPECT_EQ(board.surface.profile, Profile::compound);
  EXPECT_EQ(board.surface.radius_at_heel, 320);
  ASSERT_EQ(board.inlays.size(), 2u);
  EXPECT_EQ(board.inlays[1].shape, InlayShape::block);
  EXPECT_EQ(board.inlays[1].across, 51.875);
  ASSERT_TRUE(board.pins);
  EXPECT_EQ(board.pins->at[4], (std::array<double, 2>{240.5, 8}));
  EXPECT_FALSE(board.binding);
  EXPECT_EQ(board.wire.tang_depth, 1.7);
}

}  // namespace
}  // namespace sagitta
