// Boards of the less usual kinds as solids: the volume of stage board against a quadrature that shares no code with the
// plan, every stage sound, the same for the other hand, and all of it again after a STEP file.
// The references of tests/cases/families/volumes.csv come from section areas in closed form or adaptive quadrature of
// the height functions, to 1e-11 of the volume.

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

struct FamilyCase {
  std::string name;
  double volume = 0;  ///< of stage board, mm^3
  friend std::ostream& operator<<(std::ostream& out, const FamilyCase& one) { return out << one.name; }
};

const std::string folder = places::tests() + "/cases/families/";

std::vector<FamilyCase> families() {
  std::ifstream file(folder + "volumes.csv");
  std::vector<FamilyCase> cases;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    std::istringstream row(line);
    FamilyCase one;
    std::getline(row, one.name, ',');
    row >> one.volume;
    cases.push_back(one);
  }
  return cases;
}

class Family : public testing::TestWithParam<FamilyCase> {
 protected:
  static Board board() {
    const BoardFile file = read_board(folder + GetParam().name + ".toml");
    EXPECT_TRUE(file.sound()) << file.problems.front().message;
    return file.board;
  }

  static Board other_hand() {
    Board other = board();
    other.hand = other.hand == Hand::left ? Hand::right : Hand::left;
    return other;
  }

  /// Judges the stage and gives its volume.
  static double volume_of(const Board& board, Stage stage) {
    const auto made = made::shell_of(board, stage);
    if (const auto* faults = std::get_if<Faults>(&made)) {
      ADD_FAILURE() << made::told(*faults);
      return 0;
    }
    const Shell& shell = std::get<Shell>(made);
    EXPECT_EQ(unsound(shell), "");
    const TopoDS_Solid solid = make_solid(shell);
    EXPECT_EQ(unsound(solid, genus(shell)), "");
    return mass_properties(solid).volume;
  }
};

TEST_P(Family, HasTheReferenceVolumeOnEitherHand) {
  EXPECT_NEAR(volume_of(board(), Stage::board) / GetParam().volume, 1, 1e-6);
  EXPECT_NEAR(volume_of(other_hand(), Stage::board) / GetParam().volume, 1, 1e-6);
}

TEST_P(Family, IsSoundAtEveryStage) {
  for (const Board& each : {board(), other_hand()}) {
    double last = 1e300;
    for (const Stage stage : stages_of(each)) {
      const double volume = volume_of(each, stage);
      EXPECT_LE(volume, last * (1 + 1e-9)) << name(stage);
      last = volume;
    }
  }
}

TEST_P(Family, IsTheSameAfterStep) {
  const auto made = made::shell_of(board(), Stage::board);
  ASSERT_TRUE(std::holds_alternative<Shell>(made));
  const Shell& shell = std::get<Shell>(made);
  const StepCopy copy = through_step(make_solid(shell), "family-" + GetParam().name);
  ASSERT_EQ(copy.trouble, "");
  EXPECT_EQ(unsound(copy.solid, genus(shell)), "");
  EXPECT_NEAR(mass_properties(copy.solid).volume / GetParam().volume, 1, 1e-6);
}

std::string plain_name(const testing::TestParamInfo<FamilyCase>& info) {
  std::string name = info.param.name;
  std::erase(name, '-');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Boards, Family, testing::ValuesIn(families()), plain_name);

}  // namespace
}  // namespace sagitta
