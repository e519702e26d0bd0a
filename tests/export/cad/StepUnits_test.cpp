// STEP in inches: what gmsh, a reader that is not ours, makes of the file's own unit. 1 in = 25.4 mm exactly (ISO
// 31-1).

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "export/CommandLine.hpp"
#include "export/Gmsh.hpp"

namespace sagitta::test {
namespace {

using nlohmann::json;
constexpr double inch = 25.4;

/// The board of a preset, exported in both units.
struct BothUnits {
  ScratchFolder scratch;
  fs::path in_mm = scratch / "mm/board.step", in_inches = scratch / "in/board.step";
  BothUnits(const std::string& preset, const std::string& schema) {
    for (const char* unit : {"mm", "in"}) {
      const Outcome made = sagitta("export '" + preset_path(preset).string() + "' --only step --stage board --step " +
                                   schema + " --step-units " + unit + " --to '" + (scratch / unit).string() + "'");
      if (made.code != 0) throw std::runtime_error(made.err);
    }
  }
};

class StepUnits : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Schemas, StepUnits, testing::Values("ap214", "ap242"));

TEST_P(StepUnits, InInchesAreTheSameBoard) {
  for (const char* preset : {"heron-six", "tern-inch-left"}) {
    SCOPED_TRACE(preset);
    const BothUnits files(preset, GetParam());
    const json body = json::parse(bytes_of(files.scratch / "in/manifest.json"))["files"][0]["bodies"][0];
    // The unit that the file declares, ISO 10303-41: a unit of its own by its measure in millimetres.
    const std::string text = bytes_of(files.in_inches);
    EXPECT_NE(text.find("CONVERSION_BASED_UNIT('INCH',"), std::string::npos);
    EXPECT_NE(text.find("LENGTH_MEASURE_WITH_UNIT(25.4,"), std::string::npos);
    EXPECT_EQ(bytes_of(files.in_mm).find("CONVERSION_BASED_UNIT('INCH',"), std::string::npos);
    const GmshReading mm = read_by_gmsh(files.in_mm), inches = read_by_gmsh(files.in_inches);
    EXPECT_EQ(inches.bodies, 1U);
    EXPECT_NEAR(inches.volume / double{body["volume"]}, 1, 1e-8) << "the manifest speaks of mm, whatever the file does";
    EXPECT_NEAR(inches.volume / mm.volume, 1, 1e-8);
    for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR(inches.box[i], mm.box[i], 1e-5) << i;
  }
}

TEST_P(StepUnits, InInchesAreReadAsInches) {
  const BothUnits files("heron-six", GetParam());
  const GmshReading inches = read_by_gmsh(files.in_inches, "INCH"), mm = read_by_gmsh(files.in_mm);
  EXPECT_NEAR(inches.volume * inch * inch * inch / mm.volume, 1, 1e-8);
  // heron-six: 648 mm, 22 frets, 10 mm past the last one; glue face at 0, at the heel 52 mm between the outer strings
  // where the scale ends, 35.5 at the nut, and 3.5 beside each.
  const double heel = 648 * (1 - std::exp2(-22 / 12.0)) + 10;
  EXPECT_NEAR(inches.box[3], heel / inch, 1e-5);
  EXPECT_NEAR(inches.box[4], ((35.5 + (52 - 35.5) * heel / 648) / 2 + 3.5) / inch, 1e-5);
  EXPECT_NEAR(inches.box[2], 0, 1e-5);
}

}  // namespace
}  // namespace sagitta::test
