// Every board of the catalogue of special cases as a mesh: closed, and its volume the reference within what the stated
// deviation allows.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "oracle/Catalogue.hpp"

namespace sagitta {
namespace {

using oracle::Case;

/// So fine that a missing side dot shows in the volume, mm.
constexpr double fine_deviation = 1e-4;

class CaseMesh : public testing::TestWithParam<Case> {};

TEST_P(CaseMesh, IsClosedAndHasTheReferenceVolume) {
  const Case& one = GetParam();
  if (one.refused) return;
  const BoardFile file = read_board(one.path);
  ASSERT_TRUE(file.sound()) << file.problems.front().message;
  const auto shell = made::shell_of(file.board, Stage::board);
  if (const auto* faults = std::get_if<Faults>(&shell)) {
    FAIL() << made::told(*faults);
  }
  for (const double deviation : {fine_deviation, default_deviation, 0.05}) {
    const Mesh mesh = make_mesh(std::get<Shell>(shell), deviation);
    EXPECT_EQ(unsound(mesh, one.genus), "");
    EXPECT_LE(mesh.deviation, deviation);
    EXPECT_NEAR(volume(mesh), one.volume, volume_allowance(mesh, std::get<Shell>(shell)));
  }
}

std::string plain_name(const testing::TestParamInfo<Case>& info) {
  std::string name = info.param.name;
  std::erase(name, '-');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, CaseMesh, testing::ValuesIn(oracle::catalogue(places::tests() + "/cases")),
                         plain_name);

}  // namespace
}  // namespace sagitta
