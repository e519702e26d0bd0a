// Every fault of the layout, each from the smallest change to a sound board that brings it about.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <ostream>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

struct Breakage {
  const char* name;
  std::function<void(Board&)> change;
  const char* key;
  Board (*base)() = octaves;
  friend void PrintTo(const Breakage& one, std::ostream* out) { *out << one.name; }
};

class Breaks : public testing::TestWithParam<Breakage> {};

TEST_P(Breaks, NamesTheKeyAndNothingElse) {
  Board board = GetParam().base();
  EXPECT_THAT(fault_keys(board), IsEmpty());
  GetParam().change(board);
  const auto found = fault_keys(board);
  EXPECT_THAT(found, Contains(GetParam().key));
  for (const std::string& key : found) EXPECT_EQ(key, GetParam().key);
}

void blind(Board& board, double edge_left) {
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = edge_left;
}
void widths(Board& board, double nut, double heel) {
  board.board.edge_margin.reset();
  board.board.nut_width = nut;
  board.board.heel_width = heel;
}
void round_heel(Board& board, Heel heel, double radius) {
  board.board.heel = heel;
  board.board.heel_arc_radius = radius;
}
Inlay inlay(std::vector<int> frets, std::vector<int> doubles = {}) {
  Inlay made;
  made.frets = std::move(frets);
  made.double_frets = std::move(doubles);
  made.depth = 2;
  return made;
}
SideDots side_dots(std::vector<int> frets) {
  SideDots made;
  made.frets = std::move(frets);
  return made;
}

