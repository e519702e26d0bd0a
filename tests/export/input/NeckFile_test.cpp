// Necks made here from the kernel's primitives, written as STEP, and read back in the process with limits.

#include "solid/NeckFile.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepBuilderAPI_Sewing.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepFill.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Controller.hxx>
#include <STEPControl_Writer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <cmath>
#include <nlohmann/json.hpp>

#include "board/Writer.hpp"
#include "export/CommandLine.hpp"
#include "findings/Findings.hpp"
#include "findings/GoodBoard.hpp"
#include "made/WorkshopTime.hpp"
#include "neck/NeckShape.hpp"

namespace sagitta::test {
namespace {

using json = nlohmann::json;

// The board: 52 wide at x = 0 and 60 at its heel end; the neck runs from x = 0 to 430, a little less.
constexpr double nut_half = 26, heel_half = 30, length_ = 430;

TopoDS_Face quadrangle(const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c, const gp_Pnt& d) {
  return TopoDS::Face(BRepFill::Face(BRepBuilderAPI_MakeEdge(a, b), BRepBuilderAPI_MakeEdge(d, c)));
}

/// The neck's half width at x, so that it is as wide as the board where `out` is 0.
struct Sides {
  double nut_out = 0, heel_out = 0;  ///< beyond the board on each side at x = 0 and at its end
};

class NeckFile : public ::testing::Test {
 protected:
  NeckFile() {
    board.scale.length = 640;
    board.scale.frets = 19;
    board.strings = {6, 45, 55, StringSpacing::equal_centres, {}, 1, {}};
    board.board.nut_width = 2 * nut_half;
    board.board.heel_width = 2 * heel_half;
    board.board.thickness = 6.35;
    board.nut.seat = NutSeat::none;
    board.neck = Neck{};
    layout = std::get<Layout>(lay_out(board));
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  }

  double half_at(double x) const { return layout.half_width(x); }

  /// A tapered bar 20 thick, its glue face at z = 0.
  TopoDS_Shape bar(const Sides& sides = {}) const {
    const double a = nut_half + sides.nut_out, b = half_at(length_) + sides.heel_out;
    BRepBuilderAPI_MakeWire wire(BRepBuilderAPI_MakeEdge(gp_Pnt(0, -a, -20), gp_Pnt(length_, -b, -20)),
                                 BRepBuilderAPI_MakeEdge(gp_Pnt(length_, -b, -20), gp_Pnt(length_, b, -20)),
                                 BRepBuilderAPI_MakeEdge(gp_Pnt(length_, b, -20), gp_Pnt(0, a, -20)),
                                 BRepBuilderAPI_MakeEdge(gp_Pnt(0, a, -20), gp_Pnt(0, -a, -20)));
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire()).Face(), gp_Vec(0, 0, 20));
  }

  std::string write(const TopoDS_Shape& shape, const char* unit = "MM") const {
    const std::string path = scratch / "neck.step";
    STEPControl_Controller::Init();  // brings the settings into being
    Interface_Static::SetCVal("write.step.unit", unit);
    STEPControl_Writer writer;
    EXPECT_EQ(writer.Transfer(shape, STEPControl_AsIs), IFSelect_RetDone);
    EXPECT_EQ(writer.Write(path.c_str()), IFSelect_RetDone);
    Interface_Static::SetCVal("write.step.unit", "MM");
    return path;
  }

  NeckReading read(const TopoDS_Shape& shape, const char* unit = "MM") const {
    return read_neck(write(shape, unit), board_seat(bare(board)));
  }

  /// The board without its inlays.
  PreparedBoard bare(const Board& with) const {
    return {{with, layout, surface_of(board, layout), with}, std::make_shared<const FittedInlays>()};
  }

  /// The value of a finding, with a limit that nothing meets.
  double value(const NeckReading& reading, const std::string& name) const {
    Board strict = board;
    strict.limits[name] = -1e6;
    for (const Finding& finding : findings_of(bare(strict), &reading))
      if (finding.name == name) return finding.value;
    ADD_FAILURE() << name << " was not measured: " << reading.failure;
    return 1e9;
  }

