// Published and separately computed values of the playing surface. "Computed" values come from exact formulas apart
// from this program; each is asked for to half a unit of its last printed digit.

#include <gtest/gtest.h>

#include <array>

#include "layout/SampleBoards.hpp"
#include "surface/Surface.hpp"

namespace sagitta {
namespace {

constexpr double inch = 25.4;

Surface cylinder(double radius, double thickness = 0) {
  Surface surface;
  surface.r0 = radius;
  surface.thickness = thickness;
  return surface;
}

TEST(SurfaceTruth, MachinerysHandbook) {
  // Machinery's Handbook, 31st ed., pp. 79 and 83: r 60, h 8 -> c 59.86; c 16, h 6 -> r 8-1/3.
  // The printed chord is cut off after two digits (59.8665), so it may be up to 0.01 short: half of that, times the
  // slope at the chord's end, 29.93/52, is what the height may lack.
  const double height = cylinder(60).drop(0, 59.86 / 2);
  EXPECT_LE(height, 8);
  EXPECT_GE(height, 8 - 0.005 * 29.94 / 52);
  EXPECT_NEAR(cylinder(25.0 / 3).drop(0, 8), 6, 1e-14);
}

TEST(SurfaceTruth, EdgeDrop) {
  // Computed, inches.
  const std::array<double, 4> widths{1.6875, 1.75, 2.0625, 2.25};
  const struct {
    double radius;
    std::array<double, 4> drop;
  } rows[] = {{7.25, {.04926, .05300, .07372, .08782}}, {9.5, {.03754, .04038, .05614, .06685}},
              {10, {.03566, .03835, .05332, .06348}},   {12, {.02970, .03194, .04439, .05285}},
              {16, {.02226, .02394, .03327, .03960}},   {20, {.01781, .01915, .02660, .03167}}};
  for (const auto& row : rows)
    for (std::size_t i = 0; i < widths.size(); ++i)
      EXPECT_NEAR(cylinder(row.radius).drop(0, widths[i] / 2), row.drop[i], 0.5001e-5)
          << row.radius << " " << widths[i];
}

TEST(SurfaceTruth, EdgeThickness) {
  // Computed, mm, 6.35 thick, 42.86 wide at the nut and 57.15 at the heel.
  const double nut = 42.8625 / 2, heel = 57.15 / 2;
  EXPECT_NEAR(cylinder(9.5 * inch, 6.35).height(0, nut), 5.40, 0.5001e-2);
  EXPECT_NEAR(cylinder(9.5 * inch, 6.35).height(0, heel), 4.65, 0.5001e-2);
  EXPECT_NEAR(cylinder(7.25 * inch, 6.35).height(0, nut), 5.10, 0.5001e-2);
  EXPECT_NEAR(cylinder(7.25 * inch, 6.35).height(0, heel), 4.12, 0.5001e-2);
  EXPECT_NEAR(cylinder(10 * inch, 6.35).height(0, nut), 5.44, 0.5001e-2);
  EXPECT_NEAR(cylinder(16 * inch, 6.35).height(0, heel), 5.34, 0.5001e-2);
}

TEST(SurfaceTruth, InlayLeftAtItsEdge) {
  // Computed, mm: 1.27 and 1.524 thick, 22 from the centre line.
  const double radii[] = {7.25, 9.5, 12};
  const double thin[] = {-0.05, 0.27, 0.48}, thick[] = {.21, .52, .73};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(1.27 - cylinder(radii[i] * inch).drop(0, 22), thin[i], 0.5001e-2);
    EXPECT_NEAR(1.524 - cylinder(radii[i] * inch).drop(0, 22), thick[i], 0.5001e-2);
  }
}

TEST(SurfaceTruth, LevelSlotAtTheEdge) {
  // Computed, mm: a level slot 1.95 deep on a board 55.56 wide; what is left under an arc slot in a board of 6.35.
  const double half = 55.56 / 2;
  EXPECT_NEAR(1.95 - cylinder(7.25 * inch).drop(0, half), -0.16, 0.5001e-2);
  EXPECT_NEAR(1.95 - cylinder(9.5 * inch).drop(0, half), .35, 0.5001e-2);
  EXPECT_NEAR(1.95 - cylinder(12 * inch).drop(0, half), .68, 0.5001e-2);
  EXPECT_NEAR(1.95 - cylinder(16 * inch).drop(0, half), 1.0, 0.5001e-1);
  EXPECT_NEAR(cylinder(7.25 * inch, 6.35).height(0, half) - 1.95, 2.29, 0.5001e-2);
}

/// A board of the hump table: inches of scale, frets, spread at nut and bridge in mm.
Board strung(double inches, int frets, double nut, double bridge) {
  Board board = samples::octaves();
  board.scale.length = inches * inch;
  board.scale.frets = frets;
  board.scale.cents.clear();
  board.strings.nut_spread = nut;
  board.strings.saddle_spread = bridge;
  board.strings.count = 6;
  return board;
}

/// Largest height of the surface under the bass string over the straight line from nut to last fret.
double hump(const Board& board) {
  const Layout layout = samples::sound(board);
  const Surface surface = surface_of(board, layout);
  const Point from = layout.frets.front().bass, to = layout.frets.back().bass;
  double most = 0;
  for (int i = 0; i <= 2000; ++i) {
    const double s = i / 2000.0;
    const double line = surface.height(from) + s * (surface.height(to) - surface.height(from));
    most = std::max(most, surface.height(between(from, to, s)) - line);
  }
  return most;
}

TEST(SurfaceTruth, HumpUnderTheOuterString) {
  // Computed, mm: cylinders of 7.25, 9.5, 12 and 16 in; R linear from 10 in at the nut to 16 in at the last fret.
  const struct {
    Board board;
    std::array<double, 4> cylinder;
    double linear;
    double law_inches;  ///< radius at the last fret by the string-line law from 10 in
  } rows[] = {{strung(25.5, 22, 35, 52.4), {.0271, .0205, .0162, .0121}, .0043, 13.576},
              {strung(24.75, 22, 36, 50), {.0175, .0133, .0105, .0078}, .0080, 12.798},
              {strung(34, 20, 31.75, 57.15), {.0523, .0396, .0312, .0234}, .0002, 15.480}};
  const std::array<double, 4> radii{7.25, 9.5, 12, 16};
  for (const auto& row : rows) {
    Board board = row.board;
    for (std::size_t i = 0; i < radii.size(); ++i) {
      board.surface.radius_at_nut = radii[i] * inch;
      EXPECT_NEAR(hump(board), row.cylinder[i], 0.501e-4) << radii[i];
    }
    board.surface.radius_at_nut = 10 * inch;
    board.surface.profile = Profile::compound;
    board.surface.radius_at_heel = 16 * inch;
    board.surface.heel_at = HeelAt::last_fret;
    EXPECT_NEAR(hump(board), row.linear, 0.501e-4);
    board.surface.profile = Profile::string_line;
    board.surface.radius_at_heel.reset();
    EXPECT_NEAR(hump(board), 0, 1e-12);
    const Layout layout = samples::sound(board);
    const double last = surface_of(board, layout).radius(layout.frets.back().middle.x) / inch;
    EXPECT_NEAR(last, row.law_inches, 0.5001e-3);
  }
}

Board wedge(double length, double nut, double heel) {
  Board board = samples::octaves();
  board.scale.length = 2 * (length - 66);
  board.scale.frets = 12;
  board.scale.cents.clear();
  board.strings.nut_spread = 30;
  board.strings.saddle_spread = 30;
  board.board.thickness = 6.35;
  board.board.edge_margin.reset();
  board.board.nut_width = nut;
  board.board.heel_width = heel;
  board.board.behind_nut = 0;
  board.board.past_last_fret = 66;
  return board;
}

TEST(SurfaceTruth, EvenEdgeRadiusAtTheHeel) {
  // Computed: from 9.5 in at 42.86 mm wide to 15.95 in at 55.56 mm.
  Board board = wedge(466, 42.8625, 55.5625);
  board.surface.profile = Profile::even_edge;
  board.surface.radius_at_nut = 9.5 * inch;
  EXPECT_NEAR(surface_of(board, samples::sound(board)).radius(466) / inch, 15.95, 0.5001e-2);
}

/// Volume under the surface between the board's edges: Gauss-Legendre, five points, over even pieces of x and y.
double volume(const Board& board) {
  const Layout layout = samples::sound(board);
  const Surface surface = surface_of(board, layout);
  const double node[] = {0, .5384693101056831, -.5384693101056831, .9061798459386640, -.9061798459386640};
  const double weight[] = {.5688888888888889, .4786286704993665, .4786286704993665, .2369268850561891,
                           .2369268850561891};
  const auto integral = [&](double from, double to, int pieces, const auto& f) {
    double sum = 0;
    const double half = (to - from) / (2 * pieces);
    for (int i = 0; i < pieces; ++i)
      for (int k = 0; k < 5; ++k) sum += weight[k] * half * f(from + (2 * i + 1 + node[k]) * half);
    return sum;
  };
  return integral(layout.nut_end, layout.heel_end, 20, [&](double x) {
    const double half = layout.half_width(x);
    return integral(-half, half, 20, [&](double y) { return surface.height(x, y); });
  });
}

TEST(SurfaceTruth, VolumesOfAWedge) {
  // Computed, mm^3: 466 long, 42.8625 to 55.5625 wide, 6.35 thick.
  Board board = wedge(466, 42.8625, 55.5625);
  board.surface.profile = Profile::flat;
  EXPECT_NEAR(volume(board), 145624.7, 0.0501);
  board.surface.profile = Profile::single;
  board.surface.radius_at_nut = 241.3;
  EXPECT_NEAR(volume(board), 135858.6, 0.0501);
  board.surface.radius_at_nut = 304.8;
  EXPECT_NEAR(volume(board), 137897.9, 0.0501);
  board.surface.profile = Profile::compound;
  board.surface.radius_at_nut = 254;
  board.surface.radius_at_heel = 406.4;
  EXPECT_NEAR(volume(board), 138577.5, 0.0501);
}

}  // namespace
}  // namespace sagitta
