// Places are 32-bit floats, and the lines of the bands: a few, apart from each other, one through every loop.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "files/ScratchFolder.hpp"
#include "made/Growing.hpp"
#include "made/Made.hpp"
#include "mesh/BandLines.hpp"
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
  const std::vector<double> lines = edge_polylines(shell, default_deviation).lines;
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

/// Chords of an arc are as few as its radius lets them be: n = sweep / (2 acos(1 - d / r)), for three quarters of the
/// deviation, and one more at each line. Chords are no longer than 2 r sin(acos(1 - d / r)); a place near a line makes
/// way.
TEST(EdgePolylines, OfArcsAreNoFinerThanTheDeviationAsks) {
  const Board board = read_board(places::source() + "/presets/heron-six.toml").board;
  const Shell shell = std::get<Shell>(made::shell_of(board, Stage::pocketed));
  int arcs = 0;
  for (const double deviation : {0.002, 0.01, 0.05}) {
    const EdgePolylines polylines = edge_polylines(shell, deviation);
    for (std::size_t e = 0; e < polylines.edges.size(); ++e) {
      const PlanEdge& edge = shell.plan.map.edges[e];
      const auto& inner = polylines.edges[e];
      if (!edge.segment.is_arc() || edge.segment.radius < 0.5 || inner.empty()) continue;
      ++arcs;
      const double r = edge.segment.radius, widest = 2 * std::acos(1 - 0.75 * deviation / r);
      const double chord = 2 * r * std::sin(widest / 2) + clear_of_points + 1e-4;  // floats at 400 mm: 1.5e-5
      const auto on_lines = std::count_if(inner.begin(), inner.end(), [&](const PolylinePoint& at) {
        return std::binary_search(polylines.lines.begin(), polylines.lines.end(), at.p.y);
      });
      EXPECT_LE(static_cast<double>(inner.size()),
                std::max(2.0, std::abs(edge.segment.sweep) / widest + 1) + static_cast<double>(on_lines));
      Point last = polylines.vertices[static_cast<std::size_t>(edge.from)].p;
      for (const PolylinePoint& at : inner) {
        EXPECT_LE(distance(last, at.p), chord);
        last = at.p;
      }
    }
  }
  EXPECT_GT(arcs, 30);
}

}  // namespace
}  // namespace sagitta
