// Reading, writing and reading again gives the same board.

#include "board/Writer.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>

#include "Places.hpp"
#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

/// Every key that goes with these choices, all with values that are not the default.
const std::string full = R"(format = 1
name = "Grey \"heron\", \\ reeds and waves"
units = "in"
hand = "left"
[scale]
bass = "27 in"
treble = 25.5
square_fret = 2
frets = 3
cents = [100, 200.5, 301]
zero_fret = true
[strings]
count = 4
nut_spread = 1.375
saddle_spread = "2-1/16 in"
spacing = "equal-gaps"
gauges = [0.046, 0.036, "0.6 mm", 0.02]
course = 2
course_gap = 0.08
[board]
thickness = 0.25
nut_margin = [0.125, "3.4 mm"]
heel_margin = "3.5 mm"
behind_nut = 0.4
past_last_fret = 0.3
heel = "arc"
heel_arc_radius = 6
corner_radius = 0.2
[tongue]
frets = 2
strings = 2
margin = 0.15
past_last_fret = 0.2
corner_radius = 0.05
[surface]
profile = "compound"
radius_at_nut = 10
radius_at_heel = 16
heel_at = "last-fret"
fall_from_fret = 2
fall = 0.015
[nut]
seat = "slot"
width = 0.125
depth = 0.11
distance = 0.05
floor = "arc"
[wire]
tang_depth = 0.06
tang_width = 0.021
crown_width = 0.08
crown_height = 0.043
overhang = 0
barb_width = 0.03
end_bevel = 25
[slots]
width = 0.023
depth = 0.08
floor = "level"
ends = "blind"
edge_left = 0.06
cut = "all"
[scallop]
from_fret = 1
to_fret = 3
depth = [0.03, "1 mm"]
land = 0.07
[edges]
bevel = 0.04
bevel_angle = 40
stage = "machine"
[[inlays]]
shape = "trapezoid"
frets = [1]
double_frets = [2]
spread = 0.7
shift_along = -0.1
shift_across = 0.05
turn = -12.5
along = 0.5
across_nut = 0.6
across_heel = 0.55
depth = 0.06
piece_thickness = 0.07
clearance = 0
material = "abalone"
[[inlays]]
shape = "artwork"
frets = [3]
file = "heron.svg"
along = 0.8
colours = { "#c02020" = "bone", "#ffffff" = "shell" }
sizes = "by-space"
edge_left = 0
depth = 0.05
[[inlays]]
shape = "dot"
frets = [2]
diameter = 0.25
depth = 0.1
[side_dots]
frets = [1]
double_frets = [3]
spread = 0.2
diameter = 0.09
depth = 0.05
edge = "both"
in = "binding"
[binding]
width = 0.06
height = 0.1
lines = [0.02, "0.6 mm"]
line_materials = ["holly", "ebony"]
[pins]
diameter = 0.1
depth = 0.12
at = [[1, 0.5], ["100 mm", -0.25]]
[[cuts]]
name = "rod notch"
shape = "block"
along = 0.75
across = 0.3
at = [0.1, 0]
turn = 5
depth = "through"
[[cuts]]
name = "hollow"
from = "below"
shape = "dot"
diameter = 0.5
at = [8, "3 mm"]
depth = 0.1
[[cuts]]
name = "wave"
shape = "drawn"
file = "wave.svg"
across = 0.6
at = [12, 0]
depth = 0.05
[blank]
length = 21
width = 3
thickness = 0.3
material = "rosewood"
grain = "quarter"
at = [1.5, 1.25]
[finish]
sanding = 0.01
[work]
order = ["thickness", "radius", "slots", "pockets", "inlay", "outline"]
thickness_to = 0.29
[[setups]]
name = "first"
operations = ["radius", "slots"]
zero = "center"
z_zero = "bed"
tape = 0.005
reclamp_error = 0
[[setups]]
[[cutters]]
name = "fine"
use = ["pocket-detail", "piece"]
shape = "ball"
diameter = 0.031
cutting_length = 0.1
flutes = 3
runout = 0.001
measured_cut = 0.033
feed = "1200 mm/min"
rpm = 24000
pass_depth = 0.01
[[sheets]]
material = "bone"
length = 4
width = 1
thickness = 0.08
pattern = "along"
zero = "first-piece"
margin = 0.2
clamp = 0.4
hold = "skin"
skin = 0.01
face = "mirrored"
[materials.oak]
density = 720
colour = "#b58a55"
kind = "wood"
movement_radial = 0.18
movement_tangential = 0.31
modulus = 12.5
[materials."river shell"]
[neck]
state = "rough"
trim = 0.02
nut_width = 1.7
body_width = 2.25
body_at = 18
joint_fret = 3
channel_width = 0.25
channel_depth = 0.375
channel_from = -0.5
channel_to = 17
limit = 20
file = "neck.step"
depth_first = 0.8
depth_twelfth = 0.9
angle = 1.5
joint = "bolted"
allowance = 0.01
file_nut = [1, 2, "3 mm"]
file_heel = [18, 2, "3 mm"]
[height]
nut = [0.02, 0.015]
action = [0.08, 0.06]
action_fret = 3
relief = 0.008
relief_fret = 2
bridge = 0.5
body_step = -0.1
[limits]
wall = 0.02
"slot depth" = "0.5 mm"
[measured]
slots = [0, 1.4, 2.7, 4.1, 5, 5.6]
blank_thickness = 0.28
tape = 0.004
slot_width = 0.024
pocket_depths = { shell-01 = 0.061, "bone 02" = "1.6 mm" }
piece_thickness = { shell = 0.07 }
widths = [[0, 1.7], ["300 mm", 2.1]]
thickness = [[1, 0.5, 0.24]]
done = ["radius", "slots"]
chips = [[3, 0.8, 0.1], [5, -0.8, "2 mm"]]
serial = "7"
[[notes]]
text = "Fill the chip beside fret 3."
finding = "pocket-edge"
by = "the one at the router"
)";

