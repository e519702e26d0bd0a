/// The side view and the views of both edges: figures against a table worked out by hand, places by pixels.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "gui/Change.hpp"
#include "overlay/LongSheet.hpp"
#include "scene/LongSlice.hpp"

namespace sagitta::test {
namespace {

constexpr double scale = 647.7;

/// The instrument "bolted" of tests/findings/neck/heights_test.cpp, whose heights were worked out by hand to five
/// decimals: over frets 1, 5, 7, 12 and 22.
void make_bolted(Board& board) {
  board.scale.length = scale, board.scale.frets = 22;
  board.strings = {6, 46, 46, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 6.35, board.board.edge_margin.reset();
  board.board.nut_width = board.board.heel_width = 56;
  board.surface = {};
  board.surface.profile = Profile::single, board.surface.radius_at_nut = 304.8;
  board.wire.crown_height = 1.2;
  Heights& heights = board.height.emplace();
  heights.nut = {0.5, 0.5}, heights.action = {1.8, 1.5};
  heights.relief = 0.2, heights.relief_fret = 8;
  heights.body_step = 0, heights.bridge = 11;
  board.neck.emplace().joint_fret = 16;
}

ImVec2 middle(const viewer::Seen& seen) { return {(seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2}; }

double fret_at(int fret) { return scale * (1 - std::exp2(-fret / 12.0)); }

/// x in the window by the labels over two frets.
double pixel_at(Hand& hand, double x) {
  const double first = middle(hand.see("Board/string over fret 1")).x,
               twelfth = middle(hand.see("Board/string over fret 12")).x;
  return first + (twelfth - first) * (x - fret_at(1)) / (fret_at(12) - fret_at(1));
}

TEST(Lengthwise, TheSideViewTellsTheStringOverEveryFret) {
  Hand hand;
  change(hand, make_bolted);
  hand.press(GLFW_KEY_V);
  hand.wait();
  const std::pair<int, const char*> bass[] = {{1, "0.70"}, {5, "1.30"}, {7, "1.49"}, {12, "1.80"}, {22, "2.20"}};
  for (const auto& [fret, height] : bass)
    EXPECT_EQ(hand.text("Board/string over fret " + std::to_string(fret)), height) << fret;
  hand.choose("Board/String", "String 1, treble");
  hand.wait();
  const std::pair<int, const char*> treble[] = {{1, "0.67"}, {5, "1.15"}, {7, "1.29"}, {12, "1.50"}, {22, "1.77"}};
  for (const auto& [fret, height] : treble)
    EXPECT_EQ(hand.text("Board/string over fret " + std::to_string(fret)), height) << fret;
  EXPECT_EQ(hand.text("Board/side Relief"), "0.2 mm");
  EXPECT_EQ(hand.text("Board/side Saddle over body"), "10.11 mm");
  EXPECT_EQ(hand.text("Board/side Joint at"), "390.66 mm") << "647.7 (1 - 2^(-16/12))";
  hand.press(GLFW_KEY_V);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/side drawing"));
}

// No label over another, whatever the room.
TEST(Lengthwise, TheHeightsStandApart) {
  Hand hand;
  change(hand, make_bolted);
  hand.press(GLFW_KEY_V);
  for (const int width : {1280, 1024}) {
    hand.resize(width, 800);
    hand.wait();
    std::vector<viewer::Seen> labels;
    for (int fret = 1; fret <= 22; ++fret) labels.push_back(hand.see("Board/string over fret " + std::to_string(fret)));
    const viewer::Seen panel = hand.see("Board");
    for (std::size_t i = 0; i < labels.size(); ++i) {
      EXPECT_LE(labels[i].high.y, panel.high.y) << i + 1 << " at " << width;
      for (std::size_t k = i + 1; k < labels.size(); ++k)
        EXPECT_FALSE(labels[i].low.x < labels[k].high.x && labels[k].low.x < labels[i].high.x &&
                     labels[i].low.y < labels[k].high.y && labels[k].low.y < labels[i].high.y)
            << i + 1 << " and " << k + 1 << " at " << width;
    }
  }
}

// With a bridge of 8 where 10.11 is needed the saddle is marked; its place is the scale's end.
TEST(Lengthwise, AFindingOfTheHeightsIsMarkedAtItsPlace) {
  Hand hand;
  change(hand, [](Board& b) { make_bolted(b), b.height->bridge = 8; });
  hand.press(GLFW_KEY_V);
  hand.wait();
  EXPECT_NEAR(middle(hand.see("Board/side finding bridge-too-low")).x, pixel_at(hand, scale), 2);
  change(hand, [](Board& b) { b.height->bridge = 10.1; });
  EXPECT_FALSE(hand.sees("Board/side finding bridge-too-low"));
}

TEST(Lengthwise, HeightsAreStretchedByTheFactorThatIsStated) {
  const viewer::LongFrame frame = viewer::long_frame({-7, 655, -4, 15}, {10, 20}, {610, 180});
  EXPECT_GT(frame.times, 1);
  const double along = frame.at(101, 0).x - frame.at(1, 0).x, up = frame.at(0, 0).y - frame.at(0, 10).y;
  EXPECT_NEAR(up / 10 / (along / 100), frame.times, 1e-4);
  EXPECT_GE(frame.at(0, 15).y, 20 - 1e-3);
  EXPECT_LE(frame.at(0, -4).y, 180 + 1e-3);
  Hand hand;
  change(hand, make_bolted);
  const auto stated = [&] {
    const std::string words = hand.text("Board/heights stretched");
    return std::atoi(words.substr(words.find_first_of("0123456789")).c_str());
  };
  hand.press(GLFW_KEY_V);
  hand.wait();
  const int whole = stated();
  EXPECT_GT(whole, 1);
  hand.click("Board/Over the frets");
  hand.wait();
  EXPECT_GT(stated(), 2 * whole);
}

TEST(Lengthwise, WithoutHeightsTheBoardIsDrawnAndWhatIsMissingIsSaid) {
  Hand hand;
  change(hand, [](Board& b) { make_bolted(b), b.height.reset(); });
  hand.press(GLFW_KEY_V);
  hand.wait();
  EXPECT_TRUE(hand.sees("Board/side drawing"));
  EXPECT_TRUE(hand.sees("Board/side missing"));
  EXPECT_FALSE(hand.sees("Board/string over fret 1"));
}

// The edge lies 28 mm off the centre line of an arc of radius 304.8: 6.35 - (304.8 - sqrt(304.8^2 - 28^2)) = 5.061.
TEST(Lengthwise, AnEdgeIsDrawnWithItsSlotsAndDots) {
  Hand hand;
  change(hand, [](Board& b) {
    make_bolted(b);
    b.slots.depth = 2;
    b.side_dots.emplace().frets = {3, 5, 12};
  });
  hand.press(GLFW_KEY_3, GLFW_MOD_SHIFT);
  hand.wait();
  EXPECT_EQ(hand.text("Board/edge Wall height"), "5.06, 5.06 mm");
  EXPECT_EQ(hand.text("Board/edge Slot ends"), "2 mm deep");
  EXPECT_EQ(hand.text("Board/side dot 3"), "2 mm");
  // Dots lie in the middle of their spaces, a radius before the noted right end of their rim.
  const auto dot = [&](int fret) {
    return static_cast<double>(hand.see("Board/side dot " + std::to_string(fret)).low.x);
  };
  const auto place = [&](int fret) { return (fret_at(fret) + fret_at(fret - 1)) / 2; };
  EXPECT_NEAR((dot(5) - dot(3)) / (dot(12) - dot(3)), (place(5) - place(3)) / (place(12) - place(3)), 5e-3);
  hand.click("Board/Treble edge");
  hand.wait();
  EXPECT_EQ(hand.text("Board/edge Slot ends"), "2 mm deep");
  EXPECT_FALSE(hand.sees("Board/side dot 3")) << "the dots are in the bass edge";
  hand.press(GLFW_KEY_X);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/edge drawing")) << "the section takes its place";
  EXPECT_TRUE(hand.sees("Board/section drawing"));
}

// A glue face that sinks to 0.3 below the board's in the middle of its length, as a parabola.
TEST(Lengthwise, TheGapUnderAnEdgeIsTheNecks) {
  Hand hand;
  const PreparedBoard& board = *hand.desk().results.good->prepared;
  const Layout& layout = board.layout();
  const double length = layout.heel_end - layout.nut_end;
  NeckReading neck;
  NeckShape& shape = neck.shape.emplace();
  shape.planar = false;
  const auto sunk = [&](double x) {
    return -0.3 * 4 * (x - layout.nut_end) * (layout.heel_end - x) / (length * length);
  };
  std::vector<Place3> outline;
  for (int i = 0; i <= 400; ++i) {
    const double x = layout.nut_end + length * i / 400;
    outline.push_back({x, -layout.edge(0, x), sunk(x)});
  }
  for (int i = 400; i >= 0; --i) {
    const double x = layout.nut_end + length * i / 400;
    outline.push_back({x, layout.edge(1, x), sunk(x)});
  }
  shape.outlines = {outline};
  const viewer::EdgeView edge = viewer::edge_view(board, *hand.desk().results.at(Stage::board), 0, &neck);
  EXPECT_NEAR(edge.widest, 0.3, 1e-6);
  EXPECT_NEAR(edge.widest_at, layout.nut_end + length / 2, length / 100);
  for (const viewer::GapStation& station : edge.gap) EXPECT_NEAR(station.gap, -sunk(station.x), 1e-5);
  shape.place.sure = false;
  EXPECT_TRUE(viewer::edge_view(board, *hand.desk().results.at(Stage::board), 0, &neck).gap.empty());
}

}  // namespace
}  // namespace sagitta::test
