#include "lift/Shell.hpp"

#include <gmock/gmock.h>

#include "board/BoardFile.hpp"
#include "made/Made.hpp"

namespace sagitta {
namespace {

Board board_of(const std::string& extra = "",
               const std::string& surface = "profile = \"single\"\nradius_at_nut = 240\n") {
  const std::string text =
      "format = 1\n[scale]\nlength = 400\nfrets = 4\ncents = [1200, 2400, 3600, 4800]\n"
      "[strings]\ncount = 4\nnut_spread = 50\nsaddle_spread = 50\n"
      "[board]\nthickness = 6.5\nedge_margin = 3\nbehind_nut = 8\npast_last_fret = 9\n"
      "[surface]\n" +
      surface + "[slots]\nwidth = 0.5\ndepth = 2\n" + extra;
  const BoardFile file = read_board_text(text, "board.toml", ".");
  EXPECT_TRUE(file.problems.empty()) << file.problems.front().key << ": " << file.problems.front().message;
  return file.board;
}

Shell shell_of(const Board& board, Stage stage = Stage::board) { return std::get<Shell>(made::shell_of(board, stage)); }

std::vector<std::string> names(const Shell& shell) {
  std::vector<std::string> found;
  for (const ShellFace& face : shell.faces) found.push_back(name(shell, face));
  return found;
}

TEST(Shell, APlainBoardHasTheFacesOneCounts) {
  // 5 pieces of playing surface, 4 slot floors, 8 slot walls, 2 sides, 2 ends, the glue face.
  const Shell shell = shell_of(board_of());
  EXPECT_EQ(unsound(shell), "");
  EXPECT_EQ(shell.faces.size(), 22U);
  EXPECT_EQ(genus(shell), 0);
  EXPECT_EQ(std::count_if(shell.faces.begin(), shell.faces.end(),
                          [&](const auto& f) { return name(shell, f) == "playing surface"; }),
            5);
  EXPECT_THAT(names(shell), testing::Contains("fret 3 slot"));
  EXPECT_THAT(names(shell), testing::Contains("glue face"));
}

TEST(Shell, ASideIsOneFaceAndItsFootOneEdge) {
  const Shell shell = shell_of(board_of());
  int feet = 0;
  for (const ShellEdge& edge : shell.edges)
    feet += !edge.upright && edge.bound.kind == BoundingSurface::Kind::level && edge.bound.value == 0 ? 1 : 0;
  EXPECT_EQ(feet, 4);
}

/// A reader weighs a curved face wrong whose one edge turns back on itself; a floor's edge may.
TEST(Shell, OverACurvedSurfaceNoEdgeTurnsByMoreThanHalfACircle) {
  const Shell shell = shell_of(board_of(
      "[[inlays]]\nshape = \"dot\"\nfrets = [1]\ndiameter = 30\nshift_across = 20\ndepth = 2\nclearance = 0\n"));
  double most = 0, most_of_floors = 0;
  for (const ShellEdge& edge : shell.edges)
    if (edge.segment.is_arc())
      (edge.bound.kind == BoundingSurface::Kind::offset_surface ? most : most_of_floors) =
          std::max(edge.bound.kind == BoundingSurface::Kind::offset_surface ? most : most_of_floors,
                   std::abs(edge.segment.sweep));
  EXPECT_LT(most, std::numbers::pi + 1e-9);
  EXPECT_GT(most_of_floors, std::numbers::pi + 0.1);
}

TEST(Shell, APinUnderAPocketIsATunnel) {
  const Shell shell =
      shell_of(board_of("[[inlays]]\nshape = \"dot\"\nfrets = [3]\ndiameter = 7.875\ndepth = 4\nclearance = 0.0625\n"
                        "[pins]\ndiameter = 3\ndepth = 3\nat = [[325, 0]]\n"));
  EXPECT_EQ(unsound(shell), "");
  EXPECT_EQ(genus(shell), 1);
}

TEST(Shell, ASideDotIsATroughAVaultAndAFloor) {
  const Shell shell = shell_of(board_of("[side_dots]\nfrets = [2]\n"));
  EXPECT_EQ(unsound(shell), "");
  EXPECT_EQ(genus(shell), 0);
  EXPECT_EQ(shell.faces.size(), 25U);
  EXPECT_EQ(made::face_count(shell), 24);  // trough and vault are one cylinder
  EXPECT_THAT(names(shell), testing::Contains("side dot at fret 2").Times(3));
}

TEST(Shell, ASideDotMayMeetABindingLedge) {
  const Shell shell = shell_of(board_of("[side_dots]\nfrets = [3]\n[binding]\nwidth = 1.5\nheight = 2.25\n"));
  EXPECT_EQ(unsound(shell), "");
  EXPECT_EQ(genus(shell), 0);
}

TEST(Shell, StagesBeforeTheOutlineStandOnTheWholeBlank) {
  for (const Stage stage : {Stage::blank, Stage::pocketed, Stage::radiused, Stage::slotted}) {
    const Shell shell = shell_of(board_of(), stage);
    EXPECT_EQ(unsound(shell), "") << name(stage);
    EXPECT_EQ(genus(shell), 0) << name(stage);
  }
  EXPECT_EQ(shell_of(board_of(), Stage::blank).faces.size(), 6U);
}

TEST(Shell, AFlatBoardIsAllLevels) {
  const Shell shell = shell_of(board_of("", "profile = \"flat\"\n"));
  EXPECT_EQ(unsound(shell), "");
  for (const ShellFace& face : shell.faces) EXPECT_NE(face.bound.kind, BoundingSurface::Kind::offset_surface);
}

}  // namespace
}  // namespace sagitta
