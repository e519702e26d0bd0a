// Scallops, bevels and rolls as triangles: how far they really stray from the surface, at more places than the mesh
// itself looks at, and how many there are of them.

#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <numbers>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "layout/Layout.hpp"
#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "oracle/HeightVolume.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;
using std::numbers::pi;

/// The mesh looks at 15 places of a triangle. Between them the distance to a surface that is a paraboloid there is
/// greater by less than this (the greatest of a quadratic over a triangle against its greatest over these places).
constexpr double between_looks = 1.06;

/// The surfaces by the formulas of BOARD-FILE, from the oracle's own reading of the board.
class Truth {
 public:
  Truth(const Board& board, const Shell& shell)
      : layout_(std::get<Layout>(lay_out(board))),
        plain_(shell.plan.surface),
        forms_(oracle::forms_at(board, layout_, shell.plan.stage)) {}

  /// Distance of a place from the surface of a face, to the first order.
  double off(const BoundingSurface& bound, Point p, double z) const {
    if (bound.kind == BoundingSurface::Kind::roll) return off_roll(bound, p, z);
    constexpr double step = 1e-4;
    const auto at = [&](double x, double y) { return height(bound, {x, y}); };
    const double along = (at(p.x + step, p.y) - at(p.x - step, p.y)) / (2 * step);
    const double across = (at(p.x, p.y + step) - at(p.x, p.y - step)) / (2 * step);
    return std::abs(at(p.x, p.y) - z) / std::hypot(1, along, across);
  }

 private:
  double edge(Point p) const {
    const std::size_t side = p.y < 0 ? 0 : 1;
    return layout_.edge_at_nut[side] + layout_.edge_slope[side] * p.x;
  }

  double height(const BoundingSurface& bound, Point p) const {
    if (bound.form < 0) {
      const double begin = edge(p) - forms_.bevel;
      return plain_.height(p.x, begin) - bound.value - (std::abs(p.y) - begin) / std::tan(forms_.angle);
    }
    const double whole = plain_.height(p.x, p.y) - bound.value;
    if (bound.form == 0) return whole;
    const oracle::Trough& trough = forms_.troughs[static_cast<std::size_t>(bound.form - 1)];
    const double low = trough.low.x + trough.low_lean * p.y, high = trough.high.x + trough.high_lean * p.y;
    return whole - trough.depth * std::pow(std::sin(pi * (p.x - low) / (high - low)), 2);
  }

  /// The arc tangent to the upright line at the edge and, from within, to the playing arc.
  double off_roll(const BoundingSurface& bound, Point p, double z) const {
    const double in = edge(p) - forms_.roll, less = plain_.radius(p.x) - forms_.roll;
    const double drop = plain_.flat ? forms_.roll : plain_.radius(p.x) - std::sqrt(less * less - in * in);
    const double axis = plain_.crown(p.x) - bound.value - drop;
    return std::abs(std::hypot(std::abs(p.y) - in, z - axis) - forms_.roll);
  }

  Layout layout_;
  Surface plain_;
  oracle::Forms forms_;
};

double furthest_off(const Board& board, const Shell& shell, const Mesh& mesh) {
  const Truth truth(board, shell);
  constexpr int n = 10;
  double most = 0;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    const ShellFace& face = shell.faces[static_cast<std::size_t>(mesh.face[t])];
    if (face.kind != ShellFace::Kind::top || face.bound.plane(shell.plan.surface) || face.bound.of_hole()) continue;
    const auto &a = mesh.points[mesh.triangles[t][0]], &b = mesh.points[mesh.triangles[t][1]],
               &c = mesh.points[mesh.triangles[t][2]];
    for (int i = 0; i <= n; ++i)
      for (int k = 0; i + k <= n; ++k) {
        const double u = i / double{n}, v = k / double{n}, w = 1 - u - v;
        const Point p{u * a[0] + v * b[0] + w * c[0], u * a[1] + v * b[1] + w * c[1]};
        most = std::max(most, truth.off(face.bound, p, u * a[2] + v * b[2] + w * c[2]));
      }
  }
  return most;
}

Shell shell_of(const Board& board) {
  auto made = made::shell_of(board, Stage::board);
  if (const auto* faults = std::get_if<Faults>(&made)) throw std::runtime_error(made::told(*faults));
  return std::get<Shell>(std::move(made));
}

