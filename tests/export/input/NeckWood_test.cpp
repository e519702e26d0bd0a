// The wood of necks as triangles, laid under the board.

#include <algorithm>
#include <nlohmann/json.hpp>

#include "export/input/NeckZoo.hpp"
#include "input/NeckJson.hpp"
#include "input/NeckProcess.hpp"
#include "solid/NeckMesher.hpp"

namespace sagitta::test {
namespace {

/// Of a closed mesh, by the divergence theorem.
double volume(const NeckWood& wood) {
  double six = 0;
  for (const auto& t : wood.triangles) {
    const auto &a = wood.points[t[0]], &b = wood.points[t[1]], &c = wood.points[t[2]];
    const gp_Vec u(a[0], a[1], a[2]), v(b[0], b[1], b[2]), w(c[0], c[1], c[2]);
    six += u.Dot(v.Crossed(w));
  }
  return six / 6;
}

double length_of_edges(const NeckWood& wood) {
  double sum = 0;
  for (const auto& edge : wood.edges) {
    const auto &a = wood.points[edge[0]], &b = wood.points[edge[1]];
    sum += gp_Pnt(a[0], a[1], a[2]).Distance({b[0], b[1], b[2]});
  }
  return sum;
}

class NeckPicture : public NeckZoo {
 protected:
  NeckWood wood_of_file(const NeckReading& reading) const {
    return mesh_neck(scratch / "neck.step", board_seat(bare(board)), reading.shape->place);
  }
  /// All twelve edges of bar().
  double bar_edges() const {
    const Corners top = corners();
    double sum = 0;
    for (std::size_t i = 0; i < 4; ++i) {
      const auto back = [&](std::size_t k) { return gp_Pnt(top[k].X(), top[k].Y() + (k < 2 ? 4 : -4), -20); };
      const std::size_t next = (i + 1) % 4;
      sum += top[i].Distance(top[next]) + back(i).Distance(back(next)) + top[i].Distance(back(i));
    }
    return sum;
  }
  /// Of bar(): its sections at each depth are trapeziums whose widths fall by 8 over the 20 of its depth.
  double bar_volume() const { return 20 * long_ * (nut_half + layout().half_width(long_) - 4); }
};

TEST_F(NeckPicture, LiesUnderTheBoardHoweverItLiesInItsFile) {
  const gp_Trsf places[] = {gp_Trsf(), about(gp::OZ(), 180), about(gp::OX(), 90), somewhere()};
  for (const gp_Trsf& place : places)
    for (const char* unit : {"MM", "INCH"}) {
      const NeckReading reading = read(moved_by(bar(), place), unit);
      ASSERT_TRUE(reading.shape && is_measured(*reading.shape));
      const NeckWood wood = wood_of_file(reading);
      ASSERT_EQ(wood.failure, "");
      EXPECT_NEAR(volume(wood) / bar_volume(), 1, 1e-6) << "single numbers";
      Bnd_Box box;
      for (const auto& p : wood.points) box.Add(gp_Pnt(p[0], p[1], p[2]));
      const gp_Pnt low = box.CornerMin(), high = box.CornerMax();
      EXPECT_LT(low.Distance({0, -layout().half_width(long_), -20}), within);
      EXPECT_LT(high.Distance({long_, layout().half_width(long_), 0}), within);
      EXPECT_NEAR(length_of_edges(wood) / bar_edges(), 1, 1e-5);
    }
}

TEST_F(NeckPicture, LeavesTheBoardOut) {
  const double a = nut_half, end = layout().heel_end, b = layout().half_width(end);
  const TopoDS_Face under = flat({0, -a, 0}, {end, -b, 0}, {end, b, 0}, {0, a, 0});
  const NeckReading reading = read(beside(bar(), BRepPrimAPI_MakePrism(under, gp_Vec(0, 0, 6.35)).Shape()));
  EXPECT_NEAR(volume(wood_of_file(reading)) / bar_volume(), 1, 1e-6);
}

// A rounded back: half of a cylinder of radius 12 along the bar's back. Facets lie inside it by no more than the
// deviation; the volume between lies under the area times that.
TEST_F(NeckPicture, OfRoundFacesStaysWithinItsDeviation) {
  const gp_Ax2 axis(gp_Pnt(0, 0, -20), gp::DX());
  const TopoDS_Shape round = BRepPrimAPI_MakeCylinder(axis, 12, long_).Shape();
  const NeckReading reading = read(joined(bar(), round));
  ASSERT_TRUE(reading.shape && is_measured(*reading.shape));
  const double whole = bar_volume() + pi * 12 * 12 / 2 * long_, lost = whole - volume(wood_of_file(reading));
  EXPECT_GT(lost, 0);
  EXPECT_LT(lost, neck_deviation * pi * 12 * long_);
}

TEST_F(NeckPicture, ComesThroughTheReadersPipe) {
  const NeckWood wood = wood_of_file(read(bar()));
  const NeckWood back = wood_of(wood_json(wood).dump());
  EXPECT_EQ(back.triangles, wood.triangles);
  EXPECT_EQ(back.edges, wood.edges);
  ASSERT_EQ(back.points.size(), wood.points.size());
  for (std::size_t i = 0; i < wood.points.size(); ++i)
    for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(back.points[i][k], wood.points[i][k], 6e-4);
  EXPECT_NE(wood_of("{\"failure\":\"\",\"points\":[0,0,0],\"triangles\":[[0,0,1]],\"edges\":[]}").failure, "")
      << "a corner that names no point";
  EXPECT_NE(wood_of("[").failure, "");
}

TEST_F(NeckPicture, OfAFileThatIsNoNeckIsAFailure) {
  const NeckReading reading = read(bar());
  EXPECT_NE(mesh_neck(scratch / "nothing.step", board_seat(bare(board)), reading.shape->place).failure, "");
}

}  // namespace
}  // namespace sagitta::test
