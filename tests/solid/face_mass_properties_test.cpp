// Area, volume and centroid of faces against the closed forms of box, cylinder, cone, sphere and torus (common textbook
// formulas), seen from a point outside them.

#include <gtest/gtest.h>

#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCone.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeSphere.hxx>
#include <BRepPrimAPI_MakeTorus.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>
#include <numbers>

#include "solid/FaceMassProperties.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;
const gp_XYZ eye(-7, 11, 3);
const gp_Ax2 place(gp_Pnt(20, -5, 4), gp_Dir(1, 2, 3));

void expect(const TopoDS_Shape& shape, double area, double volume, const gp_XYZ& centroid) {
  FaceMassProperties sum;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    const FaceMassProperties face = face_mass_properties(TopoDS::Face(it.Current()), eye);
    sum.area += face.area;
    sum.volume += face.volume;
    sum.moment += face.moment;
  }
  EXPECT_NEAR(sum.area / area, 1, 1e-10);
  EXPECT_NEAR(sum.volume / volume, 1, 1e-9);
  EXPECT_LT((eye + sum.moment / sum.volume - centroid).Modulus(), 1e-8);
}

gp_XYZ along_axis(double way) { return place.Location().XYZ() + way * place.Direction().XYZ(); }

TEST(FaceMassProperties, OfABox) {
  expect(BRepPrimAPI_MakeBox(gp_Pnt(1, 2, 3), gp_Pnt(4, 7, 10)).Shape(), 2 * (15 + 35 + 21), 105, {2.5, 4.5, 6.5});
}

TEST(FaceMassProperties, OfACylinder) {
  expect(BRepPrimAPI_MakeCylinder(place, 3, 5).Shape(), 2 * pi * 3 * (3 + 5), pi * 9 * 5, along_axis(2.5));
}

TEST(FaceMassProperties, OfACone) {
  expect(BRepPrimAPI_MakeCone(place, 3, 0, 4).Shape(), pi * 3 * (3 + 5), pi * 9 * 4 / 3, along_axis(1));
}

TEST(FaceMassProperties, OfASphere) {
  expect(BRepPrimAPI_MakeSphere(place, 3).Shape(), 4 * pi * 9, 4 * pi * 27 / 3, along_axis(0));
}

TEST(FaceMassProperties, OfATorus) {
  expect(BRepPrimAPI_MakeTorus(place, 5, 2).Shape(), 4 * pi * pi * 10, 2 * pi * pi * 5 * 4, along_axis(0));
}

/// A point in a face's plane sees no cone; the integral is done all the same, not halved for ever.
TEST(FaceMassProperties, OfAFaceSeenFromItsPlane) {
  for (TopExp_Explorer it(BRepPrimAPI_MakeBox(gp_Pnt(0, 0, 0), gp_Pnt(4, 7, 10)).Shape(), TopAbs_FACE); it.More();
       it.Next()) {
    const FaceMassProperties face = face_mass_properties(TopoDS::Face(it.Current()), {0, 0, 0});
    EXPECT_GE(face.volume, -1e-12);
    EXPECT_NEAR(std::min(face.volume, std::abs(face.volume - 280.0 / 3)), 0, 1e-10);
  }
}

}  // namespace
}  // namespace sagitta
