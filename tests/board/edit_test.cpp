// Saving into a hand-written file: only what changed is touched, and the file then reads as the new board.

#include "board/Edit.hpp"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <string>

#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

const std::string hand_written = R"(# The heron board, second try.
format = 1
name = "Heron"   # for the youth orchestra

[scale]
length = "25 1/2 in"  # as measured
frets = 22

[strings]
count = 6
nut_spread = 36
saddle_spread = 52
gauges = [ 1.2, 1, "0.032 in", 0.6,
           0.4, 0.25 ]  # bass first

[board]
thickness = "6.35 mm"
edge_margin = 3.2
# the heel is left square

[surface]
profile = "compound"
  radius_at_nut = 254
  radius_at_heel = 406.4   # flatter up there

# dots for the eye
[[inlays]]
shape = "dot"
frets = [3, 5, 7, 9]
depth = 1.5

# the octave
[[inlays]]
shape = "block"
frets = [12]
along = 8
across = 40
depth = 1.5

[materials.oak]
density = 720
)";

std::string edited(const std::function<void(Board&)>& change, const std::string& text = hand_written) {
  const BoardFile file = sample::read(text);
  EXPECT_TRUE(file.sound()) << sample::told(file.problems);
  Board board = file.board;
  change(board);
  const std::string result = edit_text(text, file.board, board);
  const BoardFile again = sample::read(result);
  EXPECT_TRUE(again.board == tidy(board)) << result;
  return result;
}

std::string swapped(std::string_view part, std::string_view by, std::string text = hand_written) {
  return sample::with(part, by, std::move(text));
}

TEST(Edit, NothingChangedNothingTouched) {
  EXPECT_EQ(edited([](Board&) {}), hand_written);
  const std::string nameless = swapped("\"Heron\"", "\"\"");
  EXPECT_EQ(edited([](Board&) {}, nameless), nameless);
}

TEST(Edit, ValuesKeepTheirUnitsAndComments) {
  EXPECT_EQ(edited([](Board& b) { b.scale.length = 635; }), swapped("\"25 1/2 in\"", "\"25 in\""));
  EXPECT_EQ(edited([](Board& b) { b.scale.length = 641.35; }), swapped("\"25 1/2 in\"", "\"25 1/4 in\""));
  EXPECT_EQ(edited([](Board& b) { b.scale.length = 648; }), swapped("\"25 1/2 in\"", "\"648 mm\""));
  EXPECT_EQ(edited([](Board& b) { b.board.thickness = 6; }), swapped("\"6.35 mm\"", "\"6 mm\""));
  EXPECT_EQ(edited([](Board& b) { b.surface.radius_at_nut = 300; }), swapped("254", "300"));
  EXPECT_EQ(edited([](Board& b) { b.name = "Cr\u00e4ne"; }), swapped("\"Heron\"", "\"Cr\u00e4ne\""));
  EXPECT_EQ(edited([](Board& b) { b.strings.gauges[3] = 0.65; }), swapped("0.6,", "0.65,"));
  EXPECT_EQ(edited([](Board& b) { b.strings.gauges[2] = 25.4 / 32; }), swapped("\"0.032 in\"", "\"0.03125 in\""));
  EXPECT_EQ(edited([](Board& b) { b.inlays[0].frets = {3, 5}; }), swapped("[3, 5, 7, 9]", "[3, 5]"));
  EXPECT_EQ(edited([](Board& b) { b.inlays[1].across = 42; }), swapped("across = 40", "across = 42"));
  EXPECT_EQ(edited([](Board& b) { b.materials["oak"].density = 700; }), swapped("720", "700"));
}

TEST(Edit, NewKeysGoToTheEndOfTheirTable) {
  EXPECT_EQ(edited([](Board& b) { b.scale.zero_fret = true; }),
            swapped("frets = 22\n", "frets = 22\nzero_fret = true\n"));
  EXPECT_EQ(edited([](Board& b) { b.hand = Hand::left; }),
            swapped("youth orchestra\n", "youth orchestra\nhand = \"left\"\n"));
  EXPECT_EQ(edited([](Board& b) { b.strings.spacing = StringSpacing::equal_gaps; }),
            swapped("bass first\n", "bass first\nspacing = \"equal-gaps\"\n"));
  EXPECT_EQ(edited([](Board& b) { b.board.corner_radius = 3; }),
            swapped("edge_margin = 3.2\n", "edge_margin = 3.2\ncorner_radius = 3\n"));
  EXPECT_EQ(edited([](Board& b) { b.inlays[0].double_frets = {12}; }),
            swapped("9]\n", "9]\ndepth = 1.5\ndouble_frets = [12]\n", swapped("9]\ndepth = 1.5\n", "9]\n")));
}

TEST(Edit, NewTablesGoToTheEnd) {
  EXPECT_EQ(edited([](Board& b) { b.nut.seat = NutSeat::shelf; }), hand_written + "\n[nut]\nseat = \"shelf\"\n");
  EXPECT_EQ(edited([](Board& b) { b.binding.emplace().width = 1.5; }), hand_written + "\n[binding]\nwidth = 1.5\n");
  EXPECT_EQ(edited([](Board& b) { b.neck = Neck(); }), hand_written + "\n[neck]\n");
  EXPECT_EQ(edited([](Board& b) { b.materials["ash"].density = 650; }),
            hand_written + "\n[materials.ash]\ndensity = 650\n");
  EXPECT_EQ(edited([](Board& b) { b.limits["wall"] = 0.4; }), hand_written + "\n[limits]\nwall = 0.4\n");
}

