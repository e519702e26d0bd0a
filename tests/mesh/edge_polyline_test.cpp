// Places are 32-bit floats, and the lines of the bands: a few, apart from each other, one through every loop.

#include <gtest/gtest.h>

#include <random>

#include "board/BoardFile.hpp"
#include "files/ScratchFolder.hpp"
#include "made/Growing.hpp"
#include "made/Made.hpp"
#include "mesh/EdgePolyline.hpp"
#include "mesh/MeshCheck.hpp"
#include "mesh/MeshFlaw.hpp"

namespace sagitta {
namespace {

TEST(RoundedPolygon, GivesFloats) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> anywhere(-600, 600);
  for (int i = 0; i < 1000; ++i) {
    const Point p = rounded({anywhere(random), anywhere(random)});
    EXPECT_EQ(p.x, double{static_cast<float>(p.x)});
    EXPECT_EQ(p.y, double{static_cast<float>(p.y)});
  }
}

/// A hundred leaves in rows, none of which the playing surface asks for a line through. Rows are alike, so that a line
/// for each leaf would lie 1e-6 mm beside the next one's, and their ends on the rim would be one point in a file.
TEST(BandLines, OfManyLeavesAreFewAndApart) {
  const test::ScratchFolder scratch;
  const std::string path = test::write_growing(test::Growing::leaves, 100, (scratch / "board").string());
  const Shell shell = std::get<Shell>(made::shell_of(read_board(path).board, Stage::pocketed));
  const std::vector<double> lines = edge_polylines(shell, default_deviation / 4).lines;
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) EXPECT_GT(lines[i + 1] - lines[i], 0.01);
  EXPECT_LT(lines.size(), 20U);
  for (const ShellFace& face : shell.faces)
    for (const auto& loop : face.kind == ShellFace::Kind::wall ? decltype(face.loops)() : face.loops) {
      double low = 1e300, high = -1e300;
      for (const Coedge use : loop)
        for (const Point p : shell.places(shell.edges[use.edge])) low = std::min(low, p.y), high = std::max(high, p.y);
      const auto line = std::upper_bound(lines.begin(), lines.end(), low);
      EXPECT_TRUE(line != lines.end() && *line < high) << low;
    }
  const Mesh mesh = make_mesh(shell);
  EXPECT_EQ(unsound(mesh, 0), "");
  EXPECT_FALSE(equal_points(mesh, told_apart));
}

}  // namespace
}  // namespace sagitta