  bool is_found(const NeckReading& reading, const std::string& name) const {
    for (const Finding& finding : findings_of(bare(board), &reading))
      if (finding.name == name) return true;
    return false;
  }

  ScratchFolder scratch;
  Board board;
  Layout layout;
};

TEST_F(NeckFile, ThatFitsIsQuiet) {
  const NeckReading reading = read(bar());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_EQ(reading.shape->solids, 1);
  EXPECT_EQ(reading.shape->faces, 6);
  EXPECT_TRUE(reading.shape->planar);
  ASSERT_EQ(reading.shape->outlines.size(), 1U);
  for (const char* name : {"neck-outside-board", "neck-into-board", "board-outside-neck", "glue-face-tilted",
                           "glue-face-twisted", "glue-face-elsewhere", "channel-differs", "neck-file-unread"})
    EXPECT_FALSE(is_found(reading, name)) << name;
}

TEST_F(NeckFile, WiderOrNarrowerIsMeasuredOnEachSide) {
  const NeckReading wide = read(bar({0.1, 0.35}));
  EXPECT_NEAR(value(wide, "neck-outside-board"), 0.35, 0.01);
  EXPECT_TRUE(is_found(wide, "neck-outside-board"));
  EXPECT_FALSE(is_found(wide, "board-outside-neck"));
  const NeckReading narrow = read(bar({-0.8, -0.2}));
  EXPECT_NEAR(value(narrow, "board-outside-neck"), 0.8, 0.01);
  EXPECT_NEAR(value(narrow, "neck-outside-board"), -0.2, 0.01);
  EXPECT_FALSE(is_found(narrow, "neck-outside-board"));
  board.neck->state = NeckState::rough;
  board.neck->trim = 0.5;
  EXPECT_NEAR(value(wide, "neck-outside-board"), 0.35 - 0.5, 0.01);
  EXPECT_FALSE(is_found(wide, "neck-outside-board")) << "a rough neck is wider by its trim";
}

// Turned in its plane about x = 0, so that the far end lies 0.2 to one side: the neck is sound, only drawn askew.
TEST_F(NeckFile, DrawnAskewIsSetStraight) {
  gp_Trsf turn;
  turn.SetRotation(gp::OZ(), 0.2 / length_);
  const NeckReading reading = read(BRepBuilderAPI_Transform(bar(), turn, true).Shape());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_NEAR(value(reading, "neck-outside-board"), 0, 0.01);
  EXPECT_NEAR(reading.shape->place.along[1], 0.2 / length_, 1e-5);
}

// One corner of the glue face stands 0.2 above the plane of the other three: no plane holds it.
TEST_F(NeckFile, TwistedByTwoTenthsIsReported) {
  const double a = nut_half, b = half_at(length_);
  const gp_Pnt low[] = {{0, -a, -20}, {length_, -b, -20}, {length_, b, -20}, {0, a, -20}};
  const gp_Pnt top[] = {{0, -a, 0}, {length_, -b, 0}, {length_, b, 0.2}, {0, a, 0}};
  BRepBuilderAPI_Sewing sewing(1e-6);
  sewing.Add(quadrangle(top[0], top[1], top[2], top[3]));
  sewing.Add(quadrangle(low[3], low[2], low[1], low[0]));
  for (int i = 0; i < 4; ++i) sewing.Add(quadrangle(low[i], low[(i + 1) % 4], top[(i + 1) % 4], top[i]));
  sewing.Perform();
  const NeckReading reading = read(sewing.SewedShape());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_FALSE(reading.shape->planar);
  EXPECT_NEAR(value(reading, "glue-face-twisted"), 0.2, 0.01);
  EXPECT_TRUE(is_found(reading, "glue-face-twisted"));
}

TEST_F(NeckFile, InInchesIsReadInMillimetres) {
  const NeckReading inches = read(bar({0.1, 0.35}), "INCH");
  ASSERT_TRUE(inches.shape) << inches.failure;
  EXPECT_NE(inches.shape->unit.find("INCH"), std::string::npos) << inches.shape->unit;
  EXPECT_NEAR(value(inches, "neck-outside-board"), 0.35, 0.01);
}

