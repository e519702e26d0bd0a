// Faces cut into bands, against the shoelace formula: the triangles fill the face, holes taken off, each lies within
// one band, and each directed side of a loop is used once.

#include "mesh/Bands.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "mesh/Orient2d.hpp"

namespace sagitta {
namespace {

using Loops = std::vector<std::vector<BandPoint>>;

/// A loop with a point wherever it crosses a line, numbered on from those before it.
std::vector<BandPoint> cut_at(const std::vector<Point>& polygon, const std::vector<double>& lines, int& id) {
  std::vector<BandPoint> loop;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    loop.push_back({a, id++});
    std::vector<double> cuts;
    for (const double y : lines)
      if ((a.y < y && y < b.y) || (b.y < y && y < a.y)) cuts.push_back(y);
    if (a.y > b.y) std::reverse(cuts.begin(), cuts.end());
    for (const double y : cuts)
      loop.push_back({{static_cast<float>(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x)), y}, id++});
  }
  return loop;
}

double twice_area(const std::vector<BandPoint>& loop) {
  double sum = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) sum += cross(loop[i].p, loop[(i + 1) % loop.size()].p);
  return sum;
}

std::vector<Point> round(Point centre, double radius, int corners, bool hole) {
  std::vector<Point> polygon;
  for (int i = 0; i < corners; ++i) {
    const double at = (hole ? -2 : 2) * std::numbers::pi * i / corners;
    polygon.push_back(
        {static_cast<float>(centre.x + radius * std::cos(at)), static_cast<float>(centre.y + radius * std::sin(at))});
  }
  return polygon;
}

void fills(const Loops& loops, const std::vector<double>& lines, double spacing) {
  std::map<int, Point> places;
  double twice = 0;
  int ids = 0;
  for (const auto& loop : loops) {
    twice += twice_area(loop);
    for (const BandPoint& p : loop) places[p.id] = p.p, ids = std::max(ids, p.id + 1);
  }
  const auto between = [&](const BandPoint& a, const BandPoint& b) {
    std::vector<BandPoint> more;
    for (double x = a.p.x + spacing; x < b.p.x - spacing / 2; x += spacing) {
      more.push_back({{static_cast<float>(x), a.p.y}, ids});
      places[ids++] = more.back().p;
    }
    return more;
  };
  double sum = 0;
  std::map<std::pair<int, int>, int> sides;
  for (const auto& t : triangulate_in_bands(loops, lines, between)) {
    const double own = orient2d(places[t[0]], places[t[1]], places[t[2]]);
    EXPECT_GT(own, 0);
    sum += own;
    for (int k = 0; k < 3; ++k) ++sides[{t[k], t[(k + 1) % 3]}];
    const double low = std::min({places[t[0]].y, places[t[1]].y, places[t[2]].y});
    const double high = std::max({places[t[0]].y, places[t[1]].y, places[t[2]].y});
    for (const double y : lines) EXPECT_FALSE(low < y && y < high) << "a triangle on both sides of y " << y;
  }
  EXPECT_NEAR(sum, twice, 1e-9 * twice);
  for (const auto& [side, uses] : sides) EXPECT_EQ(uses, 1);
  for (const auto& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i)
      EXPECT_EQ(sides.count({loop[i].id, loop[(i + 1) % loop.size()].id}), 1U);
}

TEST(Bands, FillAPlateWithHoles) {
  const std::vector<double> lines{-9, -6, -3, 0, 3, 6, 9};
  int id = 0;
  Loops loops{cut_at({{-20, -10}, {20, -10}, {20, 10}, {-20, 10}}, lines, id)};
  for (const Point centre : {Point{-10, 1}, Point{0, -4}, Point{11, 2}})
    loops.push_back(cut_at(round(centre, 3.5, 24, true), lines, id));
  fills(loops, lines, 2.5);
}

TEST(Bands, FillAFaceWithoutPointsOfItsOwnOnLines) {
  const std::vector<double> lines{-1, 0, 2};
  int id = 0;
  fills({cut_at(round({0, 0}, 5, 31, false), lines, id)}, lines, 100);
}

TEST(Bands, FillAFaceWithSidesAlongLines) {
  const std::vector<double> lines{0, 1, 2};
  int id = 0;
  fills({cut_at({{0, 0}, {6, 0}, {6, 1}, {4, 1}, {4, 2}, {6, 2}, {6, 3}, {0, 3}}, lines, id)}, lines, 100);
}

}  // namespace
}  // namespace sagitta
