// The trial strip as other programs read it: ezdxf for its drawing, the kernel's STEP reader for its solids. Widths and
// clearances are the sheet's own: a step about the wanted one, in closed form.

#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>

#include "export/DrawingCopy.hpp"
#include "export/StepReading.hpp"

namespace sagitta::test {
namespace {

std::string trial_of_preset(const std::string& preset, const ScratchFolder& scratch) {
  const std::string to = scratch / "strip";
  const Outcome made = sagitta("trial '" + preset_path(preset).string() + "' --to '" + to + "'");
  EXPECT_EQ(made.code, 0) << made.err;
  return to;
}

std::array<double, 2> extent(const CopiedFigure& figure, int axis) {
  std::array<double, 2> found{1e300, -1e300};
  for (const auto& corner : figure.corners)
    found = {std::min(found[0], corner[axis]), std::max(found[1], corner[axis])};
  return found;
}

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

TEST(TrialStrip, SlotsAreAsWideAsTheSheetSays) {
  const ScratchFolder scratch;
  const json drawing = drawing_copies(trial_of_preset("heron-six", scratch)).at("trial.dxf");
  const std::vector<CopiedFigure> slots = copied_layer(drawing, "slot-outline");
  ASSERT_EQ(slots.size(), 7U);
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const auto [low, high] = extent(slots[i], 0);
    EXPECT_NEAR(high - low, 0.584 + (static_cast<double>(i) - 3) * 0.02, read_back);  // heron-six: slots.width 0.584
  }
  const auto [first, left] = extent(slots.front(), 0);
  const auto [right, last] = extent(slots.back(), 0);
  EXPECT_NEAR((right + last) / 2 - (first + left) / 2, 100, read_back);
}

TEST(TrialStrip, PocketsAreLargerThanPiecesByTheirClearance) {
  const ScratchFolder scratch;
  const json drawing = drawing_copies(trial_of_preset("heron-six", scratch)).at("trial.dxf");
  const std::vector<CopiedFigure> pockets = copied_layer(drawing, "pocket");
  const std::vector<CopiedFigure> pieces = copied_layer(drawing, "piece-shell");
  ASSERT_EQ(pockets.size(), 5U);
  ASSERT_EQ(pieces.size(), 5U);
  for (std::size_t i = 0; i < pockets.size(); ++i)
    for (const int axis : {0, 1}) {
      const auto [low, high] = extent(pockets[i], axis);
      const auto [inner_low, inner_high] = extent(pieces[i], axis);
      const double clearance = 0.05 + (static_cast<double>(i) - 2) * 0.02;  // heron-six: inlays.clearance 0.05
      EXPECT_NEAR(inner_low - low, clearance, read_back);
      EXPECT_NEAR(high - inner_high, clearance, read_back);
    }
}

TEST(TrialStrip, SolidLacksWhatTheDrawingTakesAway) {
  const ScratchFolder scratch;
  const std::string to = trial_of_preset("heron-six", scratch);
  const json drawing = drawing_copies(to).at("trial.dxf");
  const ReadStep step = read_step(bytes_of(to + "/strip.step"));
  ASSERT_EQ(step.solids().size(), 1U);
  const CopiedFigure outline = copied_layer(drawing, "outline").at(0);
  const double wide = extent(outline, 1)[1] - extent(outline, 1)[0];
  constexpr double thickness = 6.3, slot_depth = 1.7 + 0.35, pocket_depth = 1.5;  // heron-six
  double expected = area_of(outline) * thickness;
  for (const CopiedFigure& slot : copied_layer(drawing, "slot-outline"))
    expected -= (extent(slot, 0)[1] - extent(slot, 0)[0]) * wide * slot_depth;
  for (const CopiedFigure& pocket : copied_layer(drawing, "pocket")) expected -= area_of(pocket) * pocket_depth;
  EXPECT_NEAR(volume_of(step.solids()[0]), expected, 1e-6 * expected);
}

TEST(TrialStrip, PiecesAreAsThickAsTheBoardsOwn) {
  const ScratchFolder scratch;
  const std::string to = trial_of_preset("heron-six", scratch);
  const CopiedFigure piece = copied_layer(drawing_copies(to).at("trial.dxf"), "piece-shell").at(0);
  const ReadStep step = read_step(bytes_of(to + "/pieces.step"));
  ASSERT_EQ(step.parts.size(), 5U);
  for (const ReadPart& part : step.parts)  // heron-six: pockets 1.5 deep, pieces 0.2 thicker where nothing is said
    EXPECT_NEAR(volume_of(part.shape), area_of(piece) * 1.7, 1e-6 * area_of(piece));
  EXPECT_EQ((bytes_of(to + "/pieces.stl").size() - 84) % 50, 0U);
}

TEST(TrialStrip, InInchesStepsAreThousandthsAndTheLengthIsFour) {
  const ScratchFolder scratch;
  const json drawing = drawing_copies(trial_of_preset("tern-inch-left", scratch)).at("trial.dxf");
  const std::vector<CopiedFigure> middles = copied_layer(drawing, "slot-middle");
  const std::vector<CopiedFigure> slots = copied_layer(drawing, "slot-outline");
  ASSERT_EQ(middles.size(), 7U);
  EXPECT_NEAR(extent(middles[6], 0)[0] - extent(middles[0], 0)[0], 4 * 25.4, read_back);
  const auto width = [&](std::size_t i) { return extent(slots[i], 0)[1] - extent(slots[i], 0)[0]; };
  for (std::size_t i = 0; i + 1 < slots.size(); ++i) EXPECT_NEAR(width(i + 1) - width(i), 0.0254, read_back);
}

TEST(TrialStrip, NoSlotIsNarrowerThanItsCutter) {
  const ScratchFolder scratch;
  std::string board = sagitta("new heron-six").out;
  board += "\n[[cutters]]\nname = \"saw\"\nuse = [\"slot\"]\ndiameter = 0.57\ncutting_length = 3\n";
  write_file(scratch / "board.toml", board);
  const std::string to = scratch / "strip";
  const Outcome made = sagitta("trial '" + (scratch / "board.toml").string() + "' --to '" + to + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  const std::vector<CopiedFigure> slots = copied_layer(drawing_copies(to).at("trial.dxf"), "slot-outline");
  ASSERT_FALSE(slots.empty());
  EXPECT_GE(extent(slots[0], 0)[1] - extent(slots[0], 0)[0], 0.57 - read_back);
}

TEST(TrialStrip, SheetNamesTheKeysToSet) {
  const ScratchFolder scratch;
  const std::string to = trial_of_preset("heron-six", scratch);
  const Outcome text = shell("pdftotext -layout '" + to + "/trial-sheet.pdf' -");
  ASSERT_EQ(text.code, 0) << text.err;
  for (const char* word :
       {"slots.width", "inlays.clearance", "cutters.measured_cut", "100.58", "0.584 *", "eye protection"})
    EXPECT_NE(text.out.find(word), std::string::npos) << word;
}

TEST(TrialStrip, SameBoardSameBytes) {
  const ScratchFolder one, two;
  const std::string a = trial_of_preset("heron-six", one), b = trial_of_preset("heron-six", two);
  EXPECT_EQ(listing(a), listing(b));
  for (const char* file : {"strip.step", "strip.stl", "trial.dxf", "trial-sheet.pdf"})
    EXPECT_EQ(bytes_of(a + "/" + file), bytes_of(b + "/" + file)) << file;
}

TEST(TrialStrip, ManifestListsWhatIsThere) {
  const ScratchFolder scratch;
  const std::string to = trial_of_preset("heron-six", scratch);
  const json manifest = json::parse(bytes_of(to + "/manifest.json"));
  std::string files = "manifest.json\n";
  for (const json& file : manifest["files"]) {
    const std::string name = file["file"], bytes = bytes_of(to + "/" + name);
    files += name + "\n";
    EXPECT_EQ(file["bytes"], bytes.size()) << name;
    EXPECT_EQ(shell("sha256sum '" + to + "/" + name + "'").out.substr(0, 64), file["sha256"]) << name;
  }
  EXPECT_EQ(shell("cd '" + to + "' && find . -type f | sed 's|^[.]/||' | sort").out,
            shell("printf '" + files + "' | sort").out);
  // The strip's volume is what the kernel's STEP reader finds; its five pieces are 1.7 thick and 6 mm or so wide.
  const json& strip = manifest["files"][0];
  EXPECT_EQ(strip["file"], "strip.step");
  EXPECT_NEAR(double{strip["bodies"][0]["volume"]}, volume_of(read_step(bytes_of(to + "/strip.step")).solids().at(0)),
              1e-3);
  EXPECT_EQ(manifest["files"][2]["bodies"].size(), 5U);
}

TEST(TrialStrip, ManifestMakesItAgain) {
  const ScratchFolder scratch;
  const std::string first = scratch / "first", again = scratch / "again", wrong = scratch / "wrong";
  // A board with a drawing, gone by the time that the strip is made again; another paper than usual.
  fs::create_directory(scratch / "shop");
  copy_drawings(scratch / "shop");
  fs::copy_file(preset_path("numerals"), scratch / "shop/board.toml");
  ASSERT_EQ(sagitta("trial '" + (scratch / "shop/board.toml").string() + "' --paper Letter --to '" + first + "'").code,
            0);
  fs::remove_all(scratch / "shop");
  const Outcome made = sagitta("trial '" + first + "/manifest.json' --to '" + again + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  EXPECT_EQ(shell("diff -r '" + first + "' '" + again + "'").code, 0);
  const Outcome paper = sagitta("trial '" + first + "/manifest.json' --paper A3 --to '" + wrong + "'");
  EXPECT_EQ(paper.code, 2);
  EXPECT_NE(paper.err.find("says itself"), std::string::npos) << paper.err;
}

TEST(TrialStrip, ManifestIsNotABoardsAndABoardsIsNotATrials) {
  const ScratchFolder scratch;
  const std::string strip = trial_of_preset("heron-six", scratch), board = scratch / "board", wrong = scratch / "wrong";
  ASSERT_EQ(sagitta("export '" + preset_path("heron-six").string() + "' --only csv --to '" + board + "'").code, 0);
  const Outcome exported = sagitta("export '" + strip + "/manifest.json' --to '" + wrong + "'");
  EXPECT_EQ(exported.code, 2);
  EXPECT_NE(exported.err.find("sagitta trial"), std::string::npos) << exported.err;
  const Outcome tried = sagitta("trial '" + board + "/manifest.json' --to '" + wrong + "'");
  EXPECT_EQ(tried.code, 2);
  EXPECT_NE(tried.err.find("sagitta export"), std::string::npos) << tried.err;
  EXPECT_FALSE(fs::exists(wrong));
  EXPECT_EQ(sagitta("compare '" + strip + "/manifest.json' '" + board + "/manifest.json'").code, 0)
      << "both hold the same board";
}

}  // namespace
}  // namespace sagitta::test
