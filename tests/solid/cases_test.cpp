// Every board of the catalogue of special cases as a solid: reference volume, face count, genus, soundness, and all of
// it again after a STEP file. The references come from quadrature and from 3D booleans, see oracle/Catalogue.hpp.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "oracle/Catalogue.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

using oracle::Case;

class CaseSolid : public testing::TestWithParam<Case> {
 protected:
  /// The shell of stage board; skips the test while the plan says that a feature is not built yet.
  void SetUp() override {
    const BoardFile file = read_board(GetParam().path);
    if (GetParam().refused) {
      refused = !file.sound() || std::holds_alternative<Faults>(made::shell_of(file.board, Stage::board));
      return;
    }
    ASSERT_TRUE(file.sound()) << file.problems.front().message;
    auto result = made::shell_of(file.board, Stage::board);
    if (const auto* faults = std::get_if<Faults>(&result)) {
      FAIL() << made::told(*faults);
    }
    shell = std::get<Shell>(std::move(result));
  }

  Shell shell;
  bool refused = false;
};

TEST_P(CaseSolid, HasTheReferenceVolumeAndShape) {
  const Case& one = GetParam();
  if (one.refused) {
    EXPECT_TRUE(refused);
    return;
  }
  EXPECT_EQ(unsound(shell), "");
  const TopoDS_Solid solid = make_solid(shell);
  EXPECT_EQ(made::face_count(shell), one.faces);
  EXPECT_EQ(genus(shell), one.genus);
  EXPECT_EQ(unsound(solid, one.genus), "");
  EXPECT_NEAR(mass_properties(solid).volume / one.volume, 1, 1e-6);
}

TEST_P(CaseSolid, IsTheSameAfterStep) {
  const Case& one = GetParam();
  if (one.refused) return;
  const StepCopy copy = through_step(make_solid(shell), "case-" + one.name);
  ASSERT_EQ(copy.trouble, "");
  EXPECT_EQ(unsound(copy.solid, one.genus), "");
  EXPECT_NEAR(mass_properties(copy.solid).volume / one.volume, 1, 1e-6);
}

std::string plain_name(const testing::TestParamInfo<Case>& info) {
  std::string name = info.param.name;
  std::erase(name, '-');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, CaseSolid, testing::ValuesIn(oracle::catalogue(places::tests() + "/cases")),
                         plain_name);

}  // namespace
}  // namespace sagitta
