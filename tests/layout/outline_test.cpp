// Areas in closed form (sectors, segments, corners), tangency by distances and directions.

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

using namespace samples;
constexpr double pi = std::numbers::pi;

void expect_closed_and_positive(const Loop& loop) {
  for (std::size_t i = 0; i < loop.size(); ++i) {
    EXPECT_EQ(loop[i].b, loop[(i + 1) % loop.size()].a) << i;
    EXPECT_GT(loop[i].length(), tolerance::same);
    EXPECT_NEAR(distance(loop[i].at(0.5), loop[i].at(0.5 + 1e-9)), 0, 1e-5);
  }
  EXPECT_GT(area(loop), 0);
}

/// Directions agree at the joints that rounded corners make.
void expect_tangent(const CurveSegment& before, const CurveSegment& after) {
  EXPECT_NEAR(cross(unit(before.slope(1)), unit(after.slope(0))), 0, 1e-12);
  EXPECT_GT(dot(before.slope(1), after.slope(0)), 0);
}

TEST(Outline, SquareHeel) {
  const Layout layout = sound(octaves());
  ASSERT_EQ(layout.outline.size(), 4u);
  EXPECT_EQ(layout.outline[0], line({-8, -28}, {384, -28}));
  EXPECT_EQ(layout.outline[1], line({384, -28}, {384, 28}));
  EXPECT_EQ(layout.outline[3], line({-8, 28}, {-8, -28}));
  EXPECT_DOUBLE_EQ(area(layout.outline), 392 * 56);
  EXPECT_EQ(layout.edges[0], (LineSegment{{-8, -28}, {384, -28}}));
  EXPECT_EQ(layout.edges[1], (LineSegment{{-8, 28}, {384, 28}}));
}

TEST(Outline, RoundedCornersTakeTheirShare) {
  Board board = octaves();
  board.board.corner_radius = 4;
  const Layout layout = sound(board);
  ASSERT_EQ(layout.outline.size(), 6u);
  expect_closed_and_positive(layout.outline);
  EXPECT_NEAR(area(layout.outline), 392 * 56 - 2 * (1 - pi / 4) * 16, 1e-10);
  EXPECT_NEAR(layout.edges[0].b.x, 380, 1e-13);
  for (std::size_t i = 0; i < 4; ++i) expect_tangent(layout.outline[i], layout.outline[i + 1]);
}

TEST(Outline, ArcAndHollowHeelAreEachOthersOpposite) {
  Board arc = octaves(), hollow = octaves();
  arc.board.heel = Heel::arc;
  hollow.board.heel = Heel::hollow;
  arc.board.heel_arc_radius = hollow.board.heel_arc_radius = 60;
  const Layout out = sound(arc), in = sound(hollow), square = sound(octaves());
  expect_closed_and_positive(out.outline);
  expect_closed_and_positive(in.outline);
  // Between the apex line and the arc: rectangle less circular segment.
  const double half = std::asin(28.0 / 60), sagitta = 60 * (1 - std::cos(half));
  const double lost = 56 * sagitta - 60 * 60 * (half - std::sin(half) * std::cos(half));
  EXPECT_NEAR(area(square.outline) - area(out.outline), lost, 1e-9);
  EXPECT_NEAR(area(in.outline) - area(square.outline), lost, 1e-9);
  EXPECT_NEAR(out.outline[1].at(0.5).x, 384, 1e-12);
  EXPECT_NEAR(in.outline[1].at(0.5).x, 384, 1e-12);
  EXPECT_NEAR(out.edges[0].b.x, 324 + std::sqrt(3600.0 - 784), 1e-12);
}

TEST(Outline, CornersOfRoundHeelsTouchArcAndEdge) {
  for (Heel heel : {Heel::arc, Heel::hollow})
    for (double slope : {0.0, 12.0}) {
      Board board = octaves();
      board.strings.saddle_spread += slope;
      board.board.heel = heel;
      board.board.heel_arc_radius = 60;
      board.board.corner_radius = 4;
      board.board.past_last_fret = 14;
      const Layout layout = sound(board);
      ASSERT_EQ(layout.outline.size(), 6u);
      expect_closed_and_positive(layout.outline);
      for (std::size_t i = 0; i < 4; ++i) expect_tangent(layout.outline[i], layout.outline[i + 1]);
      const CurveSegment &corner = layout.outline[1], &arc = layout.outline[2];
      EXPECT_NEAR(distance(corner.centre, arc.centre), heel == Heel::arc ? 56 : 64, 1e-12);
      const Point along = unit(layout.edges[0].b - layout.edges[0].a);
      EXPECT_NEAR(cross(along, corner.centre - layout.edges[0].a), 4, 1e-12);
      EXPECT_NEAR(distance(corner.a, corner.centre), 4, 1e-12);
      EXPECT_NEAR(distance(corner.b, corner.centre), 4, 1e-12);
      EXPECT_NEAR(distance(corner.b, arc.centre), 60, 1e-12);
      EXPECT_LT(std::abs(corner.sweep), pi);
      EXPECT_LT(std::abs(arc.sweep), pi);
    }
}

