/// A sheet of inlay material as a job: zero, mirrored face, notes. heron-six: ten dots of 6 mm on a sheet of 70 x 40.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "drawing/SheetDrawing.hpp"
#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

struct Made {
  PreparedBoard ready;
  NestedSheet sheet;
  Drawing drawing;
};

Made made(const std::string& keys) {
  const ScratchFolder scratch;
  write_file(scratch / "a.toml", bytes_of(preset_path("heron-six")) +
                                     "\n[[sheets]]\nmaterial = \"shell\"\nlength = 70\nwidth = 40\nthickness = 2\n" +
                                     keys);
  const PreparedBoard ready = std::get<PreparedBoard>(prepare((scratch / "a.toml").string()));
  const Nesting nesting = nest(ready.pieces(), ready.board().sheets, nest_rules(ready.board())).value();
  return {ready, nesting.sheets.at(0), sheet_drawing(ready, nesting.sheets.at(0))};
}

Box box_of(const Drawing& drawing, std::size_t figure) {
  return bounds(layer_named(drawing, "piece-shell")->figures.at(figure).pieces);
}

TEST(SheetDrawing, HasTheZeroThatIsAskedFor) {
  const Made corner = made("");
  EXPECT_EQ(corner.drawing.page.low, (Point{0, 0}));
  EXPECT_EQ(corner.drawing.page.high, (Point{70, 40}));
  const Made centre = made("zero = \"centre\"\n");
  EXPECT_EQ(centre.drawing.page.low, (Point{-35, -20}));
  EXPECT_NEAR(box_of(centre.drawing, 3).low.x, box_of(corner.drawing, 3).low.x - 35, 1e-12);
  const Box first = box_of(made("zero = \"first-piece\"\n").drawing, 0);
  EXPECT_NEAR(first.low.x, -3, 1e-9);
  EXPECT_NEAR(first.high.y, 3, 1e-9);
}

// Seen from above a sheet that lies face down shows everything mirrored in its middle line along: y becomes 40 - y.
TEST(SheetDrawing, IsMirroredWhereTheFaceLiesDown) {
  const Made up = made(""), down = made("face = \"mirrored\"\n");
  for (std::size_t i = 0; i < 10; ++i) {
    EXPECT_NEAR(box_of(down.drawing, i).low.y, 40 - box_of(up.drawing, i).high.y, 1e-9);
    EXPECT_NEAR(box_of(down.drawing, i).low.x, box_of(up.drawing, i).low.x, 1e-9);
  }
  EXPECT_EQ(down.drawing.notes.size(), up.drawing.notes.size() + 1) << "the warning";
}

TEST(SheetDrawing, KeepsClampsFreeOfPieces) {
  const Made held = made("clamp = 18\nmargin = 5\n");
  const Layer* clamps = layer_named(held.drawing, "clamps");
  ASSERT_NE(clamps, nullptr);
  for (const Figure& piece : layer_named(held.drawing, "piece-shell")->figures) {
    EXPECT_GE(bounds(piece.pieces).low.x, 18 - 1e-9);
    EXPECT_LE(bounds(piece.pieces).high.x, 52 + 1e-9);
    EXPECT_GE(bounds(piece.pieces).low.y, 5 - 1e-9);
  }
  EXPECT_NEAR(bounds(clamps->figures.at(0).pieces).high.x, 18, 1e-12);
}

// Clamps of 15 mm at both ends of 70: tape from 15 to 55 over the whole width.
TEST(SheetDrawing, ShowsWhereTapeLies) {
  const Made held = made("");
  const Layer* tape = layer_named(held.drawing, "tape");
  ASSERT_NE(tape, nullptr);
  EXPECT_EQ(bounds(tape->figures.at(0).pieces).low, (Point{15, 0}));
  EXPECT_EQ(bounds(tape->figures.at(0).pieces).high, (Point{55, 40}));
  EXPECT_EQ(layer_named(made("hold = \"skin\"\n").drawing, "tape"), nullptr);
}

// The middle of each tab lies on the outline of a dot of 6 mm: 3 mm from the dot's middle.
TEST(SheetDrawing, ShowsTabsOnTheOutlines) {
  const Made held = made("hold = \"tabs\"\n");
  const Layer* tabs = layer_named(held.drawing, "tabs");
  ASSERT_NE(tabs, nullptr);
  EXPECT_GE(tabs->figures.size(), 10U);
  for (const Figure& tab : tabs->figures) {
    const Point middle = between(tab.pieces.front().a, tab.pieces.front().b, 0.5);
    double nearest = 1e300;
    for (std::size_t i = 0; i < 10; ++i) {
      const Box box = box_of(held.drawing, i);
      nearest = std::min(nearest, std::abs(distance(middle, between(box.low, box.high, 0.5)) - 3));
    }
    EXPECT_NEAR(nearest, 0, 1e-9);
  }
}

}  // namespace
}  // namespace sagitta::test