// Tilted about the nut by 0.4 mm at the far end: over the board from 0 to its heel end as many times more.
TEST_F(NeckFile, TiltedIsReported) {
  gp_Trsf tilt;
  tilt.SetRotation(gp::OY(), -std::atan(0.4 / length_));
  const NeckReading reading = read(BRepBuilderAPI_Transform(bar(), tilt, true).Shape());
  EXPECT_NEAR(value(reading, "glue-face-tilted"), 0.4 / length_ * (layout.heel_end - layout.nut_end), 0.01);
  EXPECT_TRUE(is_found(reading, "glue-face-tilted"));
  EXPECT_FALSE(is_found(reading, "glue-face-twisted"));
}

TEST_F(NeckFile, ChannelIsFound) {
  const TopoDS_Shape tool = BRepPrimAPI_MakeBox(gp_Pnt(30, -3.175, -10), gp_Pnt(400, 3.175, 5)).Shape();
  const NeckReading reading = read(BRepAlgoAPI_Cut(bar(), tool).Shape());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_EQ(reading.shape->outlines.size(), 2U);
  const auto channel = channel_in(*reading.shape);
  ASSERT_TRUE(channel);
  EXPECT_NEAR(channel->width, 6.35, 0.01);
  EXPECT_NEAR(channel->from, 30, 0.01);
  EXPECT_NEAR(channel->to, 400, 0.01);
  board.neck->channel_width = 6;
  EXPECT_NEAR(value(reading, "channel-differs"), 0.35, 0.01);
  EXPECT_TRUE(is_found(reading, "channel-differs"));
  // Open at the nut end it is a notch in the outline.
  const TopoDS_Shape open_tool = BRepPrimAPI_MakeBox(gp_Pnt(-5, -3.175, -10), gp_Pnt(400, 3.175, 5)).Shape();
  const NeckReading open = read(BRepAlgoAPI_Cut(bar(), open_tool).Shape());
  ASSERT_TRUE(open.shape);
  EXPECT_NEAR(channel_in(*open.shape)->width, 6.35, 0.01);
  EXPECT_FALSE(is_found(open, "neck-outside-board"));
}

// A rod's end 4 in diameter that rises 2 above the glue face stands in the board: pi 4 (2 - 0.01).
TEST_F(NeckFile, ThatStandsInTheBoardIsMeasured) {
  const TopoDS_Shape rod = BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(200, 0, -5), gp::DZ()), 2, 7).Shape();
  const NeckReading reading = read(BRepAlgoAPI_Fuse(bar(), rod).Shape());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_NEAR(reading.shape->interference, std::numbers::pi * 4 * 1.99, 1e-3);
  EXPECT_TRUE(is_found(reading, "neck-into-board"));
}

// Turned on its edge: no face looks up, and the neck is found all the same.
TEST_F(NeckFile, LeaningByFortyFiveDegreesIsFound) {
  gp_Trsf lean;
  lean.SetRotation(gp::OX(), std::numbers::pi / 4);
  const NeckReading reading = read(BRepBuilderAPI_Transform(bar({0.1, 0.35}), lean, true).Shape());
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_NEAR(std::abs(reading.shape->place.up[2]), std::sqrt(0.5), 1e-9);
}

// In the program: the board file, its neck beside it, read by the program run again.
class NeckProgram : public NeckFile {
 protected:
  json findings_with(const std::string& neck) {
    board.neck->file = neck;
    write_file(scratch / "board.toml", write_board(board));
    const Outcome outcome = sagitta("check --json '" + (scratch / "board.toml").string() + "'");
    EXPECT_LT(outcome.code, 2) << outcome.err;
    return json::parse(outcome.out)["findings"];
  }
  std::string failure(const std::string& neck) {
    for (const json& finding : findings_with(neck))
      if (finding["name"] == "neck-file-unread") return finding["message"];
    return "";
  }
};

TEST_F(NeckProgram, ChecksTheNeckBesideTheBoard) {
  write(bar({2, 2}));
  bool found = false;
  for (const json& finding : findings_with("neck.step")) found = found || finding["name"] == "neck-outside-board";
  EXPECT_TRUE(found);
  EXPECT_NE(failure("elsewhere.step").find("is not there"), std::string::npos);
}

