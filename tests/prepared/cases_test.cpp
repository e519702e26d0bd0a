// Every board of the catalogue of special cases: sound ones have no fault, the others are refused for what is wrong.

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "layout/SampleBoards.hpp"
#include "prepared/Drawn.hpp"

namespace sagitta {
namespace {

std::vector<std::filesystem::path> case_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(places::tests() + "/cases"))
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  return files;
}

Faults all_faults(const Board& board) {
  const auto drawn = draw(board);
  if (const auto* faults = std::get_if<Faults>(&drawn)) return *faults;
  return surface_faults(std::get<Drawn>(drawn));
}

// S63 is refused by the reader already, for a value out of range; its layout is sound.
TEST(Cases, AreSoundOrRefusedForTheRightKey) {
  const std::map<std::string, std::string> refused{{"S50", "board.past_last_fret"},
                                                   {"S51", "board.corner_radius"},
                                                   {"S52", "board.corner_radius"},
                                                   {"S55", "board.past_last_fret"},
                                                   {"S90", "surface.radius_at_nut"}};
  const auto files = case_files();
  EXPECT_GE(files.size(), 90u);
  for (const auto& path : files) {
    const BoardFile file = read_board(path.string());
    const auto expected = refused.find(path.stem().string());
    const auto keys = samples::keys(all_faults(file.board));
    if (expected == refused.end())
      EXPECT_EQ(keys, std::vector<std::string>{}) << path;
    else
      EXPECT_EQ(keys, std::vector<std::string>{expected->second}) << path;
  }
}

}  // namespace
}  // namespace sagitta