TEST(Outline, FanEndsRunAlongNutAndLastFret) {
  for (double corner : {0.0, 5.0}) {
    Board board = fan();
    board.board.corner_radius = corner;
    board.board.past_last_fret = 9;
    const Layout layout = sound(board);
    expect_closed_and_positive(layout.outline);
    const FretLine& last = layout.frets.back();
    const CurveSegment& heel = layout.outline[corner > 0 ? 2 : 1];
    EXPECT_NEAR(cross(unit(heel.b - heel.a), unit(last.treble - last.bass)), 0, 1e-14);
    const CurveSegment& nut = layout.outline.back();
    EXPECT_NEAR(cross(unit(nut.b - nut.a), layout.nut_direction), 0, 1e-14);
    EXPECT_NEAR(nut.a.x - nut.a.y * (nut.b.x - nut.a.x) / (nut.b.y - nut.a.y), -6, 1e-12);
    if (corner > 0)
      for (std::size_t i = 0; i < 4; ++i) expect_tangent(layout.outline[i], layout.outline[i + 1]);
  }
}

TEST(Outline, HalfRoundHeelsCloseWithoutASlit) {
  Board corners = octaves();
  corners.board.past_last_fret = 40;
  corners.board.corner_radius = 28;
  Board arc = corners;
  arc.board.corner_radius = 0;
  arc.board.heel = Heel::arc;
  arc.board.heel_arc_radius = 28;
  const Layout a = sound(corners), b = sound(arc);
  expect_closed_and_positive(a.outline);
  expect_closed_and_positive(b.outline);
  EXPECT_EQ(a.outline.size(), 5u);
  EXPECT_NEAR(area(a.outline), 423 * 56 - 2 * (1 - pi / 4) * 784, 1e-9);
  EXPECT_NEAR(area(b.outline), area(a.outline), 1e-9);
}

TEST(Outline, AllWaysOfGivingTheWidthAgree) {
  Board margin = octaves();
  margin.strings.saddle_spread = 60;
  const Layout a = sound(margin);
  EXPECT_DOUBLE_EQ(a.half_width(0), 28);
  EXPECT_DOUBLE_EQ(a.half_width(384), (50 + 10.0 * 384 / 400) / 2 + 3);
  Board ends = margin;
  ends.board.edge_margin.reset();
  ends.board.nut_margin = ends.board.heel_margin = 3;
  Board widths = margin;
  widths.board.edge_margin.reset();
  widths.board.nut_width = 56;
  widths.board.heel_width = 2 * a.half_width(384);
  for (const Board& board : {ends, widths}) {
    const Layout b = sound(board);
    for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(distance(a.outline[i].a, b.outline[i].a), 0, 1e-12);
  }
}

TEST(Outline, LeftHandedIsTheMirror) {
  for (Board board : {octaves(), fan(), steep_fan()}) {
    board.side_dots = SideDots{};
    board.side_dots->frets = {3};
    board.pins = Pins{};
    board.pins->at = {{100, 7}};
    board.board.corner_radius = 2;
    Inlay dot;
    dot.frets = {3};
    dot.double_frets = {2};
    dot.shift_across = 1;
    dot.depth = 2;
    board.inlays = {dot};
    const Layout right = sound(board);
    board.hand = Hand::left;
    const Layout left = sound(board);
    const auto image = [](Point p) { return Point{p.x, -p.y}; };
    ASSERT_EQ(left.outline.size(), right.outline.size());
    EXPECT_EQ(area(left.outline) > 0, true);
    EXPECT_NEAR(area(left.outline), area(right.outline), 1e-9);
    EXPECT_EQ(left.edges[0], (LineSegment{image(right.edges[1].a), image(right.edges[1].b)}));
    EXPECT_LT(left.edges[0].a.y, 0);
    EXPECT_EQ(left.outline[0].a, left.edges[0].a);
    EXPECT_EQ(left.outline[0].b, left.edges[0].b);
    EXPECT_EQ(left.outline.back().a, left.edges[1].a);
    expect_closed_and_positive(left.outline);
    for (std::size_t i = 0; i < right.frets.size(); ++i) {
      EXPECT_EQ(left.frets[i].bass, image(right.frets[i].bass));
      EXPECT_EQ(left.frets[i].treble_edge, image(right.frets[i].treble_edge));
      EXPECT_EQ(left.frets[i].bass_from_nut, right.frets[i].bass_from_nut);
    }
    for (std::size_t i = 0; i < right.slots.size(); ++i)
      EXPECT_EQ(left.slots[i].bass_end, image(right.slots[i].bass_end));
    for (std::size_t i = 0; i < right.markers.size(); ++i)
      EXPECT_EQ(left.markers[i].centre, image(right.markers[i].centre));
    EXPECT_EQ(left.pins[0].centre, (Point{100, -7}));
    EXPECT_EQ(left.side_dots[0].mouth, image(right.side_dots[0].mouth));
    EXPECT_LT(left.side_dots[0].inward.y, 0);
    EXPECT_GT(left.nut_direction.y, 0);
    EXPECT_EQ(left.nut_direction.x, -right.nut_direction.x);
    EXPECT_EQ(left.strip.low.y, -right.strip.high.y);
    EXPECT_NEAR(left.blank.low.y, -right.blank.high.y, 1e-12);
  }
}

}  // namespace
}  // namespace sagitta