// 200 faces: a bar with 65 grooves across its back, read, measured and compared in under a second.
TEST_F(NeckProgram, OfTwoHundredFacesTakesUnderASecond) {
  TopoDS_Shape comb;
  for (int i = 0; i < 65; ++i) {
    const TopoDS_Shape tooth = BRepPrimAPI_MakeBox(gp_Pnt(10 + 6 * i, -40, -25), gp_Pnt(13 + 6 * i, 40, -18)).Shape();
    comb = comb.IsNull() ? tooth : BRepAlgoAPI_Fuse(comb, tooth).Shape();
  }
  const TopoDS_Shape rod = BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(200, 0, -5), gp::DZ()), 2, 7).Shape();
  const std::string path = write(BRepAlgoAPI_Fuse(BRepAlgoAPI_Cut(bar(), comb).Shape(), rod).Shape());
  NeckReading reading;
  const double seconds = workshop_seconds(1, [&] {
    const std::clock_t start = std::clock();
    reading = read_neck(path, board_seat(bare(board)));
    return processor_seconds(start);
  });
  ASSERT_TRUE(reading.shape) << reading.failure;
  EXPECT_GE(reading.shape->faces, 200);
  EXPECT_NEAR(reading.shape->interference, std::numbers::pi * 4 * 1.99, 1e-3);
  std::printf("neck of %d faces: %.3f s\n", reading.shape->faces, seconds);
  EXPECT_LT(seconds, 1);
}

TEST_F(NeckProgram, SurvivesHostileFiles) {
  const std::string good = bytes_of(write(bar()));
  write_file(scratch / "cut.step", good.substr(0, good.size() / 2));
  EXPECT_NE(failure("cut.step"), "");
  write_file(scratch / "text.step", "to be a neck\n");
  EXPECT_NE(failure("text.step"), "");
  write_file(scratch / "empty.step", "");
  EXPECT_NE(failure("empty.step"), "");
  const std::string head = good.substr(0, good.find("DATA;") + 6);
  // References in a circle: a face bound by itself, a shape made of itself.
  write_file(scratch / "circle.step",
             head +
                 "#1=ADVANCED_FACE('',(#2),#1,.T.);\n#2=FACE_OUTER_BOUND('',#2,.T.);\n"
                 "#3=CLOSED_SHELL('',(#1,#3));\n#4=MANIFOLD_SOLID_BREP('',#4);\n"
                 "#5=ADVANCED_BREP_SHAPE_REPRESENTATION('',(#4,#5),#5);\nENDSEC;\nEND-ISO-10303-21;\n");
  EXPECT_NE(failure("circle.step"), "");
  // A long chain of references: a list in a list in a list.
  std::string chain = head;
  for (int i = 1; i < 200000; ++i)
    chain +=
        "#" + std::to_string(i) + "=MAPPED_ITEM('',#" + std::to_string(i + 1) + ",#" + std::to_string(i + 1) + ");\n";
  write_file(scratch / "chain.step", chain + "ENDSEC;\nEND-ISO-10303-21;\n");
  EXPECT_NE(failure("chain.step"), "");
}

// A hundred megabytes of points are refused by their size; sixty are read, within the limits, to no end.
TEST_F(NeckProgram, RefusesAHundredMegabytesOfPoints) {
  const std::string good = bytes_of(write(bar()));
  const std::string head = good.substr(0, good.find("DATA;") + 6);
  for (const auto& [megabytes, words] : {std::pair{100, "at most 64 MiB"}, {60, ""}}) {
    std::string text = head;
    for (int i = 1; text.size() < static_cast<std::size_t>(megabytes) << 20; ++i)
      text += "#" + std::to_string(i) + "=CARTESIAN_POINT('',(0.,0.,1.));\n";
    write_file(scratch / "points.step", text + "ENDSEC;\nEND-ISO-10303-21;\n");
    const std::string message = failure("points.step");
    EXPECT_NE(message, "");
    EXPECT_NE(message.find(words), std::string::npos) << message;
  }
}

}  // namespace
}  // namespace sagitta::test
