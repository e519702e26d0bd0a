// The path data of SVG 1.1 (Second Edition), section 8.3. Coordinates marked M are from memory of the specification's
// examples.

#include <gtest/gtest.h>

#include "artwork/ReadArtwork.hpp"
#include "artwork/SvgPath.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

std::vector<Subpath> path(std::string_view data) {
  const auto read = read_path(data);
  if (const auto* error = std::get_if<PathError>(&read)) {
    ADD_FAILURE() << data << ": " << error->message << " at " << error->at;
    return {};
  }
  return std::get<0>(read);
}

/// What the first subpath encloses in the path's own units (y down, so clockwise on paper is positive).
double area_of(std::string_view data) {
  const std::vector<Subpath> trails = path(data);
  if (trails.empty()) return 0;
  PathLoop strokes;
  for (const Curve& curve : trails.front().curves) draw(curve, {}, strokes);
  return area(strokes);
}

// 8.3.2 and 8.3.3, example triangle01 (M): "M 100 100 L 300 100 L 200 300 z".
TEST(SvgPath, Triangle01) {
  const auto trails = path("M 100 100 L 300 100 L 200 300 z");
  ASSERT_EQ(trails.size(), 1U);
  EXPECT_TRUE(trails[0].closed);
  EXPECT_EQ(trails[0].curves.size(), 3U);
  EXPECT_DOUBLE_EQ(area_of("M 100 100 L 300 100 L 200 300 z"), 200 * 200 / 2);
}

// 8.3.8, example arcs01 (M): a quarter of a pie, radius 150.
TEST(SvgPath, Arcs01IsThreeQuartersOfADisc) {
  EXPECT_NEAR(std::abs(area_of("M300,200 h-150 a150,150 0 1,0 150,-150 z")), 0.75 * pi * 150 * 150, 1e-8);
  EXPECT_NEAR(std::abs(area_of("M275,175 v-150 a150,150 0 0,0 -150,150 z")), 0.25 * pi * 150 * 150, 1e-8);
}

// 8.3.6, example cubic01 (M): the second curve's first control point is the first one's second, turned about 250,200.
TEST(SvgPath, Cubic01) {
  const auto trails = path("M100,200 C100,100 250,100 250,200 S400,300 400,200");
  ASSERT_EQ(trails.size(), 1U);
  ASSERT_EQ(trails[0].curves.size(), 2U);
  EXPECT_EQ(std::get<Bezier>(trails[0].curves[0]), (Bezier{{100, 200}, {100, 100}, {250, 100}, {250, 200}}));
  EXPECT_EQ(std::get<Bezier>(trails[0].curves[1]), (Bezier{{250, 200}, {250, 300}, {400, 300}, {400, 200}}));
  // the bell of a cubic with upright handles: 3/5 of width times handle
  EXPECT_NEAR(area_of("M100,200 C100,100 250,100 250,200 z"), 0.6 * 150 * 100, 1e-9);
}

// 8.3.6: S behind anything but C, c, S, s starts with the current point as its control point.
TEST(SvgPath, SmoothBehindALineStartsStraight) {
  const auto trails = path("M0,0 L10,0 S20,10 30,0 Q40,10 50,0 S60,10 70,0");
  EXPECT_EQ(std::get<Bezier>(trails[0].curves[1]), (Bezier{{10, 0}, {10, 0}, {20, 10}, {30, 0}}));
  EXPECT_EQ(std::get<Bezier>(trails[0].curves[3]), (Bezier{{50, 0}, {50, 0}, {60, 10}, {70, 0}}));
}

// 8.3.7, example quad01 (M): T mirrors the control point 400,50 about 600,300 to 800,550.
TEST(SvgPath, Quad01) {
  const auto trails = path("M200,300 Q400,50 600,300 T1000,300");
  ASSERT_EQ(trails[0].curves.size(), 2U);
  const Bezier second = std::get<Bezier>(trails[0].curves[1]), wanted = raised({600, 300}, {800, 550}, {1000, 300});
  EXPECT_NEAR(distance(second.c, wanted.c), 0, 1e-12);
  EXPECT_NEAR(distance(second.d, wanted.d), 0, 1e-12);
  // Archimedes: 2/3 of the triangle's box
  EXPECT_NEAR(area_of("M200,300 Q400,50 600,300 z"), 2.0 / 3 * (400 * 250 / 2), 1e-9);
}

