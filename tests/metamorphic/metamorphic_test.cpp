// Boards that must come out alike, whatever the right answer is: mirrored, in other units, with the same scale written
// twice, with cuts repeated, reordered or out of reach.

#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <algorithm>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "board/Writer.hpp"
#include "made/Made.hpp"
#include "random/RandomBoard.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

using random_boards::random_board;
using random_boards::Space;

struct Looks {
  int faces = 0;
  double volume = 0, area = 0;
  double balance = 0;  ///< y of the centre of mass
};

Looks looks_of(const Board& board) {
  const auto shell = made::shell_of(board, Stage::board);
  if (const auto* faults = std::get_if<Faults>(&shell)) {
    ADD_FAILURE() << made::told(*faults) << write_board(board);
    return {};
  }
  const TopoDS_Solid solid = make_solid(std::get<Shell>(shell));
  GProp_GProps mass;
  BRepGProp::VolumeProperties(solid, mass, 1e-7);
  return {made::face_count(std::get<Shell>(shell)), mass.Mass(), mass_properties(solid).area, mass.CentreOfMass().Y()};
}

/// Two ways to the same wood differ by rounding only: positions by 1e-12 mm, integrals by what their rule leaves.
void expect_alike(const Looks& a, const Looks& b, double balance_sign = 1) {
  EXPECT_EQ(a.faces, b.faces);
  EXPECT_NEAR(a.volume / b.volume, 1, 1e-9);
  EXPECT_NEAR(a.area / b.area, 1, 1e-6);
  EXPECT_NEAR(a.balance, balance_sign * b.balance, 1e-6);
}

Board from_case(const std::string& name) {
  const BoardFile file = read_board(places::tests() + "/cases/singles/" + name + ".toml");
  EXPECT_TRUE(file.sound());
  return file.board;
}

class RandomPairs : public testing::TestWithParam<int> {
 protected:
  Board core() const { return random_board(static_cast<std::uint64_t>(1000 + GetParam()), Space::core).board; }
  Board whole() const { return random_board(static_cast<std::uint64_t>(1000 + GetParam()), Space::whole).board; }
};

TEST_P(RandomPairs, TheOtherHandIsTheMirrorImage) {
  Board board = whole();
  board.pins.reset();  // pins stand where they are said to be, whatever the hand
  const Looks one = looks_of(board);
  board.hand = board.hand == Hand::left ? Hand::right : Hand::left;
  expect_alike(looks_of(board), one, -1);
}

TEST_P(RandomPairs, OneScaleWrittenTwiceIsOneScale) {
  Board board = core();
  if (board.scale.bass) board.scale.length = board.scale.treble;
  board.scale.bass.reset(), board.scale.treble.reset(), board.scale.square_fret = 0;
  if (!random_boards::sound(board)) GTEST_SKIP() << "not a board on one scale";
  const Looks one = looks_of(board);
  board.scale.bass = board.scale.treble = board.scale.length;
  board.scale.length.reset();
  for (const int square : {0, board.scale.frets}) {
    board.scale.square_fret = square;
    const Looks two = looks_of(board);
    EXPECT_EQ(two.faces, one.faces);
    EXPECT_DOUBLE_EQ(two.volume, one.volume);
  }
}

TEST_P(RandomPairs, InchesAreMillimetres) {
  Board board = whole();
  board.units = Units::inch;
  const BoardFile inches = read_board_text(write_board(board), "inches.toml", ".");
  board.units = Units::mm;
  const BoardFile millimetres = read_board_text(write_board(board), "millimetres.toml", ".");
  ASSERT_TRUE(inches.sound() && millimetres.sound());
  ASSERT_NE(write_board(inches.board), write_board(millimetres.board));
  expect_alike(looks_of(inches.board), looks_of(millimetres.board));
}

TEST_P(RandomPairs, InlaysInAnotherOrderAreTheSameInlays) {
  Board board = core();
  const Looks one = looks_of(board);
  std::reverse(board.inlays.begin(), board.inlays.end());
  expect_alike(looks_of(board), one);
}

INSTANTIATE_TEST_SUITE_P(Some, RandomPairs, testing::Range(0, 12));

TEST(Alike, PocketsOutOfReachAndRepeated) {
  expect_alike(looks_of(from_case("S21")), looks_of(from_case("S00")));
  expect_alike(looks_of(from_case("S85")), looks_of(from_case("S00")));
  expect_alike(looks_of(from_case("S75")), looks_of(from_case("S74")));
  Board twice = from_case("S44");
  const Looks both = looks_of(twice);
  twice.inlays.pop_back();
  expect_alike(both, looks_of(twice));
}

TEST(Alike, EqualRadiiAreOneRadius) {
  Board board = from_case("S34");
  const Looks single = looks_of(board);
  board.surface.profile = Profile::compound;
  board.surface.radius_at_heel = board.surface.radius_at_nut;
  expect_alike(looks_of(board), single);
}

/// An arc slot clear of everything takes width x length x depth, whatever the surface: CASES A8.
TEST(Alike, ArcSlotsTakeTheirPlanAreaTimesTheirDepth) {
  for (const Profile profile : {Profile::single, Profile::compound, Profile::string_line, Profile::even_edge}) {
    Board board = from_case("S88");
    board.surface.profile = profile;
    if (profile == Profile::compound) board.surface.radius_at_heel = 400;
    board.nut = {};
    board.board.behind_nut = 8;
    const Looks shallow = looks_of(board);
    board.slots.depth = 2.5;
    double area = 0;
    const Layout layout = std::get<Layout>(lay_out(board));
    for (const Slot& slot : layout.slots) area += slot.width * distance(slot.bass_end, slot.treble_end);
    EXPECT_NEAR(shallow.volume - looks_of(board).volume, 0.5 * area, 1e-6);
  }
}

/// The same board by hand in the other unit: 400 mm, 50 mm, 56 mm wide, 6.5 mm and so on, in inches.
TEST(Alike, TheCatalogueBoardWrittenInInches) {
  const BoardFile file = read_board_text(R"(
format = 1
units = "in"
[scale]
length = "400 mm"
frets = 4
cents = [1200, 2400, 3600, 4800]
[strings]
count = 4
nut_spread = 1.968503937007874
saddle_spread = 1.968503937007874
[board]
thickness = 0.2559055118110236
edge_margin = 0.11811023622047244
behind_nut = "8 mm"
past_last_fret = 0.3543307086614173
[surface]
profile = "single"
radius_at_nut = 9.448818897637795
[slots]
width = "0.5 mm"
depth = 0.07874015748031496
)",
                                         "inches.toml", ".");
  ASSERT_TRUE(file.sound()) << file.problems.front().message;
  expect_alike(looks_of(file.board), looks_of(from_case("S00")));
}

}  // namespace
}  // namespace sagitta
