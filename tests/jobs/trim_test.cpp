/// Binding, the lines beside it and side dots as the picture has them, against areas in closed form.

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "jobs/Dressing.hpp"

namespace sagitta::viewer {
namespace {

PreparedBoard flat_and_bound(double height) {
  Board board = read_board(places::source() + "/presets/avocet-bound.toml").board;
  board.surface = {};
  board.inlays.clear();
  board.binding = Binding{1.5, height, {0.4}, {"brass"}};
  board.slots.edge_left = 2.4;
  auto prepared = prepare(board);
  return std::get<PreparedBoard>(std::move(prepared));
}

/// Area of the triangles whose vertices have this colour and a normal that passes, mm^2.
double area(const RenderMesh& skin, const std::function<bool(const RenderVertex&)>& passes) {
  double sum = 0;
  for (std::size_t i = 0; i < skin.triangles.size(); i += 3) {
    const RenderVertex &a = skin.vertices[skin.triangles[i]], &b = skin.vertices[skin.triangles[i + 1]],
                       &c = skin.vertices[skin.triangles[i + 2]];
    const Vec n = cross(b.position - a.position, c.position - a.position);
    if (passes(a)) sum += std::sqrt(static_cast<double>(dot(n, n))) / 2;
  }
  return sum;
}

TEST(Trim, CoversTheLedgeAndTheEdges) {
  const PreparedBoard board = flat_and_bound(0);
  RenderMesh skin;
  dress_trim(board, Stage::board, skin);
  const Layout& l = board.layout();
  const double length = l.heel_end - l.nut_end, square = std::hypot(1, l.edge_slope[0]);
  const Colour brass = appearance_of(board.board(), "brass").colour;
  const auto top = [&](bool of_brass) {
    return area(skin, [&](const RenderVertex& v) { return v.normal.z > 0.9f && (v.colour == brass) == of_brass; });
  };
  // A strip of width w beside a line of slope s, between two places along the board: w sqrt(1 + s^2) times the length.
  EXPECT_NEAR(top(false), 2 * 1.5 * square * length, 0.02);  // 32-bit corners
  EXPECT_NEAR(top(true), 2 * 0.4 * square * length, 0.02);
  // The outer sides, binding only: thickness times the edge's own length.
  const double sides = area(skin, [&](const RenderVertex& v) {
    return std::abs(v.normal.y) > 0.9f && !(v.colour == brass) && v.normal.z == 0;
  });
  EXPECT_NEAR(sides, 2 * board.surface().thickness * square * length, 0.5);
  const double half = l.half_width(l.heel_end);
  EXPECT_NEAR(skin.high.y, half, 1e-3);
  EXPECT_NEAR(skin.low.z, 0, 1e-6);
}

TEST(Trim, EndsAtItsHeightAndWaitsForTheOutline) {
  const PreparedBoard board = flat_and_bound(2.5);
  RenderMesh skin, before;
  dress_trim(board, Stage::board, skin);
  dress_trim(board, Stage::slotted, before);
  EXPECT_NEAR(skin.low.z, board.surface().thickness - 2.5, 1e-5);
  EXPECT_TRUE(before.empty());
}

TEST(Trim, SideDotsLieInTheirEdges) {
  Board raw = read_board(places::source() + "/presets/heron-six.toml").board;
  raw.side_dots = SideDots();
  raw.side_dots->frets = {3, 5}, raw.side_dots->edge = DotEdge::both;
  const auto prepared = prepare(raw);
  const PreparedBoard& board = std::get<PreparedBoard>(prepared);
  RenderMesh skin;
  dress_trim(board, Stage::board, skin);
  const double r = raw.side_dots->diameter / 2;
  constexpr int corners = 20;  // of the disc as it is drawn
  EXPECT_NEAR(area(skin, [](const RenderVertex&) { return true; }),
              4 * corners / 2.0 * std::sin(2 * std::numbers::pi / corners) * r * r, 1e-3);
  // The dots lie in the middle of their spaces, on the edge and 0.02 mm before it; an edge widens by its slope over r.
  const auto& frets = board.layout().frets;
  const double edge = board.layout().half_width((frets[4].middle.x + frets[5].middle.x) / 2);
  EXPECT_NEAR(skin.high.y, edge + 0.02, r * board.layout().half_width_slope + 1e-3);
}

}  // namespace
}  // namespace sagitta::viewer
