// Tables and closed forms behind the findings: wire, weight, ridges, movement, slots, edges, humps.

#include <chrono>
#include <cmath>
#include <numbers>

#include "findings/Findings.hpp"
#include "findings/GoodBoard.hpp"
#include "frets/SlotCheck.hpp"
#include "frets/StringRun.hpp"
#include "frets/WireList.hpp"
#include "neck/MatingFace.hpp"
#include "neck/NeckWidth.hpp"
#include "rules/ShownMeasures.hpp"
#include "wood/Movement.hpp"
#include "wood/Scallop.hpp"
#include "wood/Weight.hpp"

namespace sagitta::test {
namespace {

// The arc over a chord w on radius R is 2 R asin(w / 2R).
TEST(WireList, FollowsTheArc) {
  Board board = good_board();
  const Drawn d = drawn(board);
  const auto list = wire_list(prepared(board));
  ASSERT_EQ(list.size(), 22U);
  const double arc = 2 * 304.8 * std::asin(55.56 / (2 * 304.8));
  for (const WirePiece& piece : list) {
    EXPECT_NEAR(piece.straight, 55.56, 1e-9);
    EXPECT_NEAR(piece.along, arc, 1e-6);
    EXPECT_NEAR(piece.cut, arc + 4, 1e-6);
    EXPECT_NEAR(piece.bend_radius.value(), 304.8, 1e-6);
    EXPECT_EQ(piece.nip_bass, 0);
  }
  EXPECT_NEAR(total_wire(list), 22 * (arc + 4), 1e-4);
  board.surface.profile = Profile::flat;
  EXPECT_FALSE(wire_list(prepared(board))[0].bend_radius);
}

TEST(WireList, NipsTheTangWhereTheSlotsEnd) {
  Board board = good_board();
  board.binding = Binding{1.5, 0, {}, {}};
  Drawn d = drawn(board);
  EXPECT_NEAR(wire_list(prepared(board))[4].nip_treble, 1.5, 1e-9);
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = 2;
  d = drawn(board);
  const WirePiece piece = wire_list(prepared(board))[4];
  EXPECT_NEAR(piece.nip_bass, 2 + 0.29, 1e-9);
  EXPECT_NEAR(piece.tang, piece.along - 4.58, 1e-9);
}

// On a fan a fret stands at an angle: longer than the board is wide, and bent to a larger radius, width^2/8 drop.
TEST(WireList, OfAFanIsLongerThanTheBoardIsWide) {
  Board board = good_board();
  board.scale.length.reset();
  board.scale.bass = 680, board.scale.treble = 640, board.scale.square_fret = 7;
  const Drawn d = drawn(board);
  const auto list = wire_list(prepared(board));
  const FretLine& first = d.layout.frets[1];
  const double across = 55.56, along = first.treble_edge.x - first.bass_edge.x;
  EXPECT_GT(std::abs(along), 5);
  EXPECT_NEAR(list[0].straight, std::hypot(across, along), 1e-9);
  const double drop = 304.8 - std::sqrt(304.8 * 304.8 - across * across / 4);
  EXPECT_NEAR(list[0].bend_radius.value(), (list[0].straight * list[0].straight + 4 * drop * drop) / (8 * drop), 1e-6);
  EXPECT_NEAR(list[6].straight, across, 1e-9) << "fret 7 is square";
}

// Printed volumes: 466 long, 42.8625 to 55.5625 wide, 6.35 thick.
TEST(Weight, IsVolumeTimesDensity) {
  const Loop outline{line({0, -21.43125}, {466, -27.78125}), line({466, -27.78125}, {466, 27.78125}),
                     line({466, 27.78125}, {0, 21.43125}), line({0, 21.43125}, {0, -21.43125})};
  Surface surface;
  surface.thickness = 6.35;
  surface.flat = true;
  EXPECT_NEAR(volume_under(surface, outline), 145624.7, 0.2);
  surface.flat = false;
  surface.r0 = 241.3;
  EXPECT_NEAR(volume_under(surface, outline), 135858.6, 0.05);
  surface.r0 = 304.8;
  EXPECT_NEAR(volume_under(surface, outline), 137897.9, 0.05);
  surface.r0 = 254, surface.r1 = (406.4 - 254) / 466;
  EXPECT_NEAR(volume_under(surface, outline), 138577.5, 0.05);
}

// Ebony at 1009 kg/m3: the blank 542.145 x 79.56 x 7.15; the board is a slab 55.56 wide with what the arc, 22 slots,
// the nut's seat and pockets take; dots of shell at 2700.
TEST(Weight, OfBoardAndBlank) {
  Board board = good_board();
  board.inlays.clear();
  board.nut.seat = NutSeat::none;
  const Drawn d = drawn(board);
  const Weights weights = weights_of(prepared(board));
  const Point size = d.layout.blank.high - d.layout.blank.low;
  EXPECT_NEAR(weights.blank, size.x * size.y * 7.15 * 1.009e-3, 1e-9);
  const double half = std::asin(27.78 / 304.8);
  const double section =
      304.8 * 304.8 * (half - std::sin(half) * std::cos(half)) + 55.56 * (6.35 - 304.8 + 304.8 * std::cos(half));
  EXPECT_NEAR(weights.board, (475.9453 * section - 22 * 55.56 * 0.58 * 1.95) * 1.009e-3, 0.01);
}

// Published: 6 mm ball, steps of 0.5: 0.01043; ridges of 0.005: steps of 0.346; 1/4 in ball, 0.020 in: 0.000401 in;
// 1/2 in ball, 0.050 in: 0.001253 in; 1-1/2 in ball, 1 mm: 0.0066 mm. A ball of 3.175 on R 184 cuts as one of 3.121.
TEST(Scallop, IsAsPublished) {
  EXPECT_NEAR(ball_ridge(3, 0.5), 0.01043, 0.000005);
  EXPECT_NEAR(ball_step(3, 0.005), 0.346, 0.0005);
  EXPECT_NEAR(ball_ridge(0.125, 0.020), 0.000401, 0.0000005);
  EXPECT_NEAR(ball_ridge(0.25, 0.050), 0.001253, 0.0000005);
  EXPECT_NEAR(ball_ridge(0.75 * inch, 1), 0.0066, 0.00005);
  EXPECT_NEAR(ball_on_crown(3.175, 184), 3.121, 0.0005);
}

// A flat cutter's stair is what the circle drops over the step.
TEST(Scallop, OfAFlatCutterIsAStair) {
  const auto drop = [](double y) { return 304.8 - std::sqrt(304.8 * 304.8 - y * y); };
  EXPECT_NEAR(flat_stair(304.8, 27.78, 0.5), drop(27.78) - drop(27.28), 1e-12);
  EXPECT_NEAR(flat_stair(304.8, 27.78, flat_step(304.8, 27.78, 0.02)), 0.02, 1e-12);
}

// Computed from the Wood Handbook's coefficients for a board of 57.15 and 4 %: maple 0.81 and 0.38, ebony 0.69 and
// 0.50, pau ferro 0.51 and 0.21. Acrylic: 50 mm and 15 K 0.05 (at 7e-5), 100 mm at 7.7e-5 0.1155.
TEST(Movement, IsAsPublished) {
  const struct {
    const char* wood;
    double flat, quartered;
  } rows[] = {{"maple", .81, .38}, {"ebony", .69, .50}, {"pau ferro", .51, .21}};
  for (const auto& row : rows) {
    const auto change = moisture_change({}, row.wood, 57.15, 4);
    ASSERT_TRUE(change) << row.wood;
    EXPECT_NEAR(change->flat_sawn, row.flat, printed2) << row.wood;
    EXPECT_NEAR(change->quartered, row.quartered, printed2) << row.wood;
  }
  EXPECT_FALSE(moisture_change({}, "brass", 57.15, 4));
  EXPECT_NEAR(heat_change({}, "acrylic", 100, 15), 0.1155, 1e-9);
  EXPECT_EQ(heat_change({}, "ebony", 500, 15), 0);
}

// Printed: cents per 0.1 mm at 650 mm: f1 0.28, f12 0.53, f20 0.85, f24 1.07.
TEST(SlotCheck, SensitivityIsAsPrinted) {
  Board board = good_board();
  board.scale.length = 650;
  board.scale.frets = 24;
  const Layout layout = std::get<Layout>(lay_out(board));
  for (const auto& [fret, cents] : {std::pair{1, .28}, {12, .53}, {20, .85}, {24, 1.07}})
    EXPECT_NEAR(cents_per_tenth(layout, fret), cents, printed2) << fret;
}

TEST(SlotCheck, DriftIsTheMachinesScale) {
  Board board = good_board();
  for (int n = 1; n <= 22; ++n) board.measured.slots.push_back(1.001 * 647.7 * (1 - std::exp2(-n / 12.0)) + 0.05);
  const auto errors = slot_errors(board.measured.slots, drawn(board).layout);
  ASSERT_EQ(errors.size(), 22U);
  EXPECT_NEAR(slot_drift(errors).per_mm, 0.001, 1e-12);
  EXPECT_NEAR(errors[11].off, 0.32385 + 0.05, 1e-9);
  EXPECT_GT(errors[11].cents, 0);
  board.measured.slots.resize(2);
  EXPECT_EQ(slot_drift(slot_errors(board.measured.slots, drawn(board).layout)).per_mm, 0);
}

// The printed table of edge drops, inches.
TEST(Edge, DropsAsPrinted) {
  const double radius[] = {7.25, 9.5, 10, 12, 16, 20}, width[] = {1.6875, 1.75, 2.0625, 2.25};
  const double drop[6][4] = {{.04926, .05300, .07372, .08782}, {.03754, .04038, .05614, .06685},
                             {.03566, .03835, .05332, .06348}, {.02970, .03194, .04439, .05285},
                             {.02226, .02394, .03327, .03960}, {.01781, .01915, .02660, .03167}};
  for (int r = 0; r < 6; ++r)
    for (int w = 0; w < 4; ++w) {
      Board board = good_board();
      board.strings.nut_spread = board.strings.saddle_spread = 30;
      board.inlays.clear();
      board.surface.radius_at_nut = radius[r] * inch;
      board.board.nut_width = board.board.heel_width = width[w] * inch;
      EXPECT_NEAR((6.35 - measured(board, "thin-edge")) / inch, drop[r][w], 0.000005 + 1e-9)
          << radius[r] << " " << width[w];
    }
}

// The string law leaves no hump under any string: after the fix none is measured, wherever the radius is reached, and
// on a fan.
TEST(Hump, IsGoneAfterItsFix) {
  for (const HeelAt heel_at : {HeelAt::heel, HeelAt::last_fret})
    for (const bool fan : {false, true}) {
      Board board = good_board();
      board.inlays.clear();
      board.strings.nut_spread = 35, board.strings.saddle_spread = 52.4;
      board.surface.profile = Profile::compound;
      board.surface.heel_at = heel_at;
      board.surface.radius_at_heel = board.surface.radius_at_nut;
      if (fan) {
        board.scale.length.reset();
        board.scale.bass = 680, board.scale.treble = 640, board.scale.square_fret = 9;
      }
      board.limits["hump-under-string"] = 0;
      const auto hump = found(board, "hump-under-string");
      ASSERT_TRUE(hump && hump->fix);
      EXPECT_GT(hump->value, 0.01);
      board = apply(board, *hump->fix);
      EXPECT_LT(measured(board, "hump-under-string"), 1e-6) << "the radius is rounded to 0.01 mm";
    }
}

TEST(Neck, CrossesTheBoardWhereTheyAreAsWide) {
  Board board = good_board();
  board.neck = Neck{};
  board.neck->nut_width = 55, board.neck->body_width = 57, board.neck->body_at = 400;
  EXPECT_NEAR(neck_crossing(prepared(board)).value(), 0.56 / 2 * 400, 1e-9);
  EXPECT_NEAR(measured(board, "board-narrower-than-neck"), 55.56 - 57, 1e-9);
  EXPECT_NEAR(measured(board, "board-overhangs-neck"), 0.56, 1e-9);
  // A neck measured past the board's end is compared up to that end only: the last fret at 465.945.
  board.neck->body_at = 600;
  EXPECT_NEAR(measured(board, "board-narrower-than-neck"), 55.56 - (55 + 2 * 465.945 / 600), 1e-4);
}

// Outline, nut line, joint at fret 12 (half of 647.7), a pin, and a channel cut off at the board's end.
TEST(MatingFace, IsWhatTheNeckNeeds) {
  Board board = good_board();
  EXPECT_FALSE(mating_face(prepared(board)).joint);
  board.neck = Neck{};
  board.neck->joint_fret = 12;
  board.neck->channel_width = 6;
  board.neck->channel_to = 1000;
  board.pins = Pins{2, 2.5, {{20, 5}}};
  const MatingFace face = mating_face(prepared(board));
  EXPECT_NEAR(area(face.outline), 482.1453 * 55.56, 0.01);
  EXPECT_NEAR(face.nut_line.a.y, -27.78, 1e-9);
  EXPECT_NEAR(face.nut_line.a.x, 0, 1e-9);
  EXPECT_NEAR(face.joint->a.x, 323.85, 1e-9);
  EXPECT_NEAR(area(*face.channel), 6 * 482.1453, 0.001);
  ASSERT_EQ(face.pins.size(), 1U);
  EXPECT_EQ(face.pins[0].centre, (Point{20, 5}));
  board.hand = Hand::left;
  EXPECT_EQ(mating_face(prepared(board)).pins[0].centre, (Point{20, -5}));
}

// Level frets 7.5 above the glue face meet the saddle at 7.5; tilted by 3 degrees about a joint 300 from the saddle
// they rise by 300 tan 3 = 15.72.
TEST(Saddle, IsOnThePlaneOfTheFrets) {
  const Board board = good_board();
  const Surface surface = drawn(board).surface;
  EXPECT_NEAR(saddle_height(board, surface, 0, 300), 7.55, 1e-12);
  const double angle = 3 * std::numbers::pi / 180;
  EXPECT_NEAR(saddle_height(board, surface, angle, 300), 15.7223 + 7.55 / 0.998630, 0.0002);
}

TEST(Findings, OfTheStandardBoardTakeUnderFiveMilliseconds) {
  using Clock = std::chrono::steady_clock;
  const Board board = good_board();
  const PreparedBoard ready = prepared(board);
  double best = 1e9;
  for (int i = 0; i < 20; ++i) {
    const auto start = Clock::now();
    ASSERT_FALSE(findings_of(ready).empty());
    best = std::min(best, std::chrono::duration<double, std::milli>(Clock::now() - start).count());
  }
  RecordProperty("milliseconds", std::to_string(best));
  std::printf("all findings of the standard board: %.3f ms\n", best);
  EXPECT_LT(best, 5);
}

/// The number of a text, and what stands behind it.
std::pair<double, std::string> number_and_unit(const std::string& text) {
  std::size_t end = 0;
  const double number = std::stod(text, &end);
  return {number, text.substr(end)};
}

// NIST SP 811, appendix B.8: 1 oz = 28.349523125 g, 1 lbf = 4.4482216152605 N, both exact.
TEST(ShownMeasures, WeightAndForceInTheBoardsUnits) {
  Board board;
  board.units = Units::inch;
  EXPECT_EQ(number_and_unit(shown_weight(board, 100)).second, " oz");
  EXPECT_NEAR(number_and_unit(shown_weight(board, 10 * 28.349523125)).first, 10, 0.05);
  EXPECT_EQ(number_and_unit(shown_force(board, 100)).second, " lbf");
  EXPECT_NEAR(number_and_unit(shown_force(board, 77 * 4.4482216152605)).first, 77, 0.05);
  board.units = Units::mm;
  EXPECT_EQ(number_and_unit(shown_weight(board, 146.3)), (std::pair<double, std::string>{146, " g"}));
  EXPECT_EQ(number_and_unit(shown_force(board, 12)), (std::pair<double, std::string>{12, " N"}));
}

}  // namespace
}  // namespace sagitta::test
