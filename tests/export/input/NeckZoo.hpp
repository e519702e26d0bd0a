#pragma once

/// Necks of every kind made from the kernel's primitives, anywhere in their files.

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_Sewing.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepFill.hxx>
#include <BRepFilletAPI_MakeFillet.hxx>
#include <BRepLib.hxx>
#include <BRepOffsetAPI_ThruSections.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Builder.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Controller.hxx>
#include <STEPControl_Writer.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <array>
#include <cmath>
#include <numbers>

#include "files/ScratchFolder.hpp"
#include "findings/Findings.hpp"
#include "findings/GoodBoard.hpp"
#include "neck/NeckShape.hpp"
#include "solid/NeckFile.hpp"

namespace sagitta::test {

inline constexpr double pi = std::numbers::pi;
/// The board is 52 wide at x = 0 and 60 at its heel end; the neck is `long_` long.
inline constexpr double nut_half = 26, heel_half = 30, long_ = 440;
/// What a neck's number may be wrong by. mm.
inline constexpr double within = 0.01;

/// How a neck differs from the board: how far each side stands out at the nut and at its end.
struct Differs {
  double low_nut = 0, low_heel = 0, high_nut = 0, high_heel = 0;
};

using Corners = std::array<gp_Pnt, 4>;

inline TopoDS_Face flat(const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c, const gp_Pnt& d) {
  return BRepBuilderAPI_MakeFace(BRepBuilderAPI_MakePolygon(a, b, c, d, true).Wire(), true).Face();
}
inline TopoDS_Face ruled(const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c, const gp_Pnt& d) {
  return TopoDS::Face(BRepFill::Face(BRepBuilderAPI_MakeEdge(a, b), BRepBuilderAPI_MakeEdge(d, c)));
}

inline TopoDS_Shape solid_of(const std::vector<TopoDS_Face>& faces) {
  BRepBuilderAPI_Sewing sewing(1e-6);
  for (const TopoDS_Face& face : faces) sewing.Add(face);
  sewing.Perform();
  TopoDS_Solid solid = BRepBuilderAPI_MakeSolid(TopoDS::Shell(sewing.SewedShape())).Solid();
  BRepLib::OrientClosedSolid(solid);
  return solid;
}

inline gp_Trsf about(const gp_Ax1& axis, double degrees) {
  gp_Trsf turn;
  turn.SetRotation(axis, degrees * pi / 180);
  return turn;
}
inline gp_Trsf by(double x, double y, double z) {
  gp_Trsf shift;
  shift.SetTranslation(gp_Vec(x, y, z));
  return shift;
}
inline TopoDS_Shape moved_by(const TopoDS_Shape& shape, const gp_Trsf& motion) {
  return BRepBuilderAPI_Transform(shape, motion, true).Shape();
}
/// Anywhere: about a slanting axis, and far from zero.
inline gp_Trsf somewhere() { return by(217, -1300, 88) * about({{10, 20, 30}, gp_Dir(1, 2, -0.7)}, 131); }

class NeckZoo : public ::testing::Test {
 protected:
  NeckZoo() {
    board.scale.length = 640;
    board.scale.frets = 19;
    board.strings = {6, 45, 55, StringSpacing::equal_centres, {}, 1, {}};
    board.board.nut_width = 2 * nut_half;
    board.board.heel_width = 2 * heel_half;
    board.board.thickness = 6.35;
    board.nut.seat = NutSeat::none;
    board.neck = Neck{};
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
    STEPControl_Controller::Init();
  }

  Layout layout() const { return std::get<Layout>(lay_out(board)); }

  /// The glue face's corners: low nut, low heel, high heel, high nut.
  Corners corners(const Differs& d = {}, double length = long_) const {
    const double half = layout().half_width(length);
    return {gp_Pnt(0, -nut_half - d.low_nut, 0), gp_Pnt(length, -half - d.low_heel, 0),
            gp_Pnt(length, half + d.high_heel, 0), gp_Pnt(0, nut_half + d.high_nut, 0)};
  }

  /// A bar 20 deep whose back is 8 narrower than its glue face, so that the two cannot be taken for each other.
  TopoDS_Shape bar(const Differs& d = {}, double length = long_) const { return bar_under(corners(d, length)); }
  TopoDS_Shape bar_under(const Corners& top) const {
    Corners back = top;
    for (std::size_t i = 0; i < 4; ++i) back[i].SetCoord(top[i].X(), top[i].Y() + (i < 2 ? 4 : -4), -20);
    std::vector<TopoDS_Face> faces{flat(top[0], top[1], top[2], top[3]), flat(back[0], back[1], back[2], back[3])};
    for (std::size_t i = 0; i < 3; ++i) faces.push_back(flat(top[i], top[i + 1], back[i + 1], back[i]));
    faces.push_back(ruled(top[3], top[0], back[0], back[3]));  // no plane where the nut line slants
    return solid_of(faces);
  }

