// Boards whose cuts all but coincide, each through every stage: sound as a solid, sound as the STEP file's reader has
// it, closed as a mesh of 32-bit floats.

#include <gtest/gtest.h>

#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <algorithm>
#include <filesystem>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

/// What a vertex of a solid may be off at most, mm: a tenth of the snap.
constexpr double vertex_tolerance = 1e-5;

double widest_vertex(const TopoDS_Shape& shape) {
  TopTools_IndexedMapOfShape vertices;
  TopExp::MapShapes(shape, TopAbs_VERTEX, vertices);
  double widest = 0;
  for (int i = 1; i <= vertices.Extent(); ++i)
    widest = std::max(widest, BRep_Tool::Tolerance(TopoDS::Vertex(vertices(i))));
  return widest;
}

std::vector<std::string> boards() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(places::tests() + "/cases/near"))
    if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

class Near : public testing::TestWithParam<std::string> {};

TEST_P(Near, IsSoundAtEveryStage) {
  const BoardFile file = read_board(places::tests() + "/cases/near/" + GetParam() + ".toml");
  ASSERT_TRUE(file.sound()) << file.problems.front().message;
  for (const Stage stage : stages_of(file.board)) {
    SCOPED_TRACE(name(stage));
    const auto made = made::shell_of(file.board, stage);
    ASSERT_TRUE(std::holds_alternative<Shell>(made)) << made::told(std::get<Faults>(made));
    const Shell& shell = std::get<Shell>(made);
    ASSERT_EQ(unsound(shell), "");
    const TopoDS_Solid solid = make_solid(shell);
    EXPECT_EQ(unsound(solid, genus(shell)), "");
    EXPECT_LT(widest_vertex(solid), vertex_tolerance);
    const StepCopy copy = through_step(solid, GetParam());
    ASSERT_EQ(copy.trouble, "");
    EXPECT_EQ(unsound(copy.solid, genus(shell)), "");
    EXPECT_LT(widest_vertex(copy.solid), vertex_tolerance);
    const double exact = mass_properties(solid).volume;
    EXPECT_NEAR(mass_properties(copy.solid).volume / exact, 1, 1e-6);
    const Mesh mesh = make_mesh(shell);
    EXPECT_EQ(unsound(mesh, genus(shell)), "");
    EXPECT_NEAR(volume(mesh), exact, volume_allowance(mesh, shell));
  }
}

std::string plain_name(const testing::TestParamInfo<std::string>& board) {
  std::string name = board.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Boards, Near, testing::ValuesIn(boards()), plain_name);

}  // namespace
}  // namespace sagitta
