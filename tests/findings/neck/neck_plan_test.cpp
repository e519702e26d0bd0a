// What a neck must be to meet the good board: 6.35 thick, radius 304.8, slots 1.95 deep, worked out by hand.

#include <cmath>
#include <numbers>

#include "findings/Pairs.hpp"
#include "neck/NeckPlan.hpp"

namespace sagitta::test {
namespace {

constexpr double close = 1e-9;

Board board_on_neck() {
  Board board = good_board();
  Neck& neck = neck_of(board);
  neck.channel_width = 6;
  neck.channel_from = 20;
  neck.channel_to = 400;
  return board;
}

Cut dot_cut(double x, double y, double depth, CutFrom from) {
  Cut cut;
  cut.name = "window", cut.from = from, cut.diameter = 4, cut.at = {x, y}, cut.depth = depth;
  return cut;
}

// At the channel's sides, 3 from the middle, the surface lies lower by 304.8 - sqrt(304.8^2 - 9), and the slots with
// it.
TEST(NeckPlan, TellsTheWoodOverTheRodChannel) {
  const double drop = 304.8 - std::sqrt(304.8 * 304.8 - 9);
  Board board = board_on_neck();
  const auto over = neck_plan(prepared(board)).over_channel;
  ASSERT_TRUE(over);
  EXPECT_NEAR(over->left, 6.35 - 1.95 - drop, close);
  EXPECT_EQ(over->where.kind, FeatureId::Kind::slot);
  board.cuts = {dot_cut(50, 0, 4, CutFrom::top)};
  EXPECT_NEAR(neck_plan(prepared(board)).over_channel->left, 2.35, close);
  board.neck->channel_width.reset();
  EXPECT_FALSE(neck_plan(prepared(board)).over_channel);
}

// Pockets of 1.5 leave 4.85; a cut of 4 leaves 2.35, and one from below is open at the glue face.
TEST(NeckPlan, ListsTheCutsUnderWhichNothingMayRise) {
  Board board = board_on_neck();
  EXPECT_TRUE(neck_plan(prepared(board)).deep_cuts.empty());
  board.cuts = {dot_cut(50, 15, 4, CutFrom::top), dot_cut(120, 15, 1, CutFrom::below),
                dot_cut(300, 15, 3, CutFrom::top)};
  const auto deep = neck_plan(prepared(board)).deep_cuts;
  ASSERT_EQ(deep.size(), 2U);
  EXPECT_NEAR(deep[0].left, 2.35, close);
  EXPECT_NEAR(deep[1].left, 0, close);
  ASSERT_FALSE(deep[1].outlines.empty());
  EXPECT_NEAR(bounds(deep[1].outlines.front()).low.x, 118, close);
}

// Fret 16 at 647.7 (1 - 2^(-16/12)) = 390.660: the end at 475.945 lies 85.285 over the body.
TEST(NeckPlan, TellsTheRoomUnderTheBoardsEnd) {
  Board board = board_on_neck();
  EXPECT_FALSE(neck_plan(prepared(board)).end_room) << "no body_step is given";
  board.neck->joint_fret = 16;
  board.height.emplace().body_step = 1;
  const Layout layout = drawn(board).layout;
  const double over = layout.heel_end - 647.7 * (1 - std::exp2(-16 / 12.0));
  board.neck->angle_degrees = 2;
  EXPECT_NEAR(neck_plan(prepared(board)).end_room.value(), 1, close);
  board.neck->angle_degrees = -1;
  EXPECT_NEAR(neck_plan(prepared(board)).end_room.value(), 1 - over * std::tan(std::numbers::pi / 180), close);
}

TEST(NeckPlan, HasItsJointWhereTheBodyEnds) {
  Board board = board_on_neck();
  board.neck->joint_fret = 16;
  EXPECT_NEAR(neck_plan(prepared(board)).joint_x, 647.7 * (1 - std::exp2(-16 / 12.0)), close);
  board.neck->body_at = 400;
  const NeckPlan plan = neck_plan(prepared(board));
  EXPECT_NEAR(plan.joint_x, 400, close);
  ASSERT_TRUE(plan.face.joint);
  EXPECT_NEAR(plan.face.joint->a.x, 400, close);
  EXPECT_NEAR(plan.face.joint->b.x, 400, close);
}

}  // namespace
}  // namespace sagitta::test