/// Whether only what is not made yet is wrong with it.
bool reads(const BoardFile& file) {
  return std::ranges::all_of(file.problems, [](const Problem& problem) { return problem.code == FaultCode::not_made; });
}

void expect_round_trip(Board board) {
  board.base.clear();
  const std::string text = write_board(board);
  const BoardFile again = read_board_text(text, "again.toml", board.folder);
  EXPECT_TRUE(reads(again)) << sample::told(again.problems) << text;
  EXPECT_TRUE(again.board == board) << text;
  EXPECT_EQ(write_board(again.board), text);
}

TEST(Writer, EveryKeyComesBack) {
  const BoardFile file = sample::read(full);
  ASSERT_TRUE(reads(file)) << sample::told(file.problems);
  expect_round_trip(file.board);
  const std::string ends = "heel = \"arc\"\nheel_arc_radius = 6\ncorner_radius = 0.2\n";
  for (const std::string other : {"heel = \"slant\"\nheel_angle = -12\nends_cut_slots = true\n",
                                  "heel = \"drawn\"\nheel_file = \"reed.svg\"\n"}) {
    const BoardFile drawn = sample::read(sample::with(ends, other, full));
    ASSERT_TRUE(reads(drawn)) << sample::told(drawn.problems);
    expect_round_trip(drawn.board);
    EXPECT_NE(write_board(drawn.board).find(other), std::string::npos);
  }
  const BoardFile rolled = sample::read(sample::with("bevel = 0.04\nbevel_angle = 40\n", "roll = 0.06\n", full));
  ASSERT_TRUE(reads(rolled)) << sample::told(rolled.problems);
  expect_round_trip(rolled.board);
  EXPECT_NE(write_board(rolled.board).find("roll = 0.06"), std::string::npos);
  const std::string text = write_board(file.board);
  for (const Field& field : fields()) {
    if (field.dotted() == "base") continue;
    const bool there = text.find("\n" + std::string(field.key) + " = ") != std::string::npos || field.key == "format";
    const bool elsewhere = field.key == "length" || field.key == "edge_margin" || field.key == "nut_width" ||
                           field.key == "heel_width" || field.key == "steps_per_octave" ||
                           field.key == "compensation" || field.key == "width_at_fret" || field.key == "heel_angle" ||
                           field.key == "heel_file" || field.key == "ends_cut_slots" || field.key == "roll" ||
                           field.key == "line_material" || field.key == "line_thickness";
    EXPECT_TRUE(there || elsewhere) << field.dotted();
  }
}

