#include "drawing/ResolvedSetup.hpp"

#include <gtest/gtest.h>

#include <set>

#include "export/DrawingCopy.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

/// A fan of our own with every kind of feature, for one hand, its blank measured or not, with a set-up for each zero.
std::string board_text(bool left, bool measured) {
  std::string text = std::string("format = 1\nname = \"wader\"\nhand = \"") + (left ? "left" : "right") + "\"\n" + R"(
[scale]
bass = 660
treble = 630
square_fret = 7
frets = 20
[strings]
count = 6
nut_spread = 36
saddle_spread = 52
[board]
thickness = 6
edge_margin = 3.5
corner_radius = 3
[surface]
profile = "single"
radius_at_nut = 305
[nut]
seat = "slot"
[[inlays]]
shape = "trapezoid"
frets = [5, 7, 12]
along = 10
across_nut = 20
across_heel = 24
depth = 1.2
turn = 10
shift_across = 2
[side_dots]
frets = [3, 5]
[pins]
at = [[40, 8], [300, -10]]
[[setups]]
name = "inlay side"
operations = ["pockets", "inlay"]
zero = "corner"
z_zero = "blank-top"
tape = 0.15
[[setups]]
name = "shape"
operations = ["radius", "slots"]
zero = "centre"
z_zero = "bed"
tape = 0.15
[[setups]]
name = "trim"
operations = ["outline"]
)";
  if (measured) text += "[blank]\nlength = 571.3\nwidth = 83.7\nthickness = 7.4\nat = [47.1, 39.2]\n";
  return text;
}

struct Case {
  bool left, measured;
};
class EverySetUp : public testing::TestWithParam<Case> {};
INSTANTIATE_TEST_SUITE_P(HandsAndBlanks, EverySetUp,
                         testing::Values(Case{false, false}, Case{false, true}, Case{true, false}, Case{true, true}));

// The zeros are BOARD-FILE's: the nut line on the centre line, the blank's lower left corner, the blank's middle.
TEST_P(EverySetUp, FilesCarriedBackToTheBoardAreTheLayout) {
  const auto [left, measured] = GetParam();
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", board_text(left, measured));
  const Outcome made = sagitta("export '" + (scratch / "board.toml").string() + "' --only dxf,svg --to '" +
                               (scratch / "out").string() + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  const Layout layout = std::get<PreparedBoard>(prepare(scratch / "board.toml")).layout();
  const Box box = bounds(layout.outline);
  const Point board_middle = between(box.low, box.high, 0.5);
  const Point corner = measured ? Point{-47.1, -39.2} : Point{box.low.x - 30, box.low.y - 12};
  const Point centre = measured ? corner + Point{571.3 / 2, 83.7 / 2} : board_middle;
  const struct {
    const char* folder;
    Point zero;
    std::set<std::string> layers;
  } setups[] = {{"inlay_side-01", corner, {"pocket", "piece-shell"}},
                {"shape-02", centre, {"radius-area", "slot-middle", "slot-outline", "nut-seat"}},
                {"trim-03", {0, 0}, {"outline", "tabs", "side-dots"}}};
  const json copies = drawing_copies(scratch / "out"), &whole = copies["board.dxf"];
  for (const auto& setup : setups)
    for (const char* name : {"setup.dxf", "setup-r12.dxf", "setup.svg"}) {
      const json& copy = copies["setups/" + std::string(setup.folder) + "/" + name];
      std::set<std::string> seen;
      for (const auto& [layer, figures] : copy["layers"].items()) {
        if (layer == "zero" || layer == "scale-bar") continue;
        std::vector<CopiedFigure> back;
        for (const CopiedFigure& figure : copied_layer(copy, layer)) back.push_back(moved(figure, setup.zero));
        EXPECT_TRUE(same_layer(copied_layer(whole, layer), back)) << setup.folder << " " << name << " " << layer;
        seen.insert(layer);
      }
      for (const char* always : {"blank", "blank-centre", "centre-line", "clamps"}) EXPECT_EQ(seen.erase(always), 1U);
      EXPECT_EQ(seen, setup.layers) << name;
    }
  const auto outline = copied_layer(copies["setups/trim-03/setup.dxf"], "outline");
  EXPECT_TRUE(same(outline.at(0), expected(layout.outline)));
}

TEST(ResolvedSetup, HeightsAreCountedFromItsOwnZero) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", board_text(false, true));
  const PreparedBoard ready = std::get<PreparedBoard>(prepare(scratch / "board.toml"));
  const auto setups = setups_of(ready);
  ASSERT_EQ(setups.size(), 3U);
  EXPECT_DOUBLE_EQ(setups[0].z_from_board(7.4), 0) << "on the blank's top, as measured";
  EXPECT_DOUBLE_EQ(setups[0].z_from_board(6 - 1.2), -2.6) << "the pockets' floor";
  EXPECT_DOUBLE_EQ(setups[1].z_from_board(0), 0.15) << "the glue face lies on the tape on the bed";
  EXPECT_DOUBLE_EQ(setups[2].z_from_board(6), 6);
  for (const auto& setup : setups) EXPECT_DOUBLE_EQ(setup.z_to_board(setup.z_from_board(4.8)), 4.8);
}

