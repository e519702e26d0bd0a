// Necks of every kind, anywhere in their files, and what is said of them.

#include "export/input/NeckZoo.hpp"

namespace sagitta::test {
namespace {

TEST_F(NeckZoo, AsTheBoardLies) { expect_good(read(bar())); }

TEST_F(NeckZoo, EndForEnd) { expect_good(read(moved_by(bar(), about(gp::OZ(), 180)))); }

TEST_F(NeckZoo, AlongY) { expect_good(read(moved_by(bar(), about(gp::OZ(), 90)))); }

TEST_F(NeckZoo, UpsideDown) { expect_good(read(moved_by(bar(), about(gp::OX(), 180)))); }

TEST_F(NeckZoo, OnItsSide) { expect_good(read(moved_by(bar(), about(gp::OX(), 90)))); }

TEST_F(NeckZoo, StandingUp) { expect_good(read(moved_by(bar(), about(gp::OY(), 90)))); }

TEST_F(NeckZoo, Anywhere) {
  const NeckReading reading = read(moved_by(bar(), somewhere()));
  expect_good(reading);
  EXPECT_TRUE(is_found(reading, "glue-face-elsewhere"));
  const gp_Pnt zero = gp_Pnt(0, 0, 0).Transformed(somewhere());
  EXPECT_NEAR(reading.shape->place.origin[0], zero.X(), within);
  EXPECT_NEAR(reading.shape->place.origin[1], zero.Y(), within);
  EXPECT_NEAR(reading.shape->place.origin[2], zero.Z(), within);
}

TEST_F(NeckZoo, InInchesAnywhere) { expect_good(read(moved_by(bar(), somewhere()), "INCH")); }

// 90 wide and 150 long, stepped down by 2: its face is larger than that of the neck, 300 long here.
TEST_F(NeckZoo, HeadstockLargerThanTheNeck) {
  board.scale.length = 400;
  const double length = layout().heel_end - 4;
  const TopoDS_Shape neck = joined(bar({}, length), box(-150, -60, -16, 0, 60, -2));
  expect_good(read(neck));
  expect_good(read(moved_by(neck, somewhere())));
}

// The headstock lies in the plane of the glue face.
TEST_F(NeckZoo, HeadstockInThePlaneOfTheGlueFace) {
  const TopoDS_Shape neck = joined(bar(), box(-150, -40, -16, 0, 40, 0));
  expect_good(read(neck));
}

// A body 400 x 330, its top 4 above the glue face, with room for the board's end.
TEST_F(NeckZoo, BodyJoined) {
  board.neck->body_at = 330;
  const TopoDS_Shape body = cut(box(330, -165, -40, 760, 165, 4), box(320, -32, 0, 480, 32, 10));
  const TopoDS_Shape neck = joined(bar(), body);
  expect_good(read(neck));
  expect_good(read(moved_by(neck, somewhere())));
}

// The same without that room: the body rises 4 into the board's place from x = 330 on.
TEST_F(NeckZoo, BodyThatRisesIntoTheBoard) {
  board.neck->body_at = 330;
  const NeckReading reading = read(joined(bar(), box(330, -165, -40, 760, 165, 4)));
  ASSERT_TRUE(reading.shape) << reading.failure;
  ASSERT_TRUE(is_measured(*reading.shape));
  const double from = layout().half_width(330), end = layout().heel_end, to = layout().half_width(end);
  const auto into = measured_by(reading, "neck-into-board");
  ASSERT_TRUE(into);
  EXPECT_NEAR(into->value, (4 - 0.01) * (end - 330) * (from + to), 1);
}

TEST_F(NeckZoo, GlueFaceSplitAcross) {
  const Corners whole = corners();
  const double half = layout().half_width(200);
  const Corners first{whole[0], {200, -half, 0}, {200, half, 0}, whole[3]};
  const Corners second{gp_Pnt(200, -half, 0), whole[1], whole[2], gp_Pnt(200, half, 0)};
  const TopoDS_Shape neck = beside(bar_under(first), bar_under(second));
  const NeckReading reading = read(moved_by(neck, somewhere()));
  expect_good(reading);
  EXPECT_EQ(reading.shape->solids, 2);
}

TEST_F(NeckZoo, TwoSolidsSideBySide) {
  const TopoDS_Shape neck = bar();
  const TopoDS_Shape left = cut(neck, box(-10, 0, -50, 500, 100, 50));
  const TopoDS_Shape right = cut(neck, box(-10, -100, -50, 500, 0, 50));
  expect_good(read(moved_by(beside(left, right), somewhere())));
}

// The glue face is the mantle of a cylinder along y that sags 0.3 over the neck.
TEST_F(NeckZoo, BowedByThreeTenths) {
  constexpr double sag = 0.3;
  const double radius = long_ * long_ / (8 * sag) + sag / 2;
  const TopoDS_Shape tool =
      BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(long_ / 2, -100, radius - sag), gp::DY()), radius, 200).Shape();
  const NeckReading reading = read(moved_by(cut(bar(), tool), somewhere()));
  ASSERT_TRUE(reading.shape) << reading.failure;
  ASSERT_TRUE(is_measured(*reading.shape));
  EXPECT_FALSE(reading.shape->planar);
  const auto bow = measured_by(reading, "glue-face-bowed");
  ASSERT_TRUE(bow);
  EXPECT_NEAR(bow->value, sag, within);
  EXPECT_FALSE(is_found(reading, "glue-face-twisted"));
  EXPECT_FALSE(is_found(reading, "neck-into-board"));
}

