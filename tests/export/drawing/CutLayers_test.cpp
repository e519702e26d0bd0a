// The builder's own cuts in the drawings: a layer for each side, in the set-up that makes them.

#include <gtest/gtest.h>

#include "board/BoardFile.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

PreparedBoard prepared_board(const std::string& hand) {
  const std::string text = "format = 1\nname = \"godwit\"\nhand = \"" + hand + "\"\n" + R"(
[scale]
length = 640
frets = 12
[strings]
count = 6
nut_spread = 36
saddle_spread = 52
[board]
thickness = 6
edge_margin = 3.5
[surface]
profile = "flat"
[[cuts]]
name = "hollow"
shape = "block"
along = 20
across = 8
at = [100, 5]
depth = 2
[[cuts]]
name = "notch"
shape = "block"
along = 20
across = 8
at = [320, 0]
depth = "through"
[[cuts]]
name = "magnet"
from = "below"
shape = "dot"
diameter = 6
at = [60, 5]
depth = 3
)";
  auto made = prepare(read_board_text(text, "godwit.toml", "."));
  if (const auto* problems = std::get_if<Problems>(&made)) throw std::runtime_error(problems->front().message);
  return std::get<PreparedBoard>(std::move(made));
}

Box box_of(const Layer& layer) { return bounds(layer.figures.front().pieces); }

TEST(CutLayers, EachSideHasItsOwn) {
  const PreparedBoard ready = prepared_board("right");
  const Drawing drawing = drawing_of(ready, inlay_outlines(ready));
  const Layer *top = layer_named(drawing, "cuts-top"), *through = layer_named(drawing, "cuts-through"),
              *below = layer_named(drawing, "cuts-below");
  ASSERT_TRUE(top && through && below);
  EXPECT_EQ(top->figures.size(), 1U);
  EXPECT_EQ(box_of(*top).low, (Point{90, 1}));
  EXPECT_EQ(box_of(*top).high, (Point{110, 9}));
  EXPECT_EQ(box_of(*through).low, (Point{310, -4}));
  EXPECT_TRUE(is_circle(below->figures.front()));
}

TEST(CutLayers, TheOtherHandIsTheMirror) {
  const PreparedBoard ready = prepared_board("left");
  const Drawing drawing = drawing_of(ready, inlay_outlines(ready));
  EXPECT_EQ(box_of(*layer_named(drawing, "cuts-top")).low, (Point{90, -9}));
}

TEST(CutLayers, BelongToTheOperationThatMakesThem) {
  EXPECT_TRUE(is_cut_by(Operation::pockets, "cuts-top"));
  EXPECT_TRUE(is_cut_by(Operation::pockets, "cuts-through"));
  EXPECT_TRUE(is_cut_by(Operation::outline, "cuts-below"));
  EXPECT_FALSE(is_cut_by(Operation::pockets, "cuts-below"));
}

TEST(CutLayers, FromBelowShowsThoseThatOpenTheGlueFace) {
  const PreparedBoard ready = prepared_board("right");
  const Drawing below = from_below(drawing_of(ready, inlay_outlines(ready)));
  EXPECT_TRUE(layer_named(below, "cuts-below") && layer_named(below, "cuts-through"));
  EXPECT_FALSE(layer_named(below, "cuts-top"));
}

}  // namespace
}  // namespace sagitta::test