TEST(ResolvedSetup, DistancesToTheNutLineAreInTheFile) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", board_text(false, true));
  ASSERT_EQ(sagitta("export '" + (scratch / "board.toml").string() + "' --only svg,pdf --to '" +
                    (scratch / "out").string() + "'")
                .code,
            0);
  const std::string svg = bytes_of(scratch / "out/setups/inlay_side-01/setup.svg");
  EXPECT_NE(svg.find("47.1 mm along, 39.2 mm across"), std::string::npos) << "corner, as blank.at says";
  EXPECT_NE(svg.find("-238.55 mm along, -2.65 mm across"), std::string::npos) << "571.3 / 2 - 47.1, 83.7 / 2 - 39.2";
  EXPECT_NE(svg.find("571.3 x 83.7 x 7.4 mm"), std::string::npos) << "measured";
  const std::string sheet =
      shell("pdftotext -layout '" + (scratch / "out/setups/inlay_side-01/setup.pdf").string() + "' -").out;
  EXPECT_NE(sheet.find("47.1 mm along, 39.2 mm across"), std::string::npos) << sheet;
  EXPECT_NE(sheet.find("571.3 x 83.7 x 7.4 mm"), std::string::npos) << sheet;
}

// A 3 mm cutter leaves 3 mm and a web between the dots of 6 mm; each stands whole on the sheet.
TEST(ResolvedSetup, SheetOfInlayMaterialIsASetUpOfItsOwn) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml",
             bytes_of(preset_path("heron-six")) +
                 "\n[[cutters]]\nname = \"small\"\nuse = [\"piece\"]\ndiameter = 3\ncutting_length = 6\n"
                 "[[sheets]]\nmaterial = \"shell\"\nlength = 70\nwidth = 40\nthickness = 2\n");
  const Outcome made = sagitta("export '" + (scratch / "board.toml").string() + "' --only dxf,svg --to '" +
                               (scratch / "out").string() + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  const json copies = drawing_copies(scratch / "out");
  for (const char* name : {"setup.dxf", "setup-r12.dxf", "setup.svg"}) {
    const json& copy = copies.at("setups/sheet-shell-01/" + std::string(name));
    EXPECT_EQ(copy["errors"], json::array());
    const auto pieces = copied_layer(copy, "piece-shell");
    ASSERT_EQ(pieces.size(), 10U) << name;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const auto [x, y, radius] = pieces[i].corners.at(0);
      EXPECT_TRUE(pieces[i].circle);
      EXPECT_NEAR(radius, 3, read_back);
      EXPECT_TRUE(x - radius > 3 && y - radius > 3 && x + radius < 67 && y + radius < 37) << x << " " << y;
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_GT(std::hypot(x - pieces[k].corners[0][0], y - pieces[k].corners[0][1]), 6 + 3) << i << " " << k;
    }
    EXPECT_TRUE(same(copied_layer(copy, "blank").at(0), expected(rectangle({0, 0}, {70, 40}))));
  }
}

TEST(ResolvedSetup, BoardWithoutSetUpsGetsOneOfAllWork) {
  const auto prepared = prepare(preset_path("heron-six"));
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  const auto setups = setups_of(ready);
  ASSERT_EQ(setups.size(), 1U);
  EXPECT_EQ(setups[0].operations, ready.board().order);
  EXPECT_EQ(setups[0].origin, (Point{0, 0}));
}

}  // namespace
}  // namespace sagitta::test
