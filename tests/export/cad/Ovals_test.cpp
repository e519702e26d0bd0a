// Oval inlays in the hand-off folder as other programs read it: ezdxf for the drawings, the kernel's reader for STEP.
// An ellipse is pi a b; the curve at distance d outside it covers A + P d + pi d^2 (Steiner), P = 4 a E(e).

#include <gtest/gtest.h>

#include <BRep_Tool.hxx>
#include <Geom_Ellipse.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <cmath>

#include "export/DrawingCopy.hpp"
#include "export/StepReading.hpp"
#include "solid/Solid.hpp"

namespace sagitta::test {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double a = 4.5, b = 3;  // half axes, the longer across the board

class Ovals : public testing::Test {
 protected:
  ScratchFolder scratch;

  /// heron-six with ovals for its dots.
  fs::path board(const std::string& before, const std::string& after) {
    std::string text = bytes_of(preset_path("heron-six"));
    const std::string dot = "shape = \"dot\"", size = "diameter = 6\n";
    text.replace(text.find(dot), dot.size(), "shape = \"oval\"\nturn = 30");
    text.replace(text.find("\n" + size) + 1, size.size(), "along = 6\nacross = 9\n");
    write_file(scratch / "ovals.toml", before + text + after);
    return scratch / "ovals.toml";
  }
  fs::path made(const std::string& options, const std::string& before = "", const std::string& after = "") {
    const std::string to = scratch / ("out" + std::to_string(++folders_));
    const Outcome done = sagitta("export '" + board(before, after).string() + "' --to '" + to + "' " + options);
    EXPECT_EQ(done.code, 0) << done.err;
    return to;
  }

