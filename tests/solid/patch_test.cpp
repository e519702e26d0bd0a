// The parameters of a playing surface: readers of the kernel take what is 1e-7 apart in them for one.

#include "solid/Patch.hpp"

#include <gtest/gtest.h>

#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Source: Precision::Confusion of the kernel, in parameters whatever they measure.
constexpr double one_for_a_reader = 1e-7;

TEST(Patch, WhatIsTheSnapApartIsTwoInItsParameters) {
  const BoundingSurface top{BoundingSurface::Kind::offset_surface, 0};
  for (const double radius : {60.0, 184.0, 508.0, 700.0, 1300.0, 1e4, 1e6})
    for (const double slope : {0.0, 0.1}) {
      Surface surface;
      surface.thickness = 6;
      surface.r0 = radius;
      surface.r1 = slope;
      const Patch patch(surface, top, -1, 700, 30 / radius);
      double u1, u2, v1, v2;
      patch.surface()->Bounds(u1, u2, v1, v2);
      gp_Pnt p;
      gp_Vec along, across;
      const bool angles = u2 - u1 < 7;  // a cylinder: all the way round
      patch.surface()->D1(angles ? std::numbers::pi : (u1 + u2) / 2, angles ? 350 : (v1 + v2) / 2, p, along, across);
      for (const gp_Vec& step : {along, across})
        EXPECT_LT(step.Magnitude() * one_for_a_reader, 0.9 * tolerance::snap) << radius << " " << slope;
    }
}

}  // namespace
}  // namespace sagitta
