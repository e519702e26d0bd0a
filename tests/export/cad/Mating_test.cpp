#include <gtest/gtest.h>

#include <set>

#include "export/DrawingCopy.hpp"

namespace sagitta::test {
namespace {

// The mating face, read back by a program that is not ours: made for a board with a neck, in millimetres, without
// errors.
TEST(MatingDrawing, IsWrittenForABoardWithANeck) {
  const ScratchFolder scratch;
  const std::string board = scratch / "board.toml", text = bytes_of(preset_path("heron-six"));
  write_file(board, text + "\n[neck]\njoint_fret = 12\nchannel_width = 6\nchannel_from = 20\nchannel_to = 400\n");
  ASSERT_EQ(sagitta("export '" + board + "' --only dxf --to '" + (scratch / "out").string() + "'").code, 0);
  const json copy = drawing_copies(scratch / "out").at("mating.dxf");
  EXPECT_EQ(copy["errors"], json::array());
  EXPECT_EQ(copy["unit"], "mm");
  std::set<std::string> layers;
  for (const auto& [layer, figures] : copy["layers"].items()) layers.insert(layer);
  EXPECT_EQ(layers, (std::set<std::string>{"outline", "nut-line", "joint", "channel"}));
  write_file(board, text);
  ASSERT_EQ(sagitta("export '" + board + "' --only dxf --to '" + (scratch / "plain").string() + "'").code, 0);
  EXPECT_FALSE(fs::exists(scratch / "plain/mating.dxf"));
}

}  // namespace
}  // namespace sagitta::test
