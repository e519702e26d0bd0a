/// Whether a drawing says how large it is: by the units that SVG 1.1, section 4.2 calls lengths, and by the values of
/// $INSUNITS in the DXF reference.

#include <gtest/gtest.h>

#include "artwork/Dxf.hpp"
#include "artwork/Svg.hpp"
#include "artwork/TrueSize.hpp"

namespace sagitta {
namespace {

bool svg_with(const std::string& size) {
  return svg_says_its_size("<svg xmlns='http://www.w3.org/2000/svg' " + size + " viewBox='0 0 9 9'/>");
}

TEST(TrueSize, OfAnSvgIsALengthWithItsUnit) {
  for (const char* size :
       {"width='9mm'", "height='0.9cm'", "width=' 1in '", "width='30pt'", "height='2pc'", "width='100%' height='9mm'"})
    EXPECT_TRUE(svg_with(size)) << size;
  for (const char* size : {"", "width='9'", "width='9px' height='9px'", "width='100%'", "width='mm'", "width='9em'"})
    EXPECT_FALSE(svg_with(size)) << size;
  EXPECT_FALSE(svg_says_its_size("<svg width='9mm'"));
}

std::string dxf_in(const std::string& units) {
  return "0\nSECTION\n2\nHEADER\n" + (units.empty() ? "" : "9\n$INSUNITS\n70\n" + units + "\n") +
         "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n";
}

TEST(TrueSize, OfADxfIsItsUnit) {
  for (const char* units : {"1", "4", "5"}) EXPECT_TRUE(dxf_says_its_size(dxf_in(units))) << units;  // in, mm, cm
  for (const char* units : {"", "0"}) EXPECT_FALSE(dxf_says_its_size(dxf_in(units))) << units;       // unitless
  EXPECT_FALSE(dxf_says_its_size("no drawing"));
}

TEST(TrueSize, OfNoFileIsNone) { EXPECT_FALSE(says_its_size("/nowhere/at/all.svg")); }

}  // namespace
}  // namespace sagitta