TEST_F(NeckZoo, TwistedByTwoTenths) {
  Corners top = corners();
  top[2].SetZ(0.2);
  Corners back = corners();
  for (std::size_t i = 0; i < 4; ++i) back[i].SetCoord(back[i].X(), back[i].Y() + (i < 2 ? 4 : -4), -20);
  std::vector<TopoDS_Face> faces{ruled(top[0], top[1], top[2], top[3]), flat(back[0], back[1], back[2], back[3])};
  for (std::size_t i = 0; i < 4; ++i) faces.push_back(ruled(top[i], top[(i + 1) % 4], back[(i + 1) % 4], back[i]));
  const NeckReading reading = read(moved_by(solid_of(faces), somewhere()));
  ASSERT_TRUE(reading.shape) << reading.failure;
  ASSERT_TRUE(is_measured(*reading.shape));
  const auto twist = measured_by(reading, "glue-face-twisted");
  ASSERT_TRUE(twist);
  EXPECT_NEAR(twist->value, 0.2, within);
}

TEST_F(NeckZoo, TaperedWrongly) {
  const NeckReading reading = read(bar({0, 0.4, 0, 0.4}));
  expect_sides(reading, 0.4, 0);
  const auto outside = measured_by(reading, "neck-outside-board");
  EXPECT_NEAR(outside->at[0], layout().heel_end, 0.01) << "where the board ends";
}

TEST_F(NeckZoo, TooNarrowOnOneSide) { expect_sides(read(bar({-0.15, -0.15, 0, 0})), 0, 0.15); }

// Elsewhere in its file the rod channel tells where the middle is.
TEST_F(NeckZoo, TooNarrowOnOneSideAnywhere) {
  const NeckReading reading = read(moved_by(with_channel(bar({0, 0, -0.15, -0.15})), somewhere()));
  expect_sides(reading, 0, 0.15);
  EXPECT_EQ(measured_by(reading, "board-outside-neck")->where.part, FeatureId::upper);
}

// Without a channel nothing tells the sides apart: half on each.
TEST_F(NeckZoo, TooNarrowSomewhereIsSharedBySides) {
  const NeckReading reading = read(moved_by(bar({0, 0, -0.15, -0.15}), somewhere()));
  expect_sides(reading, -0.075, 0.075);
}

TEST_F(NeckZoo, WithItsChannel) {
  board.neck->channel_width = 6;
  board.neck->channel_depth = 10;
  board.neck->channel_from = 20;
  board.neck->channel_to = 400;
  const NeckReading reading = read(moved_by(with_channel(bar()), somewhere()));
  expect_good(reading);
  EXPECT_FALSE(is_found(reading, "channel-missing"));
  EXPECT_FALSE(is_found(reading, "channel-differs"));
  const auto channel = channel_in(*reading.shape);
  ASSERT_TRUE(channel && channel->depth);
  EXPECT_NEAR(*channel->depth, 10, within);
  EXPECT_NEAR(channel->width, 6, within);
  EXPECT_NEAR(channel->from, 20, within);
  EXPECT_NEAR(channel->to, 400, within);
}

TEST_F(NeckZoo, ChannelMissing) {
  board.neck->channel_width = 6;
  EXPECT_TRUE(is_found(read(bar()), "channel-missing"));
}

TEST_F(NeckZoo, ChannelTooDeep) {
  board.neck->channel_width = 6;
  board.neck->channel_depth = 10;
  const NeckReading reading = read(with_channel(bar(), 18));
  const auto differs = measured_by(reading, "channel-differs");
  ASSERT_TRUE(differs);
  EXPECT_NEAR(differs->value, 8, within);
  board.neck->channel_depth.reset();
  EXPECT_TRUE(is_found(reading, "channel-deep"));
}

// The glue face carries on to the body's end, 900 long.
TEST_F(NeckZoo, ThroughTheBody) {
  board.neck->joint = NeckJoint::through;
  const TopoDS_Shape neck = joined(bar({}, 880), box(330, -165, -45, 880, 165, -3));
  expect_good(read(neck));
}

TEST_F(NeckZoo, SheetBodyIsRefused) {
  const TopoDS_Shape neck = bar();
  TopExp_Explorer faces(neck, TopAbs_FACE);
  const NeckReading reading = read(faces.Current());
  EXPECT_FALSE(reading.shape);
  EXPECT_TRUE(is_found(reading, "neck-file-unread"));
}

