// Bounding boxes against closed forms: a box, a cylinder aslant, a sphere and a torus (common textbook formulas), and
// boards, whose highest place is the crown and whose reach is the outline's; the kernel's own box is the second
// witness.

#include <gtest/gtest.h>

#include <BRepBndLib.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeSphere.hxx>
#include <BRepPrimAPI_MakeTorus.hxx>
#include <filesystem>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "solid/BoundingBox.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

void expect(const Bnd_Box& box, const gp_Pnt& low, const gp_Pnt& high, double within) {
  EXPECT_LT(box.CornerMin().Distance(low), within);
  EXPECT_LT(box.CornerMax().Distance(high), within);
}

TEST(BoundingBox, OfABox) {
  const gp_Pnt low(1, 2, 3), high(4, 7, 10);
  expect(bounding_box(BRepPrimAPI_MakeBox(low, high).Solid()), low, high, 1e-12);
}

/// A disc of radius r whose axis leans by a reaches r sin(a) along z and r cos(a) along x.
TEST(BoundingBox, OfACylinderAslant) {
  const double r = 3, l = 5, sine = 0.6, cosine = 0.8;
  const gp_Ax2 axes(gp_Pnt(0, 0, 0), gp_Dir(sine, 0, cosine));
  expect(bounding_box(BRepPrimAPI_MakeCylinder(axes, r, l).Solid()), {-r * cosine, -r, -r * sine},
         {l * sine + r * cosine, r, l * cosine + r * sine}, 1e-9);
}

TEST(BoundingBox, OfASphereAndATorus) {
  const gp_Ax2 axes(gp_Pnt(1, 2, 3), gp::DZ());
  expect(bounding_box(BRepPrimAPI_MakeSphere(axes, 2).Solid()), {-1, 0, 1}, {3, 4, 5}, 1e-6);
  expect(bounding_box(BRepPrimAPI_MakeTorus(axes, 5, 2).Solid()), {-6, -5, 1}, {8, 9, 5}, 1e-6);
}

/// The kernel looks for the box by swarms of particles, within 1e-6 mm.
TEST(BoundingBox, OfEveryPresetIsTheKernels) {
  int boards = 0;
  for (const auto& entry : std::filesystem::directory_iterator(places::source() + "/presets")) {
    if (entry.path().extension() != ".toml") continue;
    const auto read = read_board(entry.path().string());
    ASSERT_TRUE(read.problems.empty()) << entry.path();
    const auto shell = made::shell_of(read.board, Stage::board);
    ASSERT_TRUE(std::holds_alternative<Shell>(shell)) << entry.path();
    const TopoDS_Solid solid = make_solid(std::get<Shell>(shell));
    Bnd_Box kernels;
    BRepBndLib::AddOptimal(solid, kernels, false, false);
    expect(bounding_box(solid), kernels.CornerMin(), kernels.CornerMax(), 1e-6);
    ++boards;
  }
  EXPECT_GT(boards, 20);
}

/// Thickness is the crown's height; a board lies from behind its nut to its end, and its widest place is its end's.
TEST(BoundingBox, OfABoardIsWhatTheFileAsksFor) {
  const Board board = read_board(places::tests() + "/bench/standard.toml").board;
  const Shell shell = std::get<Shell>(made::shell_of(board, Stage::board));
  const Bnd_Box box = bounding_box(make_solid(shell));
  EXPECT_NEAR(box.CornerMax().Z(), board.board.thickness, 1e-9);
  EXPECT_NEAR(box.CornerMin().Z(), 0, 1e-12);
  EXPECT_NEAR(box.CornerMin().X(), -5, 1e-9);
  EXPECT_NEAR(box.CornerMax().Y() - box.CornerMin().Y(), 57, 1e-9);
}

}  // namespace
}  // namespace sagitta
