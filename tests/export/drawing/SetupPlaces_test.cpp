#include "drawing/SetupPlaces.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

/// Scale 648, a blank whose lower left corner lies 47 before the nut line and 39 below the centre line, all in one
/// set-up about that corner.
std::string board_text(bool left) {
  return std::string("format = 1\nname = \"plain\"\nhand = \"") + (left ? "left" : "right") + "\"\n" + R"(
[scale]
length = 648
frets = 14
[strings]
count = 6
nut_spread = 36
saddle_spread = 52
[board]
thickness = 6
edge_margin = 3.5
[surface]
profile = "flat"
[[inlays]]
shape = "dot"
frets = [5]
depth = 1.2
shift_across = 4
[[cuts]]
name = "notch"
shape = "block"
along = 10
across = 8
at = [20, 9]
depth = 2
[blank]
length = 480
width = 80
thickness = 7
at = [47, 39]
[[setups]]
name = "pockets"
operations = ["pockets"]
zero = "corner"
[[setups]]
name = "slots"
operations = ["slots"]
zero = "nut"
)";
}

/// From the nut to a fret of equal temperament on this scale, mm.
double fret_at(int fret) { return 648 * (1 - std::exp2(-fret / 12.0)); }

class Hand : public testing::TestWithParam<bool> {};
INSTANTIATE_TEST_SUITE_P(Both, Hand, testing::Bool());

TEST_P(Hand, PlacesAreCountedFromTheSetupsOwnZero) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", board_text(GetParam()));
  const PreparedBoard ready = std::get<PreparedBoard>(prepare(scratch / "board.toml"));
  const double up = GetParam() ? -1 : 1;  // a left-handed board is the mirror image
  struct Place {
    std::string what;
    double x, y;
  };
  std::vector<Place> pockets{{"nut line, middle", 47, 39},
                             {"blank, lower left", 0, 0},
                             {"blank, middle", 240, 40},
                             {"pocket, fret 5", 47 + (fret_at(4) + fret_at(5)) / 2, 39 + 4 * up},
                             {"cut notch", 67, 39 + 9 * up}};
  std::vector<Place> slots{{"nut line, middle", 0, 0}, {"blank, lower left", -47, -39}, {"blank, middle", 193, 1}};
  for (int fret = 1; fret <= 14; ++fret) slots.push_back({"slot, fret " + std::to_string(fret), fret_at(fret), 0});
  const std::vector<ResolvedSetup> setups = setups_of(ready);
  ASSERT_EQ(setups.size(), 2U);
  for (const auto& [setup, expected] : {std::pair{setups[0], pockets}, std::pair{setups[1], slots}}) {
    const std::vector<SetupPlace> places = setup_places(ready, setup);
    ASSERT_EQ(places.size(), expected.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      EXPECT_EQ(places[i].what, expected[i].what);
      EXPECT_NEAR(places[i].at.x, expected[i].x, 1e-9) << places[i].what;
      EXPECT_NEAR(places[i].at.y, expected[i].y, 1e-9) << places[i].what;
    }
  }
}

}  // namespace
}  // namespace sagitta::test