void expect_true_deviation(const Board& board, double aim) {
  const Shell shell = shell_of(board);
  const Mesh mesh = make_mesh(shell, aim);
  const double off = furthest_off(board, shell, mesh);
  EXPECT_LE(mesh.deviation, aim);
  EXPECT_LE(off, aim);
  EXPECT_LE(off, between_looks * mesh.deviation + 1e-6);
}

Board board_at(const fs::path& path) {
  const BoardFile file = read_board(path.string());
  EXPECT_TRUE(file.sound()) << path;
  return file.board;
}

class FormMesh : public testing::TestWithParam<std::string> {};

TEST_P(FormMesh, StraysNoFurtherThanItsAim) {
  expect_true_deviation(board_at(places::tests() + "/cases/" + GetParam() + ".toml"), default_deviation);
}

std::vector<std::string> boards() {
  std::vector<std::string> names;
  for (const auto& [folder, first] : {std::pair{"forms", ""}, {"families", "k3"}, {"families", "k4"}})
    for (const auto& entry : fs::directory_iterator(places::tests() + "/cases/" + folder))
      if (const std::string name = entry.path().stem().string(); name.starts_with(first))
        names.push_back(std::string(folder) + "/" + name);
  std::sort(names.begin(), names.end());
  return names;
}

std::string plain_name(const testing::TestParamInfo<std::string>& board) {
  std::string name = board.param;
  std::erase(name, '-');
  std::replace(name.begin(), name.end(), '/', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Cases, FormMesh, testing::ValuesIn(boards()), plain_name);

TEST(FormMesh, PresetsStrayNoFurtherThanAnyAim) {
  for (const char* name : {"whimbrel-scalloped", "sanderling-rolled"})
    for (const double aim : {0.001, 0.005, 0.05})
      expect_true_deviation(board_at(places::source() + "/presets/" + name + ".toml"), aim);
}

/// Of random boards that once strayed further, or whose meshes were open.
TEST(FormMesh, BoardsThatOnceFailedStrayNoFurtherThanTheirAim) {
  for (const auto& entry : fs::directory_iterator(places::source() + "/presets/regressions"))
    if (entry.path().stem().string().starts_with("kinds")) {
      SCOPED_TRACE(entry.path());
      expect_true_deviation(board_at(entry.path()), default_deviation);
    }
}

/// Of all triangulations of a paraboloid z = (a x^2 + b y^2) / 2 that stray by at most e, the one of least triangles
/// has equilateral ones once x and y are scaled by sqrt(a) and sqrt(b), each (3 sqrt(3) / 2) e / sqrt(a b) large.
/// Nadler, "Piecewise linear best L2 approximation on triangulations", 1986; D'Azevedo and Simpson, 1989. A scallop
/// bends nowhere more than a = 2 d (pi / w)^2 along the board.
TEST(FormMesh, ScallopHasNoMoreThanThriceTheLeastTriangles) {
  const Board board = board_at(places::source() + "/presets/whimbrel-scalloped.toml");
  const Shell shell = shell_of(board);
  const Mesh mesh = make_mesh(shell);
  const Layout layout = std::get<Layout>(lay_out(board));
  const oracle::Forms forms = oracle::forms_at(board, layout, Stage::board);
  std::map<int, int> triangles;
  for (const std::int32_t face : mesh.face) {
    const ShellFace& of = shell.faces[static_cast<std::size_t>(face)];
    if (of.kind == ShellFace::Kind::top && of.bound.scalloped()) ++triangles[of.bound.form];
  }
  ASSERT_EQ(triangles.size(), 10U);
  for (const auto& [form, count] : triangles) {
    const oracle::Trough& trough = forms.troughs[static_cast<std::size_t>(form - 1)];
    const double width = trough.high.x - trough.low.x, middle = (trough.high.x + trough.low.x) / 2;
    const double area = width * 2 * (layout.edge_at_nut[0] + layout.edge_slope[0] * middle);
    const double a = 2 * trough.depth * std::pow(pi / width, 2), b = 1 / shell.plan.surface.radius(middle);
    const double least = area * std::sqrt(a * b) / (1.5 * std::sqrt(3) * default_deviation);
    EXPECT_LT(count, 3 * least) << form;
    EXPECT_GT(count, least / 3) << form;
  }
}

}  // namespace
}  // namespace sagitta
