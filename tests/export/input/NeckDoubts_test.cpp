// Necks whose file leaves a doubt: a plain back, another unit, a damaged border, holes and bodies beside their place.

#include <fstream>
#include <regex>

#include "export/input/NeckZoo.hpp"

namespace sagitta::test {
namespace {

class NeckDoubts : public NeckZoo {
 protected:
  /// A bar whose back is its glue face over again, 20 lower.
  TopoDS_Shape prism() const {
    const Corners top = corners();
    return BRepPrimAPI_MakePrism(flat(top[0], top[1], top[2], top[3]), gp_Vec(0, 0, -20)).Shape();
  }
  TopoDS_Shape scaled(const TopoDS_Shape& shape, double times) const {
    gp_Trsf scale;
    scale.SetScale(gp_Pnt(0, 0, 0), times);
    return moved_by(shape, scale);
  }
  NeckReading read_text(const std::string& text) const {
    write_file(scratch / "changed.step", text);
    return read_neck((scratch / "changed.step").string(), board_seat(bare(board)));
  }
  /// The file that was read last, as text.
  std::string text() const {
    std::ifstream in(scratch / "neck.step");
    return {std::istreambuf_iterator<char>(in), {}};
  }
};

// The two faces fit as well as each other: the board's own frame decides, else the face that looks up.
TEST_F(NeckDoubts, APlainBackInTheBoardsFrame) {
  const NeckReading reading = read(prism());
  expect_good(reading);
  EXPECT_EQ(reading.shape->place.chosen, ChosenBy::frame);
}

TEST_F(NeckDoubts, APlainBackElsewhereTakesTheFaceThatLooksUp) {
  for (const double turn : {0.0, 90.0, 180.0, 270.0, 33.0}) {
    const NeckReading reading = read(moved_by(prism(), by(5, -7, 20) * about(gp::OZ(), turn)));
    expect_good(reading);
    ASSERT_TRUE(reading.shape);
    EXPECT_EQ(reading.shape->place.chosen, ChosenBy::upward) << turn;
    EXPECT_NEAR(reading.shape->place.origin[2], 20, within) << turn;
    EXPECT_NEAR(reading.shape->place.up[2], 1, 1e-9) << turn;
    EXPECT_TRUE(is_found(reading, "glue-face-elsewhere")) << turn;
  }
}

// Upside down its back looks up, 20 over its glue face.
TEST_F(NeckDoubts, APlainBackUpsideDown) {
  const NeckReading reading = read(moved_by(prism(), about(gp::OX(), 180)));
  expect_good(reading);
  EXPECT_EQ(reading.shape->place.chosen, ChosenBy::upward);
  EXPECT_NEAR(reading.shape->place.origin[2], 20, within);
}

TEST_F(NeckDoubts, APlainBackOnItsSideIsNotSure) {
  expect_no_number(read(moved_by(prism(), about(gp::OX(), 90))));
  expect_no_number(read(moved_by(prism(), about(gp::OY(), 90))));
  expect_no_number(read(moved_by(prism(), somewhere())));
}

TEST_F(NeckDoubts, AShapedBackIsChosenByItsFit) {
  EXPECT_EQ(read(bar()).shape->place.chosen, ChosenBy::fit);
  EXPECT_EQ(read(moved_by(bar(), somewhere())).shape->place.chosen, ChosenBy::fit);
}

// Turned over about its own centre line both ends stay where they are, and it is told all the same.
TEST_F(NeckDoubts, UpsideDownIsTold) {
  const NeckReading reading = read(moved_by(bar(), about(gp::OX(), 180)));
  const auto elsewhere = measured_by(reading, "glue-face-elsewhere");
  ASSERT_TRUE(elsewhere);
  EXPECT_NEAR(elsewhere->value, 2 * heel_half, within) << "a side at the heel end lies where the other is";
  EXPECT_FALSE(is_found(read(bar()), "glue-face-elsewhere"));
}

TEST_F(NeckDoubts, InAnotherUnitThanItsFileSays) {
  for (const double times : {25.4, 1 / 25.4, 10.0, 0.1}) {
    const NeckReading reading = read(scaled(with_channel(bar()), 1 / times));
    ASSERT_TRUE(reading.shape) << reading.failure;
    EXPECT_NEAR(reading.shape->times, times, 1e-9);
    const auto doubtful = measured_by(reading, "neck-unit-doubtful");
    ASSERT_TRUE(doubtful) << times;
    EXPECT_NEAR(doubtful->value, std::max(times, 1 / times), 1e-9);
    for (const char* name : {"neck-not-found", "neck-outside-board", "board-outside-neck", "channel-differs"})
      EXPECT_FALSE(measured_by(reading, name)) << name;
  }
}

// Numbers in millimetres that the file calls inches, and the other way round.
TEST_F(NeckDoubts, InchesForMillimetres) {
  const NeckReading large = read(scaled(bar(), 25.4), "INCH");
  ASSERT_TRUE(large.shape) << large.failure;
  EXPECT_NEAR(large.shape->times, 1 / 25.4, 1e-9);
  EXPECT_EQ(read(bar(), "INCH").shape->times, 1);
}

// One corner of the glue face moved by 0.4 in the text, and nothing that ends there with it.
TEST_F(NeckDoubts, WithADamagedBorderIsRefused) {
  ASSERT_TRUE(read(bar()).shape);
  const std::string good = text();
  std::smatch vertex;
  std::string rest = good;
  std::string changed;
  while (std::regex_search(rest, vertex, std::regex(R"(VERTEX_POINT\('',#(\d+)\))"))) {
    const std::regex point("(#" + vertex[1].str() + R"( = CARTESIAN_POINT\(''\s*,\(0\.,)26\.(,0\.\)\);))");
    if (std::regex_search(good, point)) changed = std::regex_replace(good, point, "$1 26.4$2");
    rest = vertex.suffix();
  }
  ASSERT_FALSE(changed.empty());
  const NeckReading reading = read_text(changed);
  EXPECT_FALSE(reading.shape);
  EXPECT_TRUE(is_found(reading, "neck-file-unread"));
  EXPECT_TRUE(read_text(good).shape);
}

TEST_F(NeckDoubts, PinHolesBesideTheirPlace) {
  board.pins.emplace();
  board.pins->diameter = 3;
  board.pins->at = {{60, 10}, {380, -12}};
  const auto bored = [&](double off) {
    TopoDS_Shape neck = bar();
    for (const auto& [x, y] : {std::pair{60.0, 10.0}, {380.0, -12.0}})
      neck = cut(neck,
                 BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(x + (x > 100 ? off : 0), y, -6), gp::DZ()), 1.5, 10).Shape());
    return neck;
  };
  EXPECT_FALSE(is_found(read(bored(0)), "pin-hole-differs"));
  const NeckReading reading = read(bored(0.3));
  const auto differs = measured_by(reading, "pin-hole-differs", 0.1);
  ASSERT_TRUE(differs);
  EXPECT_NEAR(differs->value, 0.3, within);
  EXPECT_NEAR(differs->at[0], 380, within);
}

