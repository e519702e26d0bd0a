// Boards with scallops, rolled and bevelled edges: volumes by quadrature of heights (oracle/HeightVolume, written down
// in cases/forms.csv), each stage sound as solid and as mesh, in both hands.

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshFlaw.hpp"
#include "oracle/HeightVolume.hpp"
#include "plan/WoodVolume.hpp"
#include "solid/Solid.hpp"
#include "solid/SolidFlaw.hpp"

namespace sagitta {
namespace {

struct FormCase {
  std::string name;
  double volume = 0;  ///< of the last stage, mm^3
  friend std::ostream& operator<<(std::ostream& out, const FormCase& one) { return out << one.name; }
};

std::vector<FormCase> cases() {
  std::ifstream file(places::tests() + "/cases/forms.csv");
  std::string line;
  std::getline(file, line);
  std::vector<FormCase> all;
  while (std::getline(file, line)) {
    std::istringstream row(line);
    FormCase one;
    std::getline(row, one.name, ',');
    row >> one.volume;
    all.push_back(one);
  }
  return all;
}

Board board_of(const std::string& name, bool other_hand) {
  const BoardFile file = read_board(places::tests() + "/cases/forms/" + name + ".toml");
  EXPECT_TRUE(file.sound()) << name;
  Board board = file.board;
  if (other_hand) board.hand = board.hand == Hand::left ? Hand::right : Hand::left;
  return board;
}

class FormBoard : public testing::TestWithParam<FormCase> {};

TEST_P(FormBoard, IsSoundAtEveryStageInBothHands) {
  const FormCase& one = GetParam();
  for (const bool other_hand : {false, true}) {
    const Board board = board_of(one.name, other_hand);
    for (const Stage stage : stages_of(board)) {
      auto made = made::shell_of(board, stage);
      if (const auto* faults = std::get_if<Faults>(&made)) FAIL() << made::told(*faults);
      const Shell& shell = std::get<Shell>(made);
      const double planned = wood_volume(shell.plan);
      if (stage == stages_of(board).back()) {
        EXPECT_NEAR(planned / one.volume, 1, 1e-6);
      }
      EXPECT_EQ(unsound(shell), "");
      const TopoDS_Solid solid = make_solid(shell);
      EXPECT_EQ(unsound(solid, genus(shell)), "") << name(stage);
      EXPECT_NEAR(mass_properties(solid).volume / planned, 1, 1e-6) << name(stage);
      const auto flaw = flaw_in(make_mesh(shell, 0.01, {}), shell, planned);
      EXPECT_FALSE(flaw) << name(stage) << ": " << flaw->what;
    }
  }
}

std::string plain_name(const testing::TestParamInfo<FormCase>& info) {
  std::string name = info.param.name;
  std::erase(name, '-');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Forms, FormBoard, testing::ValuesIn(cases()), plain_name);

double planned(const Board& board, Stage stage) {
  auto made = made::shell_of(board, stage);
  return wood_volume(std::get<Shell>(made).plan);
}

/// Removed by sin^2 between two lands: half its depth over the space.
TEST(ScallopVolume, IsHalfTheDepthOverEachSpace) {
  Board board = read_board(places::tests() + "/cases/families/f30-scallop.toml").board;
  const double scalloped = planned(board, Stage::board);
  board.scallop.reset();
  EXPECT_NEAR(planned(board, Stage::board) - scalloped, 1.5 / 2 * 56 * (96 + 46), 1e-6);
}

/// On a flat board a roll takes (1 - pi/4) r^2 of the section at each edge, a bevel half of width times height.
TEST(WorkedEdgeVolume, OnAFlatBoardIsASection) {
  Board board = read_board(places::tests() + "/cases/families/f60-roll.toml").board;
  board.surface = {};
  board.surface.profile = Profile::flat;
  board.strings.nut_spread = board.strings.saddle_spread = 50;
  board.slots.depth = 1e-3;  // each of four slots takes as much of what is left of the edge
  Board plain = board;
  plain.edges.reset();
  const double along = 400 * (1 - std::exp2(-4)) + 8 + 9;
  const double rolled = 2 * (1 - std::numbers::pi / 4) * 1.5 * 1.5 * along;
  EXPECT_NEAR(planned(plain, Stage::board) - planned(board, Stage::board), rolled, 4 * 0.5 * 2 * 1.5 * 1e-3);
  board.edges->roll = 0;
  board.edges->bevel = 1.2;
  board.edges->bevel_angle_degrees = 30;
  const double bevelled = 1.2 * 1.2 / std::tan(std::numbers::pi / 6) * along;
  EXPECT_NEAR(planned(plain, Stage::board) - planned(board, Stage::board), bevelled, 4 * 0.5 * 2 * 1.2 * 1e-3);
}

/// The list's quadrature, once more, where it is quick.
TEST(HeightVolume, IsWhatTheListSays) {
  for (const FormCase& one : cases()) {
    if (one.name != "r02-taper" && one.name != "s01-taper" && one.name != "b02-taper") continue;
    const Board board = board_of(one.name, false);
    const Layout layout = std::get<Layout>(lay_out(board));
    const double volume = oracle::height_volume(board, layout, surface_of(board, layout), Stage::board);
    EXPECT_NEAR(volume / one.volume, 1, 1e-9) << one.name;
  }
}

}  // namespace
}  // namespace sagitta
