// A board with a drawn heel end prepared from its file; areas by the shoelace formula and by Bezier's own polynomial.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/Biarc.hpp"
#include "plan/WoodVolume.hpp"
#include "plane/Tolerance.hpp"
#include "prepared/HeelDrawing.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta::test {
namespace {

TEST(HeelDrawing, IsReadBesideTheBoard) {
  const BoardFile file = read_board(places::tests() + "/cases/families/f54-drawn.toml");
  ASSERT_TRUE(file.sound());
  const auto made = draw(file.board);
  ASSERT_TRUE(std::holds_alternative<Drawn>(made)) << std::get<Faults>(made).front().message;
  const Layout& layout = std::get<Drawn>(made).layout;
  // The line runs through (363, -40), (383, -10), (371, 10), (375, 40); edges y = -+(27 + 0.015 x).
  Loop polygon{line({-8, 26.88}, {-8, -26.88})};
  const auto add = [&](Point p) { polygon.push_back(line(polygon.back().b, p)); };
  // y = -40 + 1.5 (x - 363) and y = -(27 + 0.015 x) meet at 1.515 x = 557.5; y = 10 + 7.5 (x - 371) and the other edge
  // at 7.485 x = 2799.5.
  const double bass = 557.5 / 1.515, treble = 2799.5 / 7.485;
  add({bass, -27 - 0.015 * bass}), add({383, -10}), add({371, 10}), add({treble, 27 + 0.015 * treble});
  add(polygon.front().a);
  EXPECT_NEAR(area(layout.outline), area(polygon), 1e-8);
}

TEST(HeelDrawing, OutsideTheBoardsFolderIsRefusedUnlessTheBuilderAllowsIt) {
  Board board = read_board(places::tests() + "/cases/families/f54-drawn.toml").board;
  board.folder += "/nowhere";
  board.board.heel_file = "../end.svg";
  const auto refused = draw(board);
  ASSERT_TRUE(std::holds_alternative<Faults>(refused));
  EXPECT_EQ(std::get<Faults>(refused).front().code, FaultCode::outside_folder);
  EXPECT_EQ(std::get<Faults>(refused).front().key, "board.heel_file");
  EXPECT_TRUE(std::holds_alternative<Drawn>(draw(board, Outside::allowed)));
}

TEST(HeelDrawing, ABezierCurveBecomesArcsBesideIt) {
  const Bezier curve{{0, -40}, {30, -20}, {-10, 25}, {12, 40}};
  const Loop arcs = as_lines_and_arcs({curve});
  EXPECT_EQ(arcs.front().a, curve.a);
  EXPECT_EQ(arcs.back().b, curve.b);
  for (std::size_t i = 0; i + 1 < arcs.size(); ++i) {
    EXPECT_EQ(arcs[i].b, arcs[i + 1].a);
    EXPECT_NEAR(cross(unit(arcs[i].slope(1)), unit(arcs[i + 1].slope(0))), 0, 1e-6);
  }
  for (int i = 0; i <= 1000; ++i) EXPECT_LT(off_chain(arcs, curve.at(i / 1000.0)), tolerance::snap) << i;
  EXPECT_LT(arcs.size(), 200u);
}

TEST(HeelDrawing, ABezierCurveLeavesTheVolumeOfTheCurveItself) {
  const auto made = prepare(read_board(places::tests() + "/cases/families/e12-bezier.toml").board);
  ASSERT_TRUE(std::holds_alternative<PreparedBoard>(made)) << std::get<Faults>(made).front().message;
  // By Gauss quadrature over y of sections along x, the curve solved for y: 1e-11.
  constexpr double volume = 133972.399169855;
  EXPECT_NEAR(wood_volume(std::get<PreparedBoard>(made).plan(Stage::board)) / volume, 1, 1e-8);
}

}  // namespace
}  // namespace sagitta::test
