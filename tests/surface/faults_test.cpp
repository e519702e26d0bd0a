// Surfaces and floors that a board cannot have, each from the smallest change to a sound board.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <ostream>

#include "layout/SampleBoards.hpp"
#include "surface/Surface.hpp"

namespace sagitta {
namespace {

using namespace samples;
using testing::ElementsAre;
using testing::IsEmpty;

Faults faults_of(const Board& board) {
  const Layout layout = sound(board);
  return surface_faults(board, layout, surface_of(board, layout));
}

struct Breakage {
  const char* name;
  std::function<void(Board&)> change;
  const char* key;
  friend void PrintTo(const Breakage& one, std::ostream* out) { *out << one.name; }
};

class SurfaceBreaks : public testing::TestWithParam<Breakage> {};

TEST_P(SurfaceBreaks, NamesTheKeyOnce) {
  Board board = octaves();
  EXPECT_THAT(keys(faults_of(board)), IsEmpty());
  GetParam().change(board);
  EXPECT_THAT(keys(faults_of(board)), ElementsAre(GetParam().key));
}

void profile(Board& board, Profile kind, double nut, double heel = 0) {
  board.surface.profile = kind;
  board.surface.radius_at_nut = nut;
  if (kind == Profile::compound) board.surface.radius_at_heel = heel;
}
void add_inlay(Board& board, double depth) {
  Inlay inlay;
  inlay.frets = {3};
  inlay.depth = depth;
  board.inlays.push_back(inlay);
}
void add_pin(Board& board, double depth, double x, double y) {
  board.pins = Pins{};
  board.pins->depth = depth;
  board.pins->at = {{x, y}};
}

const Breakage breakages[] = {
    {"radius_is_half_the_width",
     [](Board& b) {
       profile(b, Profile::single, 28);
       b.board.thickness = 40;
     },
     "surface.radius_at_nut"},
    {"radius_vanishes_at_the_heel",
     [](Board& b) {
       profile(b, Profile::compound, 240, 20);
       b.board.thickness = 40;
     },
     "surface.radius_at_heel"},
    {"radius_vanishes_behind_the_nut",
     [](Board& b) {
       profile(b, Profile::compound, 29, 200);
       b.board.thickness = 40;
     },
     "surface.radius_at_nut"},
    {"even_edge_radius",
     [](Board& b) {
       profile(b, Profile::even_edge, 28);
       b.board.thickness = 40;
     },
     "surface.radius_at_nut"},
    {"no_spread_for_string_line",
     [](Board& b) {
       profile(b, Profile::string_line, 240);
       b.strings.nut_spread = 0;
       b.strings.count = 1;
       b.board.edge_margin = 28;
     },
     "surface.profile"},
    {"radius_under_the_larger_edge",
     [](Board& b) {
       profile(b, Profile::single, 29.4);
       b.board.edge_margin = LengthPair(3, 4.5);  // 25 + 4.5
       b.board.thickness = 40;
     },
     "surface.radius_at_nut"},
    {"even_edge_with_edges_that_differ",
     [](Board& b) {
       profile(b, Profile::even_edge, 240);
       b.board.edge_margin = LengthPair(3, 3.5);
     },
     "surface.profile"},
    {"scallop_runs_into_a_slot",
     [](Board& b) {
       b.scallop = Scallop{1, 3, 1.5, 0.2};
     },
     "scallop.land"},
    {"lands_meet",
     [](Board& b) {
       b.scallop = Scallop{1, 4, 1.5, 12.5};
     },
     "scallop.land"},  // of 25
    {"scallop_through",
     [](Board& b) {
       b.scallop = Scallop{1, 4, 4.57, 1.5};
     },
     "scallop.depth"},  // 4.861 at the edge
    {"roll_over_the_middle",
     [](Board& b) {
       b.edges = Edges{28.1, 0, 30, EdgeStage::hand};
     },
     "edges.roll"},
    {"roll_through",
     [](Board& b) {
       b.edges = Edges{5.1, 0, 30, EdgeStage::hand};
     },
     "edges.roll"},  // 0.28 left
    {"bevel_flatter_than_the_surface",
     [](Board& b) {
       b.edges = Edges{0, 2, 89, EdgeStage::hand};
     },
     "edges.bevel_angle"},
    {"roll_over_a_side_dot",
     [](Board& b) {
       b.edges = Edges{2.5, 0, 30, EdgeStage::hand};
       b.side_dots.emplace();
       b.side_dots->frets = {2};
     },
     "side_dots.diameter"},
    {"strip_does_not_exist",
     [](Board& b) {
       profile(b, Profile::single, 28.001);
       b.board.thickness = 40;
     },
     "surface.radius_at_nut"},
    {"strip_cuts_the_bed",
     [](Board& b) {
       profile(b, Profile::single, 33);
       b.board.thickness = 17;
       b.slots.depth = 0.1;
     },
     "surface.radius_at_nut"},
    {"thin_edge",
     [](Board& b) {
       b.board.thickness = 1.93;
       b.slots.floor = SlotFloor::level;
       b.slots.depth = 0.1;
     },
     "board.thickness"},
    {"thin_after_the_fall",
     [](Board& b) {
       b.surface.fall_from_fret = 2;
       b.surface.fall = 4.6;
       b.slots.floor = SlotFloor::level;
     },
     "board.thickness"},
    {"deep_pocket",
     [](Board& b) {
       add_inlay(b, 2);
       add_inlay(b, 6.21);
     },
     "inlays[1].depth"},
    {"deep_nut",
     [](Board& b) {
       b.nut.seat = NutSeat::shelf;
       b.nut.depth = 6.3;
     },
     "nut.depth"},
    {"deep_arc_slot", [](Board& b) { b.slots.depth = 4.6; }, "slots.depth"},
    {"deep_level_slot",
     [](Board& b) {
       b.slots.floor = SlotFloor::level;
       b.slots.depth = 6.21;
     },
     "slots.depth"},
    {"deep_slot_after_the_fall",
     [](Board& b) {
       b.surface.fall_from_fret = 2;
       b.surface.fall = 4;
     },
     "slots.depth"},
    {"high_binding",
     [](Board& b) {
       b.binding = Binding{1.5, 4.6, {}, {}};
     },
     "binding.height"},
    {"pin_through", [](Board& b) { add_pin(b, 6.5, 100, 0); }, "pins.depth"},
    {"pin_through_near_the_edge", [](Board& b) { add_pin(b, 5.3, 100, 27); }, "pins.depth"},
    {"tall_side_dot",
     [](Board& b) {
       b.side_dots = SideDots{};
       b.side_dots->frets = {2};
       b.side_dots->diameter = 4.87;
     },
     "side_dots.diameter"},
};

INSTANTIATE_TEST_SUITE_P(Surface, SurfaceBreaks, testing::ValuesIn(breakages),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(SurfaceFaults, LimitsThemselvesAreSound) {
  Board board = octaves();
  board.board.thickness = 40;
  board.surface.radius_at_nut = 31.001;  // half of the strip is 31
  EXPECT_THAT(keys(faults_of(board)), IsEmpty());
  board = octaves();
  add_inlay(board, 6.2);
  board.nut.seat = NutSeat::shelf;
  board.nut.depth = 6.2;
  board.slots.floor = SlotFloor::level;
  board.slots.depth = 6.2;
  EXPECT_THAT(keys(faults_of(board)), IsEmpty());
}

TEST(SurfaceFaults, PinsMayBreakThroughTheRim) {
  Board board = octaves();
  add_pin(board, 5, 100, 28);  // the edge is 4.86 high there, the hole's inner side 5.03
  board.pins->diameter = 3;
  EXPECT_THAT(keys(faults_of(board)), IsEmpty());
}

TEST(SurfaceFaults, StripSaysThatTheBoardIsSound) {
  Board board = octaves();
  board.board.thickness = 40;
  board.surface.radius_at_nut = 28.001;
  const Faults strip = faults_of(board);
  ASSERT_EQ(strip.size(), 1u);
  EXPECT_EQ(strip[0].code, FaultCode::no_surface_beside);
  board.surface.radius_at_nut = 27;
  EXPECT_EQ(faults_of(board)[0].code, FaultCode::no_surface);
}

TEST(SurfaceFaults, EvenEdgeSaysThatTheEdgesDiffer) {
  Board board = octaves();
  profile(board, Profile::even_edge, 240);
  board.board.edge_margin = LengthPair(3, 3);
  EXPECT_THAT(keys(faults_of(board)), IsEmpty());
  board.board.edge_margin = LengthPair(3, 3.01);
  ASSERT_EQ(faults_of(board).size(), 1u);
  EXPECT_EQ(faults_of(board)[0].code, FaultCode::edges_differ);
}

TEST(SurfaceFaults, AreReportedAllAtOnce) {
  Board board = octaves();
  add_inlay(board, 6.3);
  board.slots.depth = 5;
  board.binding = Binding{1.5, 5, {}, {}};
  add_pin(board, 7, 100, 0);
  EXPECT_THAT(keys(faults_of(board)), ElementsAre("inlays[0].depth", "slots.depth", "binding.height", "pins.depth"));
}

}  // namespace
}  // namespace sagitta