 private:
  int folders_ = 0;
};

std::vector<std::array<double, 5>> ellipses(const json& drawing, const std::string& layer) {
  std::vector<std::array<double, 5>> found;
  for (const json& figure : drawing["layers"].value(layer, json::array()))
    if (figure.contains("ellipse") && figure["closed"]) found.push_back(figure["ellipse"]);
  return found;
}

// 30 degrees counter-clockwise: the longer axis, across the board, comes to lie along (-sin 30, cos 30).
TEST_F(Ovals, ArePiecesThatAreEllipsesInDxf) {
  const json copies = drawing_copies(made("--only dxf"));
  EXPECT_EQ(copies.at("board.dxf")["errors"], json::array());
  EXPECT_EQ(copies.at("board-r12.dxf")["errors"], json::array());
  const auto pieces = ellipses(copies.at("board.dxf"), "piece-shell");
  ASSERT_EQ(pieces.size(), 10U);
  ASSERT_EQ(copies.at("board.dxf")["layers"]["piece-shell"].size(), 10U);
  for (const auto& [x, y, along, up, ratio] : pieces) {
    EXPECT_NEAR(std::abs(along), a * std::sin(pi / 6), read_back);
    EXPECT_NEAR(std::abs(up), a * std::cos(pi / 6), read_back);
    EXPECT_LT(along * up, 0);
    EXPECT_NEAR(ratio, b / a, read_back);
  }
}

TEST_F(Ovals, TurnTheOtherWayOnALeftHandedBoard) {
  const json copies = drawing_copies(made("--only dxf", "hand = \"left\"\n"));
  const auto pieces = ellipses(copies.at("board.dxf"), "piece-shell");
  ASSERT_EQ(pieces.size(), 10U);
  for (const auto& [x, y, along, up, ratio] : pieces) EXPECT_GT(along * up, 0);
}

TEST_F(Ovals, PocketsCoverWhatSteinerSays) {
  const json copies = drawing_copies(made("--only dxf,svg"));
  const double d = 0.05, round = 4 * a * std::comp_ellint_2(std::sqrt(1 - b * b / (a * a)));
  const double covered = pi * a * b + round * d + pi * d * d;
  for (const char* file : {"board.dxf", "board-r12.dxf", "board.svg"}) {
    const auto pockets = copied_layer(copies.at(file), "pocket");
    ASSERT_EQ(pockets.size(), 10U) << file;
    for (const CopiedFigure& pocket : pockets) EXPECT_NEAR(area_of(pocket), covered, 0.0015 * round) << file;
  }
  for (const CopiedFigure& piece : copied_layer(copies.at("board-r12.dxf"), "piece-shell"))
    EXPECT_NEAR(area_of(piece), pi * a * b, 1e-4);
}

/// How far a point lies off an ellipse, nearly: by its radius there.
double off(const std::array<double, 5>& ellipse, const std::array<double, 3>& p) {
  const Point major{ellipse[2], ellipse[3]}, away{p[0] - ellipse[0], p[1] - ellipse[1]};
  const double u = dot(away, major) / dot(major, major), v = cross(major, away) / dot(major, major) / ellipse[4];
  return std::abs(std::hypot(u, v) - 1) * length(away);
}

// Set-ups are moved and sheets moved and turned: the arcs that old readers get lie on the ellipses wherever those are.
TEST_F(Ovals, LieWhereTheirArcsLieInEveryDrawing) {
  const json copies = drawing_copies(
      made("--only dxf", "",
           "\n[[sheets]]\nmaterial = \"shell\"\nlength = 21\nwidth = 70\nthickness = 1.7\nmargin = 1\nclamp = 1\n"));
  int drawings = 0;
  for (const auto& [name, copy] : copies.items()) {
    const auto pieces = ellipses(copy, "piece-shell");
    if (pieces.empty()) continue;
    ++drawings;
    const auto arcs = copied_layer(copies.at(name.substr(0, name.size() - 4) + "-r12.dxf"), "piece-shell");
    ASSERT_EQ(arcs.size(), pieces.size()) << name;
    for (std::size_t i = 0; i < arcs.size(); ++i)
      for (const auto& corner : arcs[i].corners) EXPECT_NEAR(off(pieces[i], corner), 0, 1e-5) << name;
  }
  EXPECT_GE(drawings, 3);  // board, set-up, sheet
}

TEST_F(Ovals, AreEllipsesInStepAtEveryStage) {
  const fs::path to = made("--only step");
  for (const char* name : {"pieces", "inlaid"}) {
    int curves = 0, parts = 0;
    for (const ReadPart& part : read_step(bytes_of(to / (std::string(name) + ".step"))).parts) {
      if (part.name.rfind("shell-", 0) != 0) continue;
      ++parts;
      EXPECT_EQ(unsound(TopoDS::Solid(part.shape)), "") << part.name;
      EXPECT_NEAR(mass_properties(TopoDS::Solid(part.shape)).volume, pi * a * b * 1.7, 1e-8) << part.name;
      for (TopExp_Explorer edge(part.shape, TopAbs_EDGE); edge.More(); edge.Next()) {
        double first = 0, last = 0;
        const auto curve = Handle(Geom_Ellipse)::DownCast(BRep_Tool::Curve(TopoDS::Edge(edge.Current()), first, last));
        if (curve.IsNull()) continue;
        ++curves;
        EXPECT_NEAR(curve->MajorRadius(), a, 1e-9);
        EXPECT_NEAR(curve->MinorRadius(), b, 1e-9);
      }
    }
    EXPECT_EQ(parts, 10) << name;
    EXPECT_EQ(curves, 10 * 8) << name;  // four edges, each seen from two faces
  }
}

TEST_F(Ovals, OfAPartOfTheJobLieWhereTheyLay) {
  const auto all = ellipses(drawing_copies(made("--only dxf")).at("board.dxf"), "piece-shell");
  const auto some = ellipses(drawing_copies(made("--only dxf --frets 9,12")).at("board.dxf"), "piece-shell");
  ASSERT_EQ(some.size(), 3U);
  for (const auto& one : some)
    EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const auto& other) {
      return std::hypot(one[0] - other[0], one[1] - other[1]) < read_back && std::abs(one[4] - other[4]) < read_back;
    }));
  // A piece with more room is no ellipse: the curve beside one is none. It covers A - P d + pi d^2.
  const json tight = drawing_copies(made("--only dxf --pieces shell-03 --clearance 0.2")).at("board.dxf");
  EXPECT_TRUE(ellipses(tight, "piece-shell").empty());
  const double d = 0.15, round = 4 * a * std::comp_ellint_2(std::sqrt(1 - b * b / (a * a)));
  const auto smaller = copied_layer(tight, "piece-shell");
  ASSERT_EQ(smaller.size(), 1U);
  EXPECT_NEAR(area_of(smaller[0]), pi * a * b - round * d + pi * d * d, 0.002 * round);
}

}  // namespace
}  // namespace sagitta::test