const Breakage breakages[] = {
    {"no_scale", [](Board& b) { b.scale.length.reset(); }, "scale.length"},
    {"fewer_than_no_frets",
     [](Board& b) {
       b.scale.frets = -1;
       b.scale.cents.clear();
     },
     "scale.frets"},
    {"few_cents", [](Board& b) { b.scale.frets = 5; }, "scale.cents"},
    {"falling_cents", [](Board& b) { b.scale.cents[2] = 2300; }, "scale.cents"},
    {"equal_cents", [](Board& b) { b.scale.cents[2] = 2400; }, "scale.cents"},
    {"square_fret_beyond", [](Board& b) { b.scale.square_fret = 5; }, "scale.square_fret"},
    {"frets_cross",
     [](Board& b) {
       b.scale.bass = 1200;
       b.scale.square_fret = 20;
       widths(b, 200, 200);
     },
     "scale.bass", steep_fan},
    {"frets_miss_edge", [](Board& b) { b.scale.bass = 30000; }, "scale.bass", steep_fan},
    {"no_spread", [](Board& b) { b.strings.nut_spread = 0; }, "strings.nut_spread", fan},
    {"strings_cross",
     [](Board& b) {
       b.scale.bass = 2000;
       b.scale.square_fret = 0;
       b.strings.nut_spread = 70;
       b.strings.saddle_spread = 1;
     },
     "strings.saddle_spread", steep_fan},
    {"no_string", [](Board& b) { b.strings.count = 0; }, "strings.count"},
    {"gauges_missing",
     [](Board& b) {
       b.strings.spacing = StringSpacing::equal_gaps;
       b.strings.gauges = {1, 1, 1};
     },
     "strings.gauges"},
    {"gauges_thick",
     [](Board& b) {
       b.strings.spacing = StringSpacing::equal_gaps;
       b.strings.gauges = {20, 20, 20, 20};
     },
     "strings.gauges"},
    {"no_width", [](Board& b) { b.board.edge_margin.reset(); }, "board.edge_margin"},
    {"no_heel_width",
     [](Board& b) {
       b.board.edge_margin.reset();
       b.board.nut_width = 56;
     },
     "board.edge_margin"},
    {"narrow_nut", [](Board& b) { widths(b, 49, 56); }, "board.nut_width"},
    {"narrow_heel", [](Board& b) { widths(b, 56, 49.9); }, "board.heel_width"},
    {"width_zero",
     [](Board& b) {
       b.strings.nut_spread = 0;
       b.strings.count = 1;
       widths(b, 0, 56);
     },
     "board.nut_width"},
    {"ends_in_a_point",
     [](Board& b) {
       b.strings.nut_spread = 2;
       widths(b, 2, 56);
       b.board.behind_nut = 15;
     },
     "board.behind_nut"},
    {"slots_overlap",
     [](Board& b) {
       b.slots.width = 26;
       b.board.past_last_fret = 20;
     },
     "slots.width"},
    {"slots_touch",
     [](Board& b) {
       b.slots.width = 25;
       b.board.past_last_fret = 20;
     },
     "slots.width"},
    {"slot_on_heel", [](Board& b) { b.board.past_last_fret = 0.25; }, "board.past_last_fret"},
    {"slot_over_heel", [](Board& b) { b.board.past_last_fret = 0.1; }, "board.past_last_fret"},
    {"slanted_slot_over_heel", [](Board& b) { b.board.past_last_fret = 7; }, "board.past_last_fret", steep_fan},
    {"blind_slot_over_heel",
     [](Board& b) {
       blind(b, 2);
       b.board.past_last_fret = 0.2;
     },
     "board.past_last_fret"},
    {"slot_in_corner", [](Board& b) { b.board.corner_radius = 12; }, "board.corner_radius"},
    {"slot_on_corner", [](Board& b) { b.board.corner_radius = 9.25; }, "board.corner_radius"},
    {"slot_in_round_corner",
     [](Board& b) {
       round_heel(b, Heel::arc, 60);
       b.board.corner_radius = 8;
     },
     "board.corner_radius"},
    {"blind_slot_in_corner",
     [](Board& b) {
       blind(b, 0.2);
       b.board.corner_radius = 16;
     },
     "board.corner_radius"},
    {"slot_in_arc_heel", [](Board& b) { round_heel(b, Heel::arc, 40); }, "board.past_last_fret"},
    {"slanted_slot_past_the_end_of_an_arc",
     [](Board& b) {
       b.scale.bass = 710;
       b.board.past_last_fret = 3.5;
       round_heel(b, Heel::arc, 1e6);
       b.surface.fall_from_fret.reset();
       b.surface.fall.reset();
       b.board.behind_nut = 60;
     },
     "board.past_last_fret", steep_fan},
    {"slot_in_hollow_heel",
     [](Board& b) {
       round_heel(b, Heel::hollow, 60);
       b.board.past_last_fret = 0.2;
     },
     "board.past_last_fret"},
    {"slot_on_nut_end",
     [](Board& b) {
       b.scale.zero_fret = true;
       b.board.behind_nut = 0.25;
     },
     "board.behind_nut"},
    {"arc_too_small", [](Board& b) { round_heel(b, Heel::arc, 27.9); }, "board.heel_arc_radius"},
    {"hollow_too_small", [](Board& b) { round_heel(b, Heel::hollow, 27.9); }, "board.heel_arc_radius"},
    {"arc_without_radius", [](Board& b) { b.board.heel = Heel::arc; }, "board.heel_arc_radius"},
    {"corner_too_large",
     [](Board& b) {
       b.board.past_last_fret = 60;
       b.board.corner_radius = 28.1;
     },
     "board.corner_radius"},
    {"corner_larger_than_arc",
     [](Board& b) {
       b.board.past_last_fret = 60;
       round_heel(b, Heel::arc, 29);
       b.board.corner_radius = 29;
     },
     "board.corner_radius"},
    {"blind_slot_without_length", [](Board& b) { blind(b, 27.8); }, "slots.edge_left"},
    {"nut_slot_off_the_board",
     [](Board& b) {
       b.nut.seat = NutSeat::slot;
       b.nut.width = 8.01;
     },
     "board.behind_nut"},
    {"nut_shelf_off_the_board",
     [](Board& b) {
       b.nut.seat = NutSeat::shelf;
       b.board.behind_nut = 0;
     },
     "board.behind_nut"},
    {"nut_in_first_slot",
     [](Board& b) {
       b.nut.seat = NutSeat::shelf;
       b.nut.compensation = 199.8;
     },
     "nut.compensation"},
    {"marker_beyond", [](Board& b) { b.inlays = {inlay({5})}; }, "inlays[0].frets"},
    {"marker_at_zero",
     [](Board& b) {
       b.inlays = {inlay({1}), inlay({0})};
     },
     "inlays[1].frets"},
    {"marker_twice",
     [](Board& b) {
       b.inlays = {inlay({3, 3})};
     },
     "inlays[0].frets"},
    {"marker_in_both", [](Board& b) { b.inlays = {inlay({3}, {3})}; }, "inlays[0].double_frets"},
    {"side_dot_pair_in_one",
     [](Board& b) {
       b.side_dots = side_dots({});
       b.side_dots->double_frets = {2};
       b.side_dots->spread = 1.9;
     },
     "side_dots.spread"},
    {"side_dot_beyond", [](Board& b) { b.side_dots = side_dots({5}); }, "side_dots.frets"},
    {"side_dot_twice",
     [](Board& b) {
       b.side_dots = side_dots({2, 2});
     },
     "side_dots.frets"},
    {"side_dot_on_the_end",
     [](Board& b) {
       b.side_dots = side_dots({4});
       b.side_dots->diameter = 44;
       b.side_dots->depth = 1;
     },
     "side_dots.frets"},
    {"side_dot_through",
     [](Board& b) {
       b.side_dots = side_dots({2});
       b.side_dots->depth = 56;
     },
     "side_dots.depth"},
    {"binding_too_wide",
     [](Board& b) {
       b.binding = Binding{28, 0, {}, {}};
     },
     "binding.width"},
    {"fall_without_fret", [](Board& b) { b.surface.fall = 0.5; }, "surface.fall_from_fret"},
    {"fret_without_fall", [](Board& b) { b.surface.fall_from_fret = 2; }, "surface.fall"},
    {"fall_from_no_fret",
     [](Board& b) {
       b.surface.fall_from_fret = 5;
       b.surface.fall = 0.5;
     },
     "surface.fall_from_fret"},
    {"blank_short", [](Board& b) { b.blank.length = 397; }, "blank.length"},
    {"blank_narrow", [](Board& b) { b.blank.width = 61; }, "blank.width"},
    {"blank_thin", [](Board& b) { b.blank.thickness = 6.4; }, "blank.thickness"},
    {"blank_thin_for_sanding",
     [](Board& b) {
       b.blank.thickness = 6.5;
       b.sanding = 0.1;
     },
     "blank.thickness"},
    {"blank_misplaced",
     [](Board& b) {
       b.blank.at = {{10, 40}};
     },
     "blank.at"},
    {"blank_misplaced_across",
     [](Board& b) {
       b.blank.at = {{38, 60}};
     },
     "blank.at"},
};