  TopoDS_Shape box(double x0, double y0, double z0, double x1, double y1, double z1) const {
    return BRepPrimAPI_MakeBox(gp_Pnt(x0, y0, z0), gp_Pnt(x1, y1, z1)).Shape();
  }
  TopoDS_Shape cut(const TopoDS_Shape& shape, const TopoDS_Shape& tool) const {
    return BRepAlgoAPI_Cut(shape, tool).Shape();
  }
  TopoDS_Shape joined(const TopoDS_Shape& a, const TopoDS_Shape& b) const { return BRepAlgoAPI_Fuse(a, b).Shape(); }
  TopoDS_Shape beside(const TopoDS_Shape& a, const TopoDS_Shape& b) const {
    TopoDS_Compound both;
    BRep_Builder builder;
    builder.MakeCompound(both);
    builder.Add(both, a);
    builder.Add(both, b);
    return both;
  }
  /// A rod channel 6 wide and 10 deep from x = 20 to 400.
  TopoDS_Shape with_channel(const TopoDS_Shape& neck, double deep = 10) const {
    return cut(neck, box(20, -3, -deep, 400, 3, 5));
  }

  NeckReading read(const TopoDS_Shape& shape, const char* unit = "MM") const {
    const std::string path = scratch / "neck.step";
    Interface_Static::SetCVal("write.step.unit", unit);
    STEPControl_Writer writer;
    EXPECT_EQ(writer.Transfer(shape, STEPControl_AsIs), IFSelect_RetDone);
    EXPECT_EQ(writer.Write(path.c_str()), IFSelect_RetDone);
    Interface_Static::SetCVal("write.step.unit", "MM");
    return read_neck(path, board_seat(bare(board)));
  }

  PreparedBoard bare(const Board& with) const {
    const Layout laid = std::get<Layout>(lay_out(with));
    return {{with, laid, surface_of(with, laid), with}, std::make_shared<const FittedInlays>()};
  }

  /// The finding with a limit that everything breaks: what was measured, and where.
  std::optional<Finding> measured_by(const NeckReading& reading, const std::string& name, double limit = -1e6) const {
    Board strict = board;
    strict.limits[name] = limit;
    for (const Finding& finding : findings_of(bare(strict), &reading))
      if (finding.name == name) return finding;
    return {};
  }
  bool is_found(const NeckReading& reading, const std::string& name) const {
    for (const Finding& finding : findings_of(bare(board), &reading))
      if (finding.name == name) return true;
    return false;
  }

  /// Sure, and the sides stand out by `out` and in by `in`, at most.
  void expect_sides(const NeckReading& reading, double out, double in) const {
    ASSERT_TRUE(reading.shape) << reading.failure;
    ASSERT_TRUE(is_measured(*reading.shape)) << reading.shape->place.second << " " << reading.shape->place.compared;
    const auto outside = measured_by(reading, "neck-outside-board"),
               inside = measured_by(reading, "board-outside-neck");
    ASSERT_TRUE(outside && inside);
    EXPECT_NEAR(outside->value, out, within);
    EXPECT_NEAR(inside->value, in, within);
  }
  void expect_good(const NeckReading& reading) const {
    expect_sides(reading, 0, 0);
    for (const char* name : {"glue-face-tilted", "glue-face-twisted", "glue-face-bowed", "neck-into-board",
                             "neck-other-hand", "board-in-neck-file", "neck-edge-rounded", "neck-not-found"})
      EXPECT_FALSE(is_found(reading, name)) << name;
  }
  /// Not sure: the look, and none of the numbers.
  void expect_no_number(const NeckReading& reading) const {
    ASSERT_TRUE(reading.shape) << reading.failure;
    EXPECT_TRUE(is_found(reading, "neck-not-found"));
    for (const char* name : {"neck-outside-board", "board-outside-neck", "glue-face-tilted", "glue-face-twisted",
                             "glue-face-bowed", "neck-into-board", "channel-differs", "pin-hole-differs"})
      EXPECT_FALSE(measured_by(reading, name)) << name;
  }

  ScratchFolder scratch;
  Board board;
};

}  // namespace sagitta::test
