// Wood that the cuts leave with nothing to hold it.

#include <gtest/gtest.h>

#include "plan/DisconnectedComponent.hpp"

namespace sagitta {
namespace {

/// A flat board 10 mm thick with a column of wood, 4 mm square, inside four pockets 6 mm deep, and under it a pin's
/// hole that reaches over the column into the pockets all round.
Board column_over_a_pin(double pin_depth) {
  Board board;
  board.scale.length = 640;
  board.scale.frets = 12;
  board.strings = {6, 37, 54, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 10;
  board.board.nut_width = board.board.heel_width = 60;
  board.surface.profile = Profile::flat;
  const auto block = [&](double along, double across, double shift_along, double shift_across) {
    Inlay inlay;
    inlay.shape = InlayShape::block;
    inlay.frets = {1};
    inlay.along = along, inlay.across = across;
    inlay.shift_along = shift_along, inlay.shift_across = shift_across;
    inlay.depth = 6;
    inlay.clearance = 0;
    board.inlays.push_back(inlay);
  };
  block(3, 10, -3.5, 0), block(3, 10, 3.5, 0), block(10, 3, 0, -3.5), block(10, 3, 0, 3.5);
  const double middle = 640 * (1 - std::exp2(-1 / 12.0)) / 2;  // of space 1
  board.pins.emplace();
  board.pins->at = {{middle, 0}};
  board.pins->diameter = 7;
  board.pins->depth = pin_depth;
  return board;
}

std::variant<Plan, Faults> planned(const Board& board) {
  const Layout layout = std::get<Layout>(lay_out(board));
  return make_plan(board, layout, surface_of(board, layout), Stage::board);
}

// The pockets' floors are at 10 - 6 = 4: a pin that ends above them frees the column, one that ends below leaves a
// skin.
TEST(Loose, AColumnWithItsFootBoredAwayIsRefused) {
  const auto freed = planned(column_over_a_pin(4.5));
  const Faults* faults = std::get_if<Faults>(&freed);
  ASSERT_TRUE(faults);
  ASSERT_EQ(faults->size(), 1U);
  EXPECT_EQ(faults->front().key, "pins.at");
  EXPECT_EQ(faults->front().code, FaultCode::wood_loose);
  EXPECT_EQ(faults->front().where, (FeatureId{FeatureId::Kind::pin, 0}));
  EXPECT_FALSE(faults->front().hint.empty());
}

TEST(Loose, AColumnOnASkinOfWoodIsHeld) {
  const auto held = planned(column_over_a_pin(3.5));
  ASSERT_TRUE(std::holds_alternative<Plan>(held));
  EXPECT_FALSE(disconnected_cell(std::get<Plan>(held)));
}

}  // namespace
}  // namespace sagitta
