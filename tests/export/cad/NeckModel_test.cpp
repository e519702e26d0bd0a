// The neck's glue face and its gauge, read back by programs that are not ours.

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <nlohmann/json.hpp>
#include <set>

#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"
#include "neck/NeckPlan.hpp"

namespace sagitta::test {
namespace {

/// Area of the one face of a STEP file and length of its border, by gmsh.
struct FaceReading {
  double faces = 0, area = 0, border = 0;
};
FaceReading face_by_gmsh(const fs::path& step) {
  const ScratchFolder scratch;
  write_file(scratch / "read.geo",
             "Geometry.OCCTargetUnit = \"MM\";\nSetFactory(\"OpenCASCADE\");\nMerge \"" + step.string() +
                 "\";\ns() = Surface{:};\na = Mass Surface{s(0)};\nc() = Boundary{Surface{s(0)};};\nl = 0;\n"
                 "For i In {0:#c()-1}\n  l += Mass Curve{Abs(c(i))};\nEndFor\n"
                 "Printf(\"figures %g %.12g %.12g\", #s(), a, l);\n");
  const Outcome read = shell("gmsh -parse_and_exit '" + (scratch / "read.geo").string() + "'");
  const std::size_t at = read.out.find("figures ");
  if (at == std::string::npos) throw std::runtime_error(read.out + read.err);
  FaceReading found;
  std::istringstream(read.out.substr(at + 8)) >> found.faces >> found.area >> found.border;
  return found;
}

/// Points of a binary STL: 80 bytes, a count, and 50 bytes a triangle.
std::vector<std::array<float, 3>> stl_points(const fs::path& file) {
  const std::string bytes = bytes_of(file);
  std::uint32_t count = 0;
  std::memcpy(&count, bytes.data() + 80, 4);
  std::vector<std::array<float, 3>> points;
  for (std::uint32_t i = 0; i < count; ++i)
    for (int k = 1; k < 4; ++k) {
      std::array<float, 3> p{};
      std::memcpy(p.data(), bytes.data() + 84 + 50 * i + 12 * k, 12);
      points.push_back(p);
    }
  return points;
}

/// Area of everything at the height of the glue face in a STEP file of solids, by gmsh: the board's from below.
double bottom_by_gmsh(const fs::path& step) {
  const ScratchFolder scratch;
  write_file(scratch / "read.geo",
             "Geometry.OCCTargetUnit = \"MM\";\nSetFactory(\"OpenCASCADE\");\nMerge \"" + step.string() +
                 "\";\ns() = Surface In BoundingBox{-1e4, -1e4, -1e-3, 1e4, 1e4, 1e-3};\na = 0;\n"
                 "For i In {0:#s()-1}\n  a += Mass Surface{s(i)};\nEndFor\nPrintf(\"figures %.12g\", a);\n");
  const Outcome read = shell("gmsh -parse_and_exit '" + (scratch / "read.geo").string() + "'");
  const std::size_t at = read.out.find("figures ");
  if (at == std::string::npos) throw std::runtime_error(read.out + read.err);
  return std::stod(read.out.substr(at + 8));
}

class NeckModel : public ::testing::Test {
 protected:
  NeckModel() {
    write_file(scratch / "board.toml", bytes_of(preset_path("heron-six")) +
                                           "\n[neck]\njoint_fret = 12\nchannel_width = 6\nchannel_depth = 9\n"
                                           "allowance = 0.4\ndepth_first = 21\ndepth_twelfth = 23\n");
    const Outcome made = sagitta("export '" + (scratch / "board.toml").string() +
                                 "' --only step,stl,dxf,svg,pdf --to '" + (scratch / "out").string() + "'");
    EXPECT_EQ(made.code, 0) << made.err;
  }
  ScratchFolder scratch;
};

// The face is the board's outline less the pins: area and border by the closed forms of lines and arcs.
TEST_F(NeckModel, FaceHasTheBoardsOutline) {
  const auto prepared = prepare((scratch / "board.toml").string(), Outside::refused);
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  double wanted = area(ready.layout().outline), border = perimeter(ready.layout().outline);
  for (const Pin& pin : ready.layout().pins)
    wanted -= std::numbers::pi * pin.radius * pin.radius, border += 2 * std::numbers::pi * pin.radius;
  const FaceReading face = face_by_gmsh(scratch / "out/neck/neck-face.step");
  EXPECT_EQ(face.faces, 1);
  EXPECT_NEAR(face.area, wanted, 1e-6 * wanted);
  EXPECT_NEAR(face.border, border, 1e-6 * border);
}

// At both ends the gauge is as wide as the board there and twice the allowance.
TEST_F(NeckModel, GaugeHasTheNecksTaper) {
  const auto prepared = prepare((scratch / "board.toml").string(), Outside::refused);
  const Layout& layout = std::get<PreparedBoard>(prepared).layout();
  const auto points = stl_points(scratch / "out/neck/neck-gauge.stl");
  ASSERT_FALSE(points.empty());
  for (const double x : {layout.nut_end, layout.heel_end}) {
    double low = 1e9, high = -1e9;
    std::set<float> heights;
    for (const auto& p : points)
      if (std::abs(p[0] - x) < 1e-3) {
        low = std::min<double>(low, p[1]), high = std::max<double>(high, p[1]);
        heights.insert(p[2]);
      }
    EXPECT_NEAR(-low, layout.edge(0, x) + 0.4, 1e-4);
    EXPECT_NEAR(high, layout.edge(1, x) + 0.4, 1e-4);
    EXPECT_EQ(heights, (std::set<float>{0, 3}));
  }
}

// By hand: half widths 26 at the nut and 31 at fret 12, half of the scale away, on a straight line, and 0.5 more on
// each side, through the corners of the STL.
TEST(BoundNeck, HasTheBoardsBottomAndItsTaper) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", bytes_of(preset_path("stilt-classical")) +
                                         "\n[binding]\nwidth = 1.5\nheight = 3\n[pins]\nat = [[30, 12], [300, -14]]\n"
                                         "[neck]\njoint_fret = 12\nallowance = 0.5\n");
  const Outcome made = sagitta("export '" + (scratch / "board.toml").string() + "' --only step,stl --to '" +
                               (scratch / "out").string() + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  fs::path board;
  const auto manifest = nlohmann::json::parse(bytes_of(scratch / "out/manifest.json"));
  for (const auto& file : manifest["files"])
    if (file["stage"] == "board" && file["kind"] == "step") board = scratch / "out" / file["file"].get<std::string>();
  ASSERT_FALSE(board.empty());
  const double bottom = bottom_by_gmsh(board), face = face_by_gmsh(scratch / "out/neck/neck-face.step").area;
  EXPECT_GT(bottom, 20000);
  EXPECT_NEAR(face, bottom, 1e-6 * bottom);
  const std::string text = bytes_of(scratch / "out/neck/neck-face.step");
  for (const char* name : {"nut line", "neck joint", "neck's side at negative y", "neck's side at positive y"}) {
    std::string quoted = name;  // in STEP a quote is written twice
    if (const auto at = quoted.find('\''); at != std::string::npos) quoted.insert(at, "'");
    EXPECT_NE(text.find(quoted), std::string::npos) << name;
  }
  // The end crosses the centre line 2.5 before fret 19.
  const double end = 650 * (1 - std::exp2(-19 / 12.0)) - 2.5;
  double nut = 0, heel = 0;
  for (const auto& p : stl_points(scratch / "out/neck/neck-gauge.stl")) {
    if (std::abs(p[0]) < 1e-3) nut = std::max<double>(nut, std::abs(p[1]));
    if (std::abs(p[0] - end) < 1e-3) heel = std::max<double>(heel, std::abs(p[1]));
  }
  EXPECT_NEAR(nut, 26.5, 1e-4);
  EXPECT_NEAR(heel, 26 + 5 * end / 325 + 0.5, 1e-4);
}

TEST_F(NeckModel, FolderListsWhatTheNeckIsMadeWith) {
  const auto manifest = nlohmann::json::parse(bytes_of(scratch / "out/manifest.json"));
  std::set<std::string> files;
  for (const auto& file : manifest["files"]) files.insert(file["file"].get<std::string>());
  for (const char* name : {"neck-sheet.pdf", "neck-face.step", "neck-face.dxf", "neck-face.svg", "neck-face-down.dxf",
                           "neck-gauge.step", "neck-gauge.stl"})
    EXPECT_TRUE(files.contains("neck/" + std::string(name))) << name;
}

// 21 deep with the board at fret 1; the channel takes 9 of the neck's wood.
TEST_F(NeckModel, DepthsAreWhatTheBoardLeaves) {
  const auto prepared = prepare((scratch / "board.toml").string(), Outside::refused);
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  const NeckPlan plan = neck_plan(ready);
  ASSERT_EQ(plan.depths.size(), 2U);
  const double thickness = ready.board().board.thickness;
  EXPECT_NEAR(plan.depths[0].wood, 21 - thickness, 1e-9);
  EXPECT_NEAR(plan.depths[1].under_rod.value(), 23 - thickness - 9, 1e-9);
}

}  // namespace
}  // namespace sagitta::test