// 8.3.8, example arcs02 (M): the four arcs between two points of one ellipse, a quarter and three quarters of it.
TEST(SvgPath, Arcs02HasFourWays) {
  const double small = (pi / 4 - 0.5) * 100 * 50, large = (3 * pi / 4 + 0.5) * 100 * 50;
  // within what Bezier curves may depart from the ellipse along its outline
  EXPECT_NEAR(area_of("M125,75 a100,50 0 0,0 100,50 z"), -small, 0.01);
  EXPECT_NEAR(area_of("M125,75 a100,50 0 0,1 100,50 z"), small, 0.01);
  EXPECT_NEAR(area_of("M125,75 a100,50 0 1,0 100,50 z"), -large, 0.1);
  EXPECT_NEAR(area_of("M125,75 a100,50 0 1,1 100,50 z"), large, 0.1);
}

// F.6.5: every point of a turned arc lies on the ellipse with its radii, and it begins and ends where it must.
TEST(SvgPath, TurnedArcsLieOnTheirEllipse) {
  for (const double turn : {0.0, 0.4, 1.3, -0.7})
    for (const bool large : {false, true})
      for (const bool sweep : {false, true}) {
        const EllipseArc arc = std::get<EllipseArc>(svg_arc({10, 5}, {40, 22}, 30, 18, turn, large, sweep));
        EXPECT_NEAR(length(arc.u), 30, 1e-12);
        EXPECT_NEAR(length(arc.v), 18, 1e-12);
        EXPECT_NEAR(distance(arc.at(arc.start), {10, 5}), 0, 1e-12);
        EXPECT_NEAR(distance(arc.at(arc.start + arc.sweep), {40, 22}), 0, 1e-12);
        EXPECT_EQ(arc.sweep > 0, sweep);
        EXPECT_EQ(std::abs(arc.sweep) > pi, large);
      }
}

double polygon(const std::vector<Point>& points) {
  double twice = 0;
  for (std::size_t i = 0; i < points.size(); ++i) twice += cross(points[i], points[(i + 1) % points.size()]);
  return std::abs(twice) / 2;
}

Point meeting(Point a, Point b, Point c, Point d) { return between(a, b, cross(c - a, d - c) / cross(b - a, d - c)); }

// 11.3, the figures of the two fill rules (M): a star in one stroke. By nonzero it is filled; by evenodd the five-sided
// middle is not.
TEST(SvgPath, StarOfTheFillRules) {
  const std::string d = "M250,75 L323,301 131,161 369,161 177,301 z";
  const std::vector<Point> tips{{250, 75}, {323, 301}, {131, 161}, {369, 161}, {177, 301}};
  std::vector<Point> middle, whole;
  for (const int i : {0, 3, 1, 4, 2}) {  // round the star: a tip, then the notch behind it
    const auto at = [&](int k) { return tips[static_cast<std::size_t>((k + 5) % 5)]; };
    const int next = (i + 3) % 5;
    const Point notch = meeting(at(i), at(i + 1), at(next), at(next - 1));
    whole.push_back(at(i));
    whole.push_back(notch);
    middle.push_back(notch);
  }
  const auto filled_by = [&](const std::string& rule) {
    const auto read = svg_artwork("<svg width='600mm' height='600mm' viewBox='0 0 600 600'><path fill-rule='" + rule +
                                  "' d='" + d + "'/></svg>");
    double sum = 0;
    for (const DrawnRegion& region : std::get<Artwork>(read).regions)
      for (const PathLoop& loop : region.outlines) sum += area(loop);
    return sum;
  };
  // corners come off the polygon library's whole numbers: the star's side by 9e8
  EXPECT_NEAR(filled_by("nonzero"), polygon(whole), 1e-3);
  EXPECT_NEAR(filled_by("evenodd"), polygon(whole) - polygon(middle), 1e-3);
}

}  // namespace
}  // namespace sagitta