TEST(Writer, EveryCaseComesBack) {
  int boards = 0;
  for (const char* folder : {"/cases", "/cases/singles"}) {
    for (const auto& entry : fs::directory_iterator(places::tests() + folder)) {
      if (entry.path().extension() != ".toml" || entry.path().stem() == "S63") continue;
      expect_round_trip(read_board(entry.path().string()).board);
      ++boards;
    }
  }
  EXPECT_EQ(boards, 95);
}

TEST(Writer, LinesComeBack) {
  const std::string lines = "width = 0.584\ncut = \"lines\"\nline_material = \"holly\"\nline_thickness = 0.5\n";
  const BoardFile file = sample::read(sample::with("width = 0.584\n", lines));
  ASSERT_TRUE(reads(file)) << sample::told(file.problems);
  expect_round_trip(file.board);
  EXPECT_NE(write_board(file.board).find("line_material = \"holly\"\nline_thickness = 0.5\n"), std::string::npos);
}

TEST(Writer, EveryFamilyComesBack) {
  for (const auto& entry : fs::directory_iterator(places::tests() + "/cases/families"))
    if (entry.path().extension() == ".toml") expect_round_trip(read_board(entry.path().string()).board);
}

TEST(Writer, CasesInInchesAreTheSameBoards) {
  for (const auto& entry : fs::directory_iterator(places::tests() + "/cases")) {
    if (entry.path().extension() != ".toml") continue;
    Board board = read_board(entry.path().string()).board;
    board.units = Units::inch;
    expect_round_trip(board);
  }
}

TEST(Writer, WritesWhatDiffersInOrder) {
  const std::string text = write_board(sample::read(sample::text).board);
  EXPECT_EQ(text, sample::with("units = \"mm\"\n", "", sample::with("[slots]\nwidth = 0.584\n\n", "")));
}

TEST(Writer, KeepsInchesShort) {
  EXPECT_EQ(length_text(647.7, Units::inch), "25.5");
  EXPECT_EQ(length_text(2, Units::inch), "\"2 mm\"");
  EXPECT_EQ(length_text(1200, Units::inch, true), "\"1200 mm/min\"");
  EXPECT_EQ(length_text(647.7, Units::mm), "647.7");
}

TEST(Writer, LeavesOutWhatIsNotUsed) {
  Board board = sample::read(sample::text).board;
  board.surface.profile = Profile::single;
  board.inlays[0].across = 7;
  const BoardFile again = sample::read(write_board(board));
  EXPECT_TRUE(again.sound()) << sample::told(again.problems);
  EXPECT_TRUE(again.board == tidy(board));
  EXPECT_FALSE(again.board.surface.radius_at_heel);
}

TEST(Writer, AnInchFileIsTheSameBoardAsItsMillimetres) {
  // 25.4 mm to the inch: the same board written twice by hand.
  const Board mm = sample::read(sample::with("frets = 22", "frets = 22\n")).board;
  std::string text = sample::with("units = \"mm\"", "units = \"in\"");
  text = sample::with("length = 648", "length = \"648 mm\"", text);
  text = sample::with("nut_spread = 36", "nut_spread = \"36 mm\"", text);
  text = sample::with("saddle_spread = 52", "saddle_spread = \"52 mm\"", text);
  text = sample::with("thickness = 6.35", "thickness = \"1/4 in\"", text);
  text = sample::with("edge_margin = 3.2", "edge_margin = 0.12598425196850394", text);
  text = sample::with("radius_at_nut = 254", "radius_at_nut = 10", text);
  text = sample::with("radius_at_heel = 406.4", "radius_at_heel = 16", text);
  text = sample::with("width = 0.584", "width = \"0.584 mm\"", text);
  text = sample::with("depth = 1.5", "depth = \"1.5 mm\"", text);
  BoardFile inch = sample::read(text);
  ASSERT_TRUE(inch.sound()) << sample::told(inch.problems);
  EXPECT_NEAR(inch.board.board.edge_margin->first, 3.2, 1e-15 * 4);
  inch.board.board.edge_margin = mm.board.edge_margin;
  inch.board.units = Units::mm;
  EXPECT_TRUE(inch.board == mm);
}

}  // namespace
}  // namespace sagitta