// The two long edges of the glue face rounded by 1: the sides are where the rounding ends.
TEST_F(NeckZoo, FilletsAtTheEdge) {
  const double a = nut_half, b = layout().half_width(long_);
  const TopoDS_Face top = flat({0, -a, 0}, {long_, -b, 0}, {long_, b, 0}, {0, a, 0});
  const TopoDS_Shape straight = BRepPrimAPI_MakePrism(top, gp_Vec(0, 0, -20)).Shape();
  BRepFilletAPI_MakeFillet fillet(straight);
  for (TopExp_Explorer it(straight, TopAbs_EDGE); it.More(); it.Next()) {
    TopExp_Explorer ends(it.Current(), TopAbs_VERTEX);
    const gp_Pnt first = BRep_Tool::Pnt(TopoDS::Vertex(ends.Current()));
    ends.Next();
    const gp_Pnt last = BRep_Tool::Pnt(TopoDS::Vertex(ends.Current()));
    if (first.Z() == 0 && last.Z() == 0 && std::abs(first.X() - last.X()) > 1)
      fillet.Add(1, TopoDS::Edge(it.Current()));
  }
  const NeckReading reading = read(fillet.Shape());
  expect_sides(reading, 0, 0);
  const auto rounded = measured_by(reading, "neck-edge-rounded");
  ASSERT_TRUE(rounded);
  EXPECT_NEAR(rounded->value, 1, within);
  EXPECT_TRUE(is_found(reading, "neck-edge-rounded"));
}

TEST_F(NeckZoo, WithTheBoardOnIt) {
  const double a = nut_half, end = layout().heel_end, b = layout().half_width(end);
  const TopoDS_Face under = flat({0, -a, 0}, {end, -b, 0}, {end, b, 0}, {0, a, 0});
  const TopoDS_Shape lying = BRepPrimAPI_MakePrism(under, gp_Vec(0, 0, 6.35)).Shape();
  const NeckReading reading = read(moved_by(beside(bar(), lying), somewhere()));
  expect_sides(reading, 0, 0);
  EXPECT_EQ(reading.shape->boards, 1);
  EXPECT_TRUE(is_found(reading, "board-in-neck-file"));
  EXPECT_FALSE(is_found(reading, "neck-into-board"));
}

// A fan of frets: the nut line slants, and the neck's end with it. Mirrored it fits only the other hand's board.
TEST_F(NeckZoo, MirroredIsForTheOtherHand) {
  board.scale.length.reset();
  board.scale.bass = 660;
  board.scale.treble = 625;
  board.scale.square_fret = 7;
  const Layout fan = layout();
  const LineSegment low = fan.edges[0], high = fan.edges[1];
  const auto at = [](const LineSegment& edge, double x) {
    return edge.a.y + (edge.b.y - edge.a.y) * (x - edge.a.x) / (edge.b.x - edge.a.x);
  };
  const auto nut = [](const LineSegment& edge) { return edge.a.x < edge.b.x ? edge.a : edge.b; };
  const Corners top{gp_Pnt(nut(low).x, nut(low).y, 0), gp_Pnt(430, at(low, 430), 0), gp_Pnt(430, at(high, 430), 0),
                    gp_Pnt(nut(high).x, nut(high).y, 0)};
  expect_good(read(moved_by(bar_under(top), somewhere())));
  gp_Trsf mirror;
  mirror.SetMirror(gp_Ax2(gp_Pnt(0, 0, 0), gp::DY()));
  const NeckReading other = read(moved_by(moved_by(bar_under(top), mirror), somewhere()));
  ASSERT_TRUE(other.shape) << other.failure;
  EXPECT_TRUE(is_found(other, "neck-other-hand"));
  EXPECT_FALSE(measured_by(other, "neck-outside-board"));
}

// Sides that run parallel, both ends alike: which is the nut's cannot be told.
TEST_F(NeckZoo, WithoutTaperNothingIsSure) {
  board.board.heel_width = board.board.nut_width;
  expect_no_number(read(moved_by(bar(), somewhere())));
  const NeckReading given = [&] {
    const gp_Pnt nut = gp_Pnt(0, 0, 0).Transformed(somewhere()), heel = gp_Pnt(400, 0, 0).Transformed(somewhere());
    board.neck->file_nut = {nut.X(), nut.Y(), nut.Z()};
    board.neck->file_heel = {heel.X(), heel.Y(), heel.Z()};
    return read(moved_by(bar(), somewhere()));
  }();
  expect_good(given);
}

// Half a neck: only 60 % of the board lies on it.
TEST_F(NeckZoo, TooShortIsNoMeasurement) { expect_no_number(read(bar({}, 270))); }

// A plank without any likeness.
TEST_F(NeckZoo, APlankIsNoNeck) { expect_no_number(read(box(0, -100, -20, 600, 100, 0))); }

}  // namespace
}  // namespace sagitta::test
