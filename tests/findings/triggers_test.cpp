// Every finding: a board that triggers it and the nearest that does not.

#include <regex>
#include <set>

#include "DrawingPairs.hpp"
#include "MorePairs.hpp"
#include "NeckPairs.hpp"

namespace sagitta::test {
namespace {

// Numbers by hand: the good board is 6.35 thick and 55.56 wide, its slots 0.58 x 1.95, its tang 0.51 x 1.6, its pockets
// 1.5 deep and 6.1 wide, its spread 46. The drop over 27.78 at 304.8 is 1.2686; 304.8 - sqrt(304.8^2 - 27.78^2).
const Pair common_pairs[] = {
    {"octave-off", 1200.5, 1200.6,  // 0.5 cents move the octave by L/2 ln 2/1200 0.5 = 0.0935 mm, 0.6 by 0.112
     [](Board& b, double v) {
       b.scale.cents = {400, 800, v};
       b.scale.frets = 3;
       b.inlays.clear();
     }},
    {"board-narrower-than-neck", 55.56, 55.57, [](Board& b, double v) { neck_of(b).nut_width = v; }},
    {"board-narrower-than-neck", 56.56, 56.57,
     [](Board& b, double v) {
       neck_of(b).state = NeckState::rough;
       neck_of(b).trim = 0.5;
       neck_of(b).body_width = v;
       neck_of(b).body_at = 400;
     }},
    {"last-fret-past-limit", 465.95, 465.94, [](Board& b, double v) { neck_of(b).limit = v; }},
    {"heel-past-limit", 475.95, 475.94, [](Board& b, double v) { neck_of(b).limit = v; }},
    {"inlay-sanded-through", 0.21, 0.20,  // the drop at y = 11.25 is 0.2077
     [](Board& b, double v) {
       b.inlays[0].diameter = 22.5;
       b.inlays[0].frets = {1};
       b.inlays[0].depth = v;
     }},
    {"slot-too-shallow", 1.6, 1.59, [](Board& b, double v) { b.slots.depth = v; }},
    {"slot-too-shallow", 2.87, 2.86,
     [](Board& b, double v) {
       b.slots.floor = SlotFloor::level;
       b.slots.depth = v;
     }},
    {"crowns-meet", 10.80, 10.82, [](Board& b, double v) { b.wire.crown_width = v; }},  // gap 21-22: 10.81 printed
    {"cutter-too-short", 1.95, 1.94, [](Board& b, double v) { add_cutters(b, v, 0.58); }},
    {"cutter-too-short", 2.05, 2.04,
     [](Board& b, double v) {
       b.sanding = 0.1;
       add_cutters(b, v, 0.58);
     }},
    {"slot-cutter-too-wide", 0.589, 0.591, [](Board& b, double v) { add_cutters(b, 3, v); }},
    {"slot-misplaced", 36.44, 36.47,  // fret 1 at 25.5 in: 1.4312 in = 36.352
     [](Board& b, double v) { b.measured.slots = {v}; }},
    {"inlay-too-thin", 0.51, 0.50,
     [](Board& b, double v) {
       b.inlays[0].diameter = 22.5;
       b.inlays[0].frets = {1};
       b.inlays[0].depth = v;
     }},
    {"inlay-on-slot", 5.06, 5.08,  // space 22 is 10.81 wide: half of it less half a slot, less 0.05 clearance
     [](Board& b, double v) {
       b.inlays[0].frets = {22};
       b.inlays[0].diameter = 2 * v;
     }},
    {"thin-wall-at-slot", 4.06, 4.08,
     [](Board& b, double v) {
       b.inlays[0].frets = {22};
       b.inlays[0].diameter = 2 * v;
     }},
    {"thin-wall-at-edge", 23.22, 23.24, [](Board& b, double v) { b.inlays[0].shift_across = v; }},
    {"thin-wall-at-edge", 21.72, 21.74,
     [](Board& b, double v) {
       b.binding = Binding{1.5, 0, {}, {}};
       b.inlays[0].shift_across = v;
     }},
    {"pocket-too-deep", 1.56, 1.54, [](Board& b, double v) { b.inlays[0].piece_thickness = v; }},
    {"thin-under-slot", 3.58, 3.59, [](Board& b, double v) { b.slots.depth = v; }},  // 6.35 - 1.2686 - 1.5 = 3.5814
    {"thin-under-pocket", 4.85, 4.86, [](Board& b, double v) { b.inlays[0].depth = v; }},
    {"thin-under-nut", 4.85, 4.86, [](Board& b, double v) { b.nut.depth = v; }},
    {"thin-edge", 3.77, 3.76, [](Board& b, double v) { b.board.thickness = v; }},  // 2.5 + 1.2686
    {"blank-short", 494.15, 494.13,  // 465.945 + 10 + 3.2 + 3 = 482.145, and 6 at each end
     [](Board& b, double v) { b.blank.length = v; }},
    {"blank-narrow", 67.57, 67.55, [](Board& b, double v) { b.blank.width = v; }},
    {"blank-thin", 6.56, 6.54, [](Board& b, double v) { b.blank.thickness = v; }},
    {"slot-too-tight", 0.53, 0.52, [](Board& b, double v) { b.slots.width = v; }},
    {"slot-too-loose", 0.63, 0.64, [](Board& b, double v) { b.slots.width = v; }},
    {"narrow-fret-space", 6.80, 6.82, [](Board& b, double v) { b.wire.crown_width = v; }},
    {"string-near-edge", 50.56, 50.57, [](Board& b, double v) { b.strings.nut_spread = v; }},
    {"string-near-edge", 49.56, 49.57,  // half of a string of 1 mm less
     [](Board& b, double v) {
       b.strings.nut_spread = v;
       b.strings.gauges = {0.4, 0.4, 0.4, 0.4, 0.4, 1};
     }},
    {"string-near-edge", 49.36, 49.37,  // a bevel of 0.6 less
     [](Board& b, double v) {
       b.strings.nut_spread = v;
       b.edges = Edges{0, 0.6, 30, EdgeStage::hand};
     }},
    {"hump-under-string", 110, 99,  // dy^2/8R from below: (17.4/2 465.945/647.7)^2 / (8 99) = 0.0495, and 4th powers
     [](Board& b, double v) {
       b.strings.nut_spread = 35;
       b.strings.saddle_spread = 52.4;
       b.surface.radius_at_nut = v;
     }},
    {"no-cutter", 1, 0,
     [](Board& b, double v) {
       add_cutters(b, 3, 0.58);
       if (v == 0) b.cutters.pop_back();
     }},
    {"unknown-limit", 0, 1, [](Board& b, double v) { b.limits[v == 0 ? "thin-edge" : "thin-edges"] = 1; }},
    {"unusual-marker", 10, 11, [](Board& b, double v) { b.inlays[0].frets = {static_cast<int>(v)}; }},
};

std::vector<Pair> all_pairs() {
  std::vector<Pair> all(std::begin(common_pairs), std::end(common_pairs));
  for (const std::vector<Pair>& more :
       {wood_pairs(), work_pairs(), note_pairs(), neck_pairs(), neck_place_pairs(), height_pairs(), drawing_pairs()})
    all.insert(all.end(), more.begin(), more.end());
  return all;
}
const std::vector<Pair> pairs = all_pairs();

TEST(Triggers, AreOnTheirSideOfTheLimit) {
  for (const Pair& pair : pairs) {
    Board good = good_board(), bad = good_board();
    pair.apply(good, pair.good);
    pair.apply(bad, pair.bad);
    const auto read = [&](double v) { return pair.neck ? std::optional(pair.neck(v)) : std::nullopt; };
    const auto good_neck = read(pair.good), bad_neck = read(pair.bad);
    const auto none = found(good, pair.name, good_neck ? &*good_neck : nullptr);
    const auto some = found(bad, pair.name, bad_neck ? &*bad_neck : nullptr);
    EXPECT_FALSE(none) << pair.name << " at " << pair.good << ": " << (none ? none->message : "");
    ASSERT_TRUE(some) << pair.name << " at " << pair.bad;
    EXPECT_FALSE(some->message.empty() || some->suggestion.empty() || some->feature.empty()) << pair.name;
  }
}

TEST(Triggers, CoverTheCatalogue) {
  std::set<std::string_view> tested, named;
  for (const Pair& pair : pairs) tested.insert(pair.name);
  for (const Rule& entry : catalogue) {
    EXPECT_TRUE(named.insert(entry.name).second) << entry.name << " stands twice";
    EXPECT_TRUE(tested.count(entry.name)) << entry.name;
    EXPECT_TRUE(std::regex_match(std::string(entry.name), std::regex("[a-z]+(-[a-z]+)*"))) << entry.name;
    EXPECT_TRUE(entry.source == practice || entry.source.starts_with("key ") || entry.source.starts_with("published: "))
        << entry.source;
    EXPECT_FALSE(entry.cost.empty() || entry.measures.empty()) << entry.name;
  }
  EXPECT_EQ(tested, named);
}

// A fix is one edit after which the finding is gone.
TEST(Fixes, RemoveWhatTheyAreFor) {
  std::set<std::string> fixed;
  for (const Pair& pair : pairs)
    for (const Units units : {Units::mm, Units::inch}) {
      Board bad = good_board();
      bad.units = units;
      pair.apply(bad, pair.bad);
      // A limit of the board's own is in the board's units.
      if (units == Units::inch && !bad.limits.empty()) continue;
      const auto read = pair.neck ? std::optional(pair.neck(pair.bad)) : std::nullopt;
      const NeckReading* neck = read ? &*read : nullptr;
      const auto some = found(bad, pair.name, neck);
      ASSERT_TRUE(some) << pair.name;
      if (!some->fix) continue;
      fixed.insert(pair.name);
      ASSERT_TRUE(can_apply(bad, *some->fix)) << some->fix->key << " = " << some->fix->value;
      const Board better = apply(bad, *some->fix);
      EXPECT_NE(better, bad);
      EXPECT_FALSE(found(better, pair.name, neck)) << pair.name << ": " << some->fix->key << " = " << some->fix->value;
    }
  EXPECT_GE(fixed.size(), 14U);
}

TEST(Fixes, AreOnlyWhatTheBoardAllows) {
  const Board board = good_board();
  EXPECT_TRUE(can_apply(board, {"inlays[0].depth", 1.4}));
  EXPECT_FALSE(can_apply(board, {"inlays[1].depth", 1.4})) << "there is one inlay";
  EXPECT_FALSE(can_apply(board, {"slots.depth", 0})) << "a slot is at least 0.3 deep";
  EXPECT_FALSE(can_apply(board, {"board.heel", 1})) << "a choice is no number";
  EXPECT_FALSE(can_apply(board, {"slots.colour", 1}));
  EXPECT_EQ(apply(board, {"slots.depth", 0}), board);
  EXPECT_EQ(apply(board, {"scale.frets", 20}).scale.frets, 20);
  EXPECT_EQ(apply(board, {"pins.depth", 3}).pins->depth, 3);
}

TEST(Findings, SayWhatTheyCostAndWhereTheirLimitComesFrom) {
  Board board = good_board();
  board.slots.depth = 1.5;
  auto shallow = found(board, "slot-too-shallow");
  EXPECT_EQ(shallow->source, "key wire.tang_depth");
  EXPECT_NE(shallow->cost, "");
  board.limits["slot-too-shallow"] = 0.1;
  shallow = found(board, "slot-too-shallow");
  EXPECT_EQ(shallow->source, "key limits.slot-too-shallow");
  EXPECT_EQ(shallow->fix, (Fix{"slots.depth", 1.7}));
}

TEST(Limits, OfTheBoardComeFirstAndAreInItsUnits) {
  Board board = good_board();
  board.limits["thin-edge"] = 0.21;
  EXPECT_FALSE(found(board, "thin-edge"));
  board.units = Units::inch;
  const auto finding = found(board, "thin-edge");
  ASSERT_TRUE(finding);
  EXPECT_DOUBLE_EQ(finding->limit, 0.21 * 25.4);
  EXPECT_NEAR(finding->value, 6.35 - 1.2686, printed4);
  EXPECT_EQ(finding->unit, "mm");
}

TEST(Findings, OfAGoodBoardAreNone) {
  for (const Finding& finding : findings(good_board()))
    EXPECT_EQ(finding.severity, Severity::note) << finding.name << ": " << finding.message;
}

TEST(Findings, ComeCostliestFirst) {
  Board board = good_board();
  board.inlays[0].frets = {11};
  board.slots.depth = 1.5;
  board.slots.width = 0.5;
  const auto list = findings(board);
  ASSERT_GE(list.size(), 3U);
  EXPECT_EQ(list[0].name, "slot-too-shallow");
  EXPECT_EQ(list[1].name, "slot-too-tight");
  EXPECT_EQ(list[2].name, "unusual-marker");
  for (std::size_t i = 1; i < list.size(); ++i) EXPECT_GE(list[i].severity, list[i - 1].severity);
}

}  // namespace
}  // namespace sagitta::test
