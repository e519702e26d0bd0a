// Which of several surfaces bounds the wood over a face of the plan.
#include "plan/Cells.hpp"

#include <gtest/gtest.h>

#include "plan/Arrangement.hpp"
#include "plan/CellOrderError.hpp"

namespace sagitta {
namespace {

/// A square of 20 by 20 mm about the centre line as the only face of a map.
Subdivision square() {
  std::vector<InputCurve> curves;
  for (const CurveSegment& side : rectangle({0, -10}, {20, 10})) curves.push_back({side, {}, 0});
  return arrange(curves).map;
}

/// The playing surface over it, R = 250: at y = 10 it lies 250 - sqrt(250^2 - 10^2) = 0.2000801 mm lower than at y = 0.
Surface playing_surface() {
  Surface surface;
  surface.thickness = 6;
  surface.r0 = 250;
  return surface;
}

std::vector<Cell> cells_with_floor(double z) {
  Candidates here;
  here.wood = true;
  here.moved = BoundingSurface{BoundingSurface::Kind::offset_surface, 0};
  here.level = BoundingSurface{BoundingSurface::Kind::level, z};
  return cells_of(square(), playing_surface(), {{}, here});
}

TEST(Cells, EndAtTheLowerOfTwoSurfacesThatKeepTheirOrder) {
  EXPECT_EQ(cells_with_floor(5.79).at(1).top.kind, BoundingSurface::Kind::level);
  EXPECT_EQ(cells_with_floor(6.01).at(1).top.kind, BoundingSurface::Kind::offset_surface);
}

TEST(Cells, MayNotHoldTwoSurfacesThatChangePlaces) {
  EXPECT_THROW(cells_with_floor(5.9), CellOrderError);  // between 5.79992 and 6
}

TEST(Cells, LeaveRoomForWhatRoundingMoves) { EXPECT_NO_THROW(cells_with_floor(6 - 0.2000801 + 0.0005)); }

}  // namespace
}  // namespace sagitta