TEST(Edit, KeysThatGoLoseTheirLines) {
  EXPECT_EQ(edited([](Board& b) { b.surface.profile = Profile::single; }),
            swapped("  radius_at_heel = 406.4   # flatter up there\n", "", swapped("\"compound\"", "\"single\"")));
  EXPECT_EQ(edited([](Board& b) { b.strings.gauges.clear(); }),
            swapped("gauges = [ 1.2, 1, \"0.032 in\", 0.6,\n           0.4, 0.25 ]  # bass first\n", ""));
  EXPECT_EQ(edited([](Board& b) { b.materials.clear(); }), swapped("[materials.oak]\ndensity = 720\n", ""));
  EXPECT_EQ(edited([](Board& b) {
              b.board.edge_margin.reset();
              b.board.nut_width = 43;
              b.board.heel_width = 57;
            }),
            swapped("edge_margin = 3.2\n", "nut_width = 43\nheel_width = 57\n"));
}

TEST(Edit, RowsComeAndGo) {
  EXPECT_EQ(edited([](Board& b) { b.inlays.erase(b.inlays.begin()); }),
            swapped("[[inlays]]\nshape = \"dot\"\nfrets = [3, 5, 7, 9]\ndepth = 1.5\n", ""));
  EXPECT_EQ(edited([](Board& b) { b.inlays.pop_back(); }),
            swapped("[[inlays]]\nshape = \"block\"\nfrets = [12]\nalong = 8\nacross = 40\ndepth = 1.5\n", ""));
  Inlay dot;
  dot.frets = {15};
  dot.depth = 1;
  const std::string row = "[[inlays]]\nshape = \"dot\"\nfrets = [15]\ndepth = 1\n";
  EXPECT_EQ(edited([&](Board& b) { b.inlays.push_back(dot); }),
            swapped("across = 40\ndepth = 1.5\n", "across = 40\ndepth = 1.5\n\n" + row));
  EXPECT_EQ(edited([&](Board& b) { b.inlays.insert(b.inlays.begin() + 1, dot); }),
            swapped("9]\ndepth = 1.5\n", "9]\ndepth = 1.5\n\n" + row));
  EXPECT_EQ(edited([&](Board& b) { b.inlays.insert(b.inlays.begin(), dot); }),
            swapped("[[inlays]]\nshape = \"dot\"", row + "\n[[inlays]]\nshape = \"dot\""));
  EXPECT_EQ(edited([](Board& b) {
              b.cutters.push_back({"fine", {CutterUse::slot}, CutterShape::flat, 0.58, 3, 2, 0, {}, {}, {}, {}});
            }),
            hand_written + "\n[[cutters]]\nname = \"fine\"\nuse = [\"slot\"]\ndiameter = 0.58\ncutting_length = 3\n");
  edited([](Board& b) { b.inlays.clear(); });
  edited([](Board& b) { std::swap(b.inlays[0], b.inlays[1]); });
}

TEST(Edit, UnitsOfTheFileChange) {
  const std::string text = edited([](Board& b) { b.units = Units::inch; });
  EXPECT_NE(text.find("\"25 1/2 in\""), std::string::npos);
  EXPECT_NE(text.find("radius_at_nut = 10\n"), std::string::npos) << text;
  EXPECT_NE(text.find("# flatter up there"), std::string::npos);
}

TEST(Edit, TablesInBracesAndDottedKeys) {
  const std::string text =
      "format = 1\nscale = { length = 648, frets = 22 }\nstrings.count = 6\nstrings.nut_spread = "
      "36\nstrings.saddle_spread = 52\n[board]\nthickness = 6\nedge_margin = 3\n[surface]\nprofile = \"flat\"\n";
  EXPECT_EQ(edited([](Board& b) { b.scale.length = 650; }, text), swapped("648", "650", text));
  EXPECT_EQ(edited([](Board& b) { b.strings.count = 7; }, text), swapped("count = 6", "count = 7", text));
  edited([](Board& b) { b.scale.zero_fret = true; }, text);
  edited([](Board& b) { b.strings.gauges = {1, 1, 1, 1, 1, 1}; }, text);
}

TEST(Edit, ColoursInATableOfTheirOwn) {
  const std::string text = swapped("[materials.oak]",
                                   "[[inlays]]\nshape = \"artwork\"\nfile = \"wave.svg\"\nalong = 20\nfrets = "
                                   "[7]\ndepth = 1\n[inlays.colours]\n\"#c02020\" = \"bone\"\n\n[materials.oak]");
  EXPECT_EQ(edited([](Board& b) { b.inlays[2].along = 21; }, text), swapped("along = 20", "along = 21", text));
  edited([](Board& b) { b.inlays[2].colours["#ffffff"] = "shell"; }, text);
  edited([](Board& b) { b.inlays[2].clearance = 0.1; }, text);
  edited([](Board& b) { b.inlays.pop_back(); }, text);
}

TEST(Edit, WindowsLineEndings) {
  std::string text;
  for (const char c : hand_written) text += c == '\n' ? "\r\n" : std::string(1, c);
  edited(
      [](Board& b) {
        b.scale.length = 635;
        b.scale.zero_fret = true;
        b.inlays.pop_back();
      },
      text);
}

TEST(Edit, AFileOnABaseOverridesIt) {
  const fs::path folder = fs::temp_directory_path() / ("sagitta_edit_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "base.toml") << sample::text;
  const std::string own = "format = 1\nbase = \"base.toml\"  # the heron\nname = \"Crane\"\n";
  const BoardFile file = read_board_text(own, "own.toml", folder.string());
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  Board board = file.board;
  board.scale.length = 630;
  const std::string text = edit_text(own, file.board, board);
  EXPECT_EQ(text, own + "\n[scale]\nlength = 630\n");
  EXPECT_TRUE(read_board_text(text, "own.toml", folder.string()).board == board);
  fs::remove_all(folder);
}

}  // namespace
}  // namespace sagitta