TEST_F(NeckDoubts, TheBodyBeginsBesideTheJoint) {
  const TopoDS_Shape body = cut(box(330, -165, -40, 760, 165, 4), box(320, -32, 0, 480, 32, 10));
  const NeckReading reading = read(moved_by(joined(bar(), body), somewhere()));
  ASSERT_TRUE(reading.shape) << reading.failure;
  ASSERT_TRUE(reading.shape->body_from);
  EXPECT_NEAR(*reading.shape->body_from, 330, within);
  board.neck->body_at = 331.5;
  EXPECT_NEAR(measured_by(reading, "body-end-differs", 0)->value, 1.5, within);
  board.neck->body_at = 330.4;
  EXPECT_FALSE(is_found(reading, "body-end-differs"));
  EXPECT_FALSE(read(bar()).shape->body_from);
}

// Nobody gave the joint: the room in the body is 32 on each side of the centre line, and no side of the neck.
TEST_F(NeckDoubts, SidesEndWhereTheBodyBegins) {
  const TopoDS_Shape body = cut(box(330, -165, -40, 760, 165, 4), box(320, -32, 0, 480, 32, 10));
  expect_sides(read(joined(bar(), body)), 0, 0);
}

// Parts with places of their own, as a program for assemblies writes them.
TEST_F(NeckDoubts, AsAnAssembly) {
  TopoDS_Shape neck = bar();
  TopoDS_Shape head = box(-150, -40, -16, 0, 40, -2);
  neck.Move(TopLoc_Location(somewhere()));
  head.Move(TopLoc_Location(somewhere()));
  Interface_Static::SetIVal("write.step.assembly", 1);
  const NeckReading reading = read(beside(neck, head));
  Interface_Static::SetIVal("write.step.assembly", 0);
  expect_good(reading);
  EXPECT_EQ(reading.shape->solids, 2);
}

}  // namespace
}  // namespace sagitta::test
