// One open line read from SVG and DXF in its true size: 96 px to the inch (CSS 2.1, section 4.3.2), $INSUNITS of the
// DXF reference.

#include <gtest/gtest.h>

#include <algorithm>

#include "artwork/Curve.hpp"
#include "artwork/ReadArtwork.hpp"

namespace sagitta::test {
namespace {

OpenLine line_of(const OpenLineOrFaults& read) {
  if (const auto* faults = std::get_if<Faults>(&read)) throw std::runtime_error(faults->front().message);
  return std::get<OpenLine>(read);
}

FaultCode code_of(const OpenLineOrFaults& read) {
  const auto* faults = std::get_if<Faults>(&read);
  return faults ? faults->front().code : FaultCode::not_made;
}

std::string svg(const std::string& size, const std::string& inside) {
  return "<svg xmlns='http://www.w3.org/2000/svg' " + size + ">" + inside + "</svg>";
}

std::string dxf(const std::string& units, const std::string& entities) {
  return "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n" + units + "\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities +
         "0\nENDSEC\n0\nEOF\n";
}

std::string dxf_line(double x1, double y1, double x2, double y2) {
  const auto number = [](int code, double value) { return std::to_string(code) + "\n" + std::to_string(value) + "\n"; };
  return "0\nLINE\n8\n0\n" + number(10, x1) + number(20, y1) + number(11, x2) + number(21, y2);
}

/// The ends of its pieces from the lowest up, as seen from the lowest: a line may be read from either end, and where
/// its drawing's zero lies is not told.
std::vector<Point> corners(const OpenLine& line) {
  std::vector<Point> ends{start_of(line[0])};
  for (const PathSegment& piece : line) ends.push_back(end_of(piece));
  std::ranges::sort(ends, {}, &Point::y);
  for (std::size_t i = ends.size(); i-- > 0;) ends[i] = ends[i] - ends[0];
  return ends;
}

TEST(OpenLine, OfAnSvgIsInMillimetresAndItsYPointsUp) {
  const OpenLine read = line_of(svg_open_line(
      svg("width='20mm' height='80mm' viewBox='0 0 10 40'", "<polyline fill='none' points='0,40 10,25 4,15'/>")));
  ASSERT_EQ(read.size(), 2u);
  EXPECT_NEAR(distance(corners(read)[1], {20, 30}), 0, 1e-12);
  EXPECT_NEAR(distance(corners(read)[2], {8, 50}), 0, 1e-12);
}

TEST(OpenLine, OfAnSvgWithoutUnitsHas96ToTheInch) {
  const OpenLine read = line_of(svg_open_line(svg("width='96' height='192'", "<path d='M 0 0 L 96 192'/>")));
  EXPECT_NEAR(distance(start_of(read[0]), end_of(read[0])), 25.4 * std::sqrt(5.0), 1e-9);
}

TEST(OpenLine, IsJoinedFromItsParts) {
  const OpenLine read = line_of(svg_open_line(svg(
      "width='20mm' height='80mm' viewBox='0 0 20 80'",
      "<line x1='3' y1='20' x2='9' y2='60' stroke='#000'/><path d='M 3 20.004 L 0 0' stroke='#f00' fill='none'/>")));
  ASSERT_EQ(read.size(), 2u);
  EXPECT_EQ(end_of(read[0]), start_of(read[1]));
}

TEST(OpenLine, OfADxfIsInItsUnit) {
  const OpenLine inches = line_of(dxf_open_line(dxf("1", dxf_line(0, -1, 0.5, 1))));
  EXPECT_NEAR(distance(corners(inches)[1], {12.7, 50.8}), 0, 1e-9);
  const OpenLine none = line_of(dxf_open_line(dxf("0", dxf_line(0, -40, 5, 40))));
  EXPECT_NEAR(distance(corners(none)[1], {5, 80}), 0, 1e-9);
}

TEST(OpenLine, IsOneAndOpen) {
  const std::string size = "width='20mm' height='80mm' viewBox='0 0 20 80'";
  EXPECT_EQ(code_of(svg_open_line(svg(size, ""))), FaultCode::end_not_crossing);
  EXPECT_EQ(code_of(svg_open_line(svg(size, "<rect x='1' y='1' width='5' height='60'/>"))),
            FaultCode::end_not_crossing);
  EXPECT_EQ(code_of(svg_open_line(svg(size, "<path d='M 0 0 L 5 80 M 9 0 L 9 80'/>"))), FaultCode::end_not_crossing);
  EXPECT_EQ(code_of(dxf_open_line(dxf("4", ""))), FaultCode::end_not_crossing);
}

}  // namespace
}  // namespace sagitta::test
