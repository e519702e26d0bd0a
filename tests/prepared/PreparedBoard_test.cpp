// The prepared board: its stages are made once and shared, and a part of a job is a selection that moves nothing.

#include "prepared/PreparedBoard.hpp"

#include <gtest/gtest.h>

#include <barrier>
#include <cmath>
#include <set>
#include <thread>

#include "plan/WoodVolume.hpp"

namespace sagitta::test {
namespace {

constexpr double width = 50, slot_width = 0.6, depth = 2, dot = 6, pocket_depth = 1.5;

/// Flat, as wide at both ends, through slots, no nut seat, dots and side dots in the spaces 3 and 5.
Board plain_board() {
  Board board;
  board.scale.length = 640;
  board.scale.frets = 12;
  board.strings.count = 6;
  board.strings.nut_spread = board.strings.saddle_spread = 40;
  board.board.thickness = 6;
  board.board.nut_width = board.board.heel_width = width;
  board.surface.profile = Profile::flat;
  board.nut.seat = NutSeat::none;
  board.slots.width = slot_width;
  board.slots.depth = depth;
  Inlay inlay;
  inlay.frets = {3, 5};
  inlay.diameter = dot;
  inlay.depth = pocket_depth;
  inlay.clearance = 0;
  board.inlays = {inlay};
  board.side_dots = SideDots{};
  board.side_dots->frets = {3, 5};
  return board;
}

PreparedBoard prepared(const Board& board) {
  auto made = prepare(board);
  if (const auto* faults = std::get_if<Faults>(&made)) throw std::runtime_error(faults->front().message);
  return std::get<PreparedBoard>(std::move(made));
}

TEST(PreparedBoard, MakesAStageOnceForTwoThreadsThatAskAtOnce) {
  const PreparedBoard board = prepared(plain_board());
  for (const Stage stage : stages_of(board.board())) {
    std::barrier start(2);
    const Shell* shells[2] = {};
    const Plan* plans[2] = {};
    const auto ask = [&](int i) {
      const PreparedBoard own = board;  // a copy shares its stages
      start.arrive_and_wait();
      shells[i] = &own.shell(stage);
      plans[i] = &own.plan(stage);
    };
    std::thread other([&] { ask(1); });
    ask(0);
    other.join();
    EXPECT_EQ(shells[0], shells[1]) << name(stage);
    EXPECT_EQ(plans[0], plans[1]) << name(stage);
    EXPECT_EQ(unsound(*shells[0]), "") << name(stage);
  }
}

TEST(PreparedBoard, StageIsTheOneThatThePlanMakes) {
  const PreparedBoard board = prepared(plain_board());
  const auto plan = make_plan(board.board(), board.layout(), board.surface(), board.inlays(), Stage::board);
  const Plan& made = board.plan(Stage::board);
  EXPECT_EQ(made.map.vertices, std::get<Plan>(plan).map.vertices);
  EXPECT_EQ(wood_volume(made), wood_volume(std::get<Plan>(plan)));
}

// A dot of 6 mm for which a cutter of 8 mm is named: no pocket can be cut, and no stage from `pocketed` on be made.
TEST(PreparedBoard, TellsTheFaultsOfAStageWhenItIsAskedFor) {
  Board wrong = plain_board();
  Cutter cutter;
  cutter.name = "large";
  cutter.use = {CutterUse::pocket_clear};
  cutter.diameter = 8;
  wrong.cutters = {cutter};
  const PreparedBoard board = prepared(wrong);
  EXPECT_TRUE(std::holds_alternative<Plan>(board.planned(Stage::blank)));
  const auto* faults = std::get_if<Faults>(&board.planned(Stage::pocketed));
  ASSERT_TRUE(faults);
  EXPECT_EQ(faults->front().code, FaultCode::cutter_too_large);
  EXPECT_EQ(board.stage_faults(), *faults);
  EXPECT_THROW(board.plan(Stage::pocketed), std::logic_error);
}

std::set<int> frets_of(const std::vector<Slot>& slots) {
  std::set<int> frets;
  for (const Slot& slot : slots) frets.insert(slot.fret);
  return frets;
}

TEST(Selection, KeepsSomeFretsAndMovesNothing) {
  const PreparedBoard whole = prepared(plain_board());
  const PreparedBoard part = whole.only({{3, 4}, {}, {}});
  EXPECT_EQ(frets_of(part.slots()), (std::set<int>{3, 4}));
  EXPECT_EQ(part.slots().front(), whole.slots().at(2));
  ASSERT_EQ(part.markers().size(), 1U);
  EXPECT_EQ(part.markers().front(), whole.markers().front());
  ASSERT_EQ(part.side_dots().size(), 1U);
  EXPECT_EQ(part.side_dots().front(), whole.side_dots().front());
  ASSERT_EQ(part.pieces().size(), 1U);
  EXPECT_EQ(part.pieces().front(), whole.pieces().front());
  EXPECT_EQ(&part.layout(), &whole.layout()) << "the layout stays whole";
  EXPECT_EQ(part.only({}).slots(), whole.slots()) << "and so can the part be again";
}

// On a flat board a through slot takes width x depth of the board's width, a dot's pocket pi r^2 x depth.
TEST(Selection, LeavesTheWoodOfWhatIsNotSelected) {
  const PreparedBoard whole = prepared(plain_board());
  const PreparedBoard part = whole.only({{3, 4}, {}, {}});
  const double slots = 12 - 2, dots = 2 - 1;
  const Box strip = whole.layout().strip;
  const double across = strip.high.y - strip.low.y;
  const double more = slots * across * slot_width * depth + dots * M_PI * dot * dot / 4 * pocket_depth;
  EXPECT_NEAR(wood_volume(part.plan(Stage::slotted)) - wood_volume(whole.plan(Stage::slotted)), more, 1e-6 * more);
}

TEST(Selection, OfPiecesSharesTheWood) {
  const PreparedBoard whole = prepared(plain_board());
  const FeatureId second = id_of(whole.pieces().at(1));
  const PreparedBoard part = whole.only({{}, {second}, Operation::inlay});
  ASSERT_EQ(part.pieces().size(), 1U);
  EXPECT_EQ(id_of(part.pieces().front()), second);
  EXPECT_EQ(part.slots().size(), 12U);
  EXPECT_EQ(&part.plan(Stage::board), &whole.plan(Stage::board)) << "the pockets are cut as before";
  EXPECT_NE(&whole.only({{3}, {}, {}}).plan(Stage::board), &whole.plan(Stage::board));
}

TEST(Selection, PiecesCutAnewTakeTheirPlaces) {
  const PreparedBoard whole = prepared(plain_board());
  std::vector<InlayPiece> pieces{whole.pieces().front()};
  pieces.front().thickness = 3;
  const PreparedBoard anew = whole.with_pieces(pieces);
  EXPECT_EQ(anew.pieces(), pieces);
  EXPECT_EQ(whole.pieces().size(), 2U);
  EXPECT_EQ(&anew.plan(Stage::board), &whole.plan(Stage::board));
}

TEST(PreparedBoard, OutlivesWhatItWasCopiedFrom) {
  std::shared_ptr<const Shell> shell;
  {
    const PreparedBoard board = prepared(plain_board());
    shell = board.kept_shell(Stage::slotted);
  }
  EXPECT_EQ(unsound(*shell), "");
}

// Slots of 0.6 mm: their middles 0.5 mm apart they overlap by 0.1 mm, 1 mm apart wood of 0.4 mm stays.
TEST(OwnPlaces, AreJudgedAsTheBoardsOwnAre) {
  const auto slot = [](int number, double x) {
    return Slot{number, {x, -width / 2}, {x, width / 2}, slot_width, false};
  };
  const auto overlapping = draw(plain_board(), {{slot(1, 100), slot(2, 100.5)}, {}});
  ASSERT_TRUE(std::holds_alternative<Faults>(overlapping));
  EXPECT_EQ(std::get<Faults>(overlapping).front().code, FaultCode::slots_meet);
  const auto apart = draw(plain_board(), {{slot(1, 100), slot(2, 101)}, {{0, 1, {50, 0}}}});
  ASSERT_TRUE(std::holds_alternative<Drawn>(apart));
  const Layout& layout = std::get<Drawn>(apart).layout;
  EXPECT_EQ(layout.slots, (std::vector<Slot>{slot(1, 100), slot(2, 101)}));
  ASSERT_EQ(layout.markers.size(), 1U);
  EXPECT_EQ(layout.markers.front().centre, (Point{50, 0}));
}

}  // namespace
}  // namespace sagitta::test
