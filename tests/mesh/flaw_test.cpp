// The judgement of meshes: a sound mesh passes, and each of its mutations is told by its kind. The mutations are made
// here; what is wrong with them follows from how they are made.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "mesh/MeshFlaw.hpp"
#include "oracle/Catalogue.hpp"
#include "plan/WoodVolume.hpp"

namespace sagitta {
namespace {

class MeshFlawTest : public testing::Test {
 protected:
  /// A dot across two slots, on a cylinder.
  MeshFlawTest()
      : shell(std::get<Shell>(
            made::shell_of(read_board(places::tests() + "/cases/singles/S05.toml").board, Stage::board))),
        mesh(make_mesh(shell)) {}

  std::optional<Flaw::Kind> kind() const {
    const auto flaw = flaw_in(mesh, shell, wood_volume(shell.plan));
    return flaw ? std::optional(flaw->kind) : std::nullopt;
  }

  Shell shell;
  Mesh mesh;
};

TEST_F(MeshFlawTest, ASoundMeshHasNone) { EXPECT_EQ(kind(), std::nullopt); }

TEST_F(MeshFlawTest, ADroppedTriangle) {
  for (const std::size_t i : {std::size_t{0}, mesh.triangles.size() / 2, mesh.triangles.size() - 1}) {
    const Mesh whole = mesh;
    mesh.triangles.erase(mesh.triangles.begin() + static_cast<std::ptrdiff_t>(i));
    mesh.face.erase(mesh.face.begin() + static_cast<std::ptrdiff_t>(i));
    EXPECT_EQ(kind(), Flaw::Kind::edge_use) << i;
    mesh = whole;
  }
}

TEST_F(MeshFlawTest, AFlippedTriangle) {
  std::swap(mesh.triangles[7][0], mesh.triangles[7][1]);
  EXPECT_EQ(kind(), Flaw::Kind::edge_use);
}

TEST_F(MeshFlawTest, ATriangleTwice) {
  mesh.triangles.push_back(mesh.triangles[7]);
  mesh.face.push_back(mesh.face[7]);
  EXPECT_EQ(kind(), Flaw::Kind::edge_use);
}

TEST_F(MeshFlawTest, TwoTrianglesBackToBack) {
  const auto point = static_cast<std::uint32_t>(mesh.points.size());
  for (const float x : {1.0F, 2.0F, 3.0F}) mesh.points.push_back({x, x * x, 100});
  mesh.triangles.push_back({point, point + 1, point + 2});
  mesh.triangles.push_back({point + 2, point + 1, point});
  mesh.face.insert(mesh.face.end(), 2, 0);
  EXPECT_EQ(kind(), Flaw::Kind::doubled);
}

TEST_F(MeshFlawTest, TwoPointsThatAreOneAs32BitFloats) {
  const std::array<float, 3> place = mesh.points[mesh.triangles[7][0]];
  mesh.points[mesh.triangles[9][0]] = place;
  const auto found = kind();
  EXPECT_TRUE(found == Flaw::Kind::equal_points || mesh.triangles[7][0] == mesh.triangles[9][0]);
  EXPECT_EQ(found, Flaw::Kind::equal_points);
}

TEST_F(MeshFlawTest, ATriangleThatNamesNoPoint) {
  mesh.triangles[3][1] = static_cast<std::uint32_t>(mesh.points.size());
  EXPECT_EQ(kind(), Flaw::Kind::empty);
  mesh.triangles.clear();
  EXPECT_EQ(kind(), Flaw::Kind::empty);
}

/// A second body that touches the first in one point.
TEST_F(MeshFlawTest, WoodThatMeetsWoodInAPoint) {
  const auto p = static_cast<std::uint32_t>(mesh.points.size());
  const std::uint32_t shared = mesh.triangles[7][0];
  const auto [x, y, z] = mesh.points[shared];
  mesh.points.push_back({x + 1, y, z + 5});
  mesh.points.push_back({x, y + 1, z + 5});
  mesh.points.push_back({x, y, z + 6});
  for (const std::array<std::uint32_t, 3> t :
       {std::array{shared, p, p + 1}, {shared, p + 1, p + 2}, {shared, p + 2, p}, {p + 2, p + 1, p}}) {
    mesh.triangles.push_back(t);
    mesh.face.push_back(0);
  }
  EXPECT_EQ(kind(), Flaw::Kind::vertex_use);
}

TEST_F(MeshFlawTest, AHoleThatThePlanHasNot) {
  EXPECT_EQ(flaw_in(mesh, 0)->kind, Flaw::Kind::euler);
  EXPECT_EQ(flaw_in(mesh, 2), std::nullopt);
}

TEST_F(MeshFlawTest, AVolumeThatIsNotThePlans) {
  for (auto& point : mesh.points) point[2] *= 1.001F;
  EXPECT_EQ(kind(), Flaw::Kind::volume);
}

TEST_F(MeshFlawTest, PointsThatAreOneInAFileWithFewFigures) {
  EXPECT_EQ(equal_points(mesh, 1e-6), std::nullopt);
  mesh.points.push_back({0, 0, 3e-7F});
  mesh.points.push_back({0, 0, 1e-7F});
  EXPECT_EQ(equal_points(mesh, 1e-6)->kind, Flaw::Kind::equal_points);
}

TEST_F(MeshFlawTest, SaysWhere) {
  mesh.triangles.erase(mesh.triangles.begin() + 7);
  const std::int32_t face = mesh.face[7];
  mesh.face.erase(mesh.face.begin() + 7);
  const Flaw flaw = *flaw_in(mesh, 2);
  EXPECT_GE(flaw.at[2], 0);
  EXPECT_LE(flaw.at[2], 7);
  EXPECT_GE(flaw.face, 0);
  EXPECT_GE(face, 0);
}

/// All boards of the catalogue of special cases: none is refused.
TEST(MeshFlaws, NoneInTheCatalogue) {
  for (const oracle::Case& one : oracle::catalogue(places::tests() + "/cases")) {
    if (one.refused) continue;
    const Shell shell = std::get<Shell>(made::shell_of(read_board(one.path).board, Stage::board));
    const auto flaw = flaw_in(make_mesh(shell), shell, wood_volume(shell.plan));
    EXPECT_FALSE(flaw) << one.name << " " << (flaw ? flaw->what : "");
  }
}

}  // namespace
}  // namespace sagitta