INSTANTIATE_TEST_SUITE_P(Layout, Breaks, testing::ValuesIn(breakages),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(Faults, AreReportedAllAtOnce) {
  Board board = octaves();
  board.board.past_last_fret = 0.1;
  board.inlays = {inlay({9})};
  board.blank.width = 40;
  board.surface.fall = 1;
  EXPECT_THAT(fault_keys(board),
              ElementsAre("surface.fall_from_fret", "inlays[0].frets", "board.past_last_fret", "blank.width"));
}

TEST(Faults, SayHowFarAndWhatToDo) {
  Board board = octaves();
  round_heel(board, Heel::arc, 40);
  const Faults faults = std::get<Faults>(lay_out(board));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].code, FaultCode::slot_at_end);
  EXPECT_EQ(faults[0].where, (FeatureId{.kind = FeatureId::Kind::slot, .fret = 4}));
  // 11.6843 is needed: what is said is rounded up, and is enough; a step less is not.
  EXPECT_THAT(faults[0].hint, HasSubstr("11.69 mm"));
  board.board.past_last_fret = 11.69;
  EXPECT_THAT(fault_keys(board), IsEmpty());
  board.board.past_last_fret = 11.68;
  EXPECT_THAT(fault_keys(board), ElementsAre("board.past_last_fret"));
}

// 648 mm in twelve steps an octave: from fret 72 to the 96th, 24 slots of 0.584 mm have less than that between their
// middles (648 2^(-n/12) (1 - 2^(-1/12)) < 0.584 from n = 72 on).
TEST(Faults, SlotsThatMeetAreOneFault) {
  Board board = octaves();
  board.scale = {};
  board.scale.length = 648;
  board.scale.frets = 96;
  board.slots.width = 0.584;
  const Faults faults = std::get<Faults>(lay_out(board));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].code, FaultCode::slots_meet);
  EXPECT_EQ(faults[0].where, (FeatureId{.kind = FeatureId::Kind::slot, .fret = 73}));
}

TEST(Faults, FretLinesThatCrossAreOneFault) {
  Board board = steep_fan();
  board.scale.bass = 1200;
  board.scale.square_fret = 20;
  widths(board, 200, 200);
  const Faults faults = std::get<Faults>(lay_out(board));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].code, FaultCode::frets_cross);
}

TEST(Faults, LengthsAreInTheBoardsUnits) {
  Board board = octaves();
  round_heel(board, Heel::arc, 40);
  board.units = Units::inch;
  const Faults faults = std::get<Faults>(lay_out(board));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_THAT(faults[0].hint, HasSubstr("0.4601 in"));  // 11.6843 mm is 0.460012 in
  board.board.past_last_fret = 25.4 * 0.4601;
  EXPECT_THAT(fault_keys(board), IsEmpty());
}

TEST(Faults, LargestCornerIsSaidAndFits) {
  Board board = octaves();
  board.board.past_last_fret = 60;
  board.board.corner_radius = 40;
  const Faults faults = std::get<Faults>(lay_out(board));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_THAT(faults[0].hint, testing::AnyOf(HasSubstr("28 mm"), HasSubstr("27.99 mm")));
}

TEST(Faults, CornersOfARoundHeelMayGrazeTheLastSlot) {
  Board board = octaves();
  round_heel(board, Heel::arc, 60);
  board.board.corner_radius = 4;  // takes 0.05 mm off the slot's ends
  EXPECT_THAT(fault_keys(board), IsEmpty());
  blind(board, 0.02);
  EXPECT_THAT(fault_keys(board), ElementsAre("board.corner_radius"));
}

}  // namespace
}  // namespace sagitta
