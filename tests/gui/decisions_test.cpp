/// Every key of the field table is a decision with its dimension on the board; what is typed or chosen there changes
/// the board.

#include "decisions/Decisions.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Materials.hpp"
#include "decisions/Dimensions.hpp"
#include "gui/Hand.hpp"
#include "input/Presets.hpp"

namespace sagitta::test {
namespace {

int rows_of(std::string_view key) {
  int count = 0;
  for (const viewer::DecisionGroup& group : viewer::decision_groups())
    for (const viewer::DecisionBlock& block : group.blocks)
      count += static_cast<int>(std::count_if(block.lines.begin(), block.lines.end(),
                                              [&](const viewer::DecisionLine& line) { return line.key == key; }));
  return count;
}

TEST(Decisions, EveryKeyHasOneRowOrAReason) {
  std::set<std::string> without;
  for (const viewer::KeyWithoutRow& each : viewer::keys_without_row()) {
    EXPECT_FALSE(each.reason.empty()) << each.key;
    EXPECT_TRUE(find_field(each.key)) << each.key;
    without.emplace(each.key);
  }
  ASSERT_GT(fields().size(), 200u);
  for (const Field& field : fields()) {
    const std::string key = field.dotted();
    EXPECT_EQ(rows_of(key), without.contains(key) ? 0 : 1) << key;
  }
}

TEST(Decisions, EveryRowIsAKeyInTheBlockOfItsTable) {
  for (const viewer::DecisionGroup& group : viewer::decision_groups())
    for (const viewer::DecisionBlock& block : group.blocks)
      for (const viewer::DecisionLine& line : block.lines) {
        const Field* field = find_field(line.key);
        ASSERT_TRUE(field) << line.key;
        EXPECT_EQ(field->table, block.table) << line.key;
        EXPECT_FALSE(line.label.empty()) << line.key;
      }
}

/// A board of its own for what no preset has: a neck, heights, set-ups and measured values.
Board measured_board() {
  Board board = read_board_text(preset_named("heron-six")->text, "heron-six.toml", "").board;
  board.scale.zero_fret = false;
  board.sanding = 0.05;
  board.pins = Pins{2, 2.5, {{20, 0}, {400, 0}}};
  board.nut.compensation = 0.3;
  board.setups = {Setup{"Flat", board.order, Zero::corner, ZZero::bed, 0.2, 0.2}};
  board.neck = Neck();
  board.neck->trim = board.neck->allowance = 0.4;
  board.neck->depth_first = 21, board.neck->depth_twelfth = 23;
  board.height = Heights();
  board.height->nut = 0.5, board.height->action = LengthPair(2, 1.6);
  board.height->bridge = 9, board.height->body_step = 2;
  for (int fret = 1; fret <= 22; ++fret) board.measured.slots.push_back(648 * (1 - std::exp2(-fret / 12.0)));
  board.measured.blank_thickness = 7.6, board.measured.tape = 0.15, board.measured.slot_width = 0.59;
  board.measured.pocket_depths = {{"shell-01", 1.5}};
  board.measured.piece_thickness = {{"shell", 1.8}};
  board.measured.thickness = {{100, 0, 6.3}};
  board.measured.chips = {{200, 10, 2}};
  board.measured.widths = {{0, 42.5}};
  return board;
}

/// Boards that between them use the keys that have a place.
std::vector<Board> boards() {
  std::vector<Board> all{measured_board()};
  for (const char* name : {"whimbrel-tongue", "whimbrel-scalloped", "sanderling-rolled", "snipe-lights", "wren-parlour",
                           "stilt-classical", "curlew-seven-fan", "whimbrel-fretless", "avocet-bound", "numerals"})
    all.push_back(read_board_text(preset_named(name)->text, "board.toml", "").board);
  return all;
}

/// What is not drawn on the board: it has no place there.
bool has_place(const Field& field) {
  const std::set<std::string_view> tables{"", "cutters", "sheets", "materials", "notes"};
  const std::set<std::string> keys{"measured.done", "measured.serial", "inlays.colours"};
  return !tables.contains(field.table) && !keys.contains(field.dotted());
}

TEST(Decisions, EveryKeyWithAPlaceIsDimensionedOnTheBoard) {
  std::vector<PreparedBoard> ready;
  for (const Board& board : boards()) {
    auto prepared = prepare(board);
    if (auto* good = std::get_if<PreparedBoard>(&prepared)) ready.push_back(std::move(*good));
  }
  ASSERT_GE(ready.size(), 9u);
  for (const Field& field : fields()) {
    if (!has_place(field)) continue;
    const Table* table = find_table(field.table);
    const std::string key =
        std::string(field.table) + (table->form == TableForm::many ? "[0]." : ".") + std::string(field.key);
    const bool drawn = std::any_of(ready.begin(), ready.end(), [&](const PreparedBoard& board) {
      const auto all = viewer::dimensions_for(key, board, {});
      return std::any_of(all.begin(), all.end(), [](const viewer::Dimension& d) { return !d.text.empty(); });
    });
    EXPECT_TRUE(drawn) << key;
  }
}

TEST(Decisions, PresetsNameOnlyKnownMaterials) {
  ASSERT_FALSE(presets().empty());
  for (const Preset& preset : presets()) {
    const Board board = read_board_text(preset.text, "board.toml", "").board;
    std::vector<std::string> names{board.blank.material, board.slots.line_material};
    for (const Inlay& inlay : board.inlays) {
      names.push_back(inlay.material);
      for (const auto& [colour, name] : inlay.colours) names.push_back(name);
    }
    for (const Sheet& sheet : board.sheets) names.push_back(sheet.material);
    if (board.binding)
      names.insert(names.end(), board.binding->line_materials.begin(), board.binding->line_materials.end());
    for (const std::string& name : names) EXPECT_TRUE(material(board, name).known) << preset.name << ": " << name;
  }
}

/// One key changed by hand, and what must then stand on the board.
struct Change {
  const char* preset;
  int group;
  const char* key;
  const char* typed;      ///< typed, or chosen where the key is a choice
  const char* dimension;  ///< part of a dimension's text on the board: the value that was typed
  int volume;             ///< +1: the finished board has more wood, -1: less, 0: as much
};

std::ostream& operator<<(std::ostream& out, const Change& change) { return out << change.preset << " " << change.key; }

class ByHand : public ::testing::TestWithParam<Change> {};

TEST_P(ByHand, ChangesTheBoardAndItsDimension) {
  const Change& change = GetParam();
  Hand hand({change.preset});
  const double before = hand.desk().results.good->exact->volume;
  const std::size_t steps = hand.desk().document.steps();
  hand.open_group(change.group);
  const std::string row = "Decisions/" + std::string(change.key);
  if (find_field(change.key)->kind == Kind::choice)
    hand.choose(row, change.typed);
  else
    hand.enter(row, change.typed);
  hand.wait();
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
  ASSERT_TRUE(hand.desk().results.current());
  ASSERT_TRUE(hand.desk().results.good->exact);
  const double after = hand.desk().results.good->exact->volume;
  EXPECT_EQ(after > before + 1e-6 ? 1 : after < before - 1e-6 ? -1 : 0, change.volume) << before << " " << after;
  const auto drawn = viewer::dimensions_for(change.key, *hand.desk().results.good->prepared, hand.desk().manner());
  const auto shows = [&](const viewer::Dimension& d) { return d.text.find(change.dimension) != d.text.npos; };
  EXPECT_TRUE(std::any_of(drawn.begin(), drawn.end(), shows)) << (drawn.empty() ? "" : drawn.front().text);
  // The window's last dimension is one of them.
  const std::string seen = hand.text("Board/dimension");
  EXPECT_TRUE(std::any_of(drawn.begin(), drawn.end(), [&](const viewer::Dimension& d) { return d.text == seen; }))
      << seen;
}

INSTANTIATE_TEST_SUITE_P(Decisions, ByHand,
                         ::testing::Values(Change{"whimbrel-tongue", 3, "tongue.margin", "2", "2 mm", -1},
                                           Change{"whimbrel-tongue", 3, "tongue.corner_radius", "4", "4 mm", -1},
                                           Change{"sanderling-rolled", 4, "edges.roll", "1", "1 mm", 1},
                                           Change{"snipe-lights", 7, "cuts[0].along", "12", "12 mm", 1},
                                           Change{"snipe-lights", 7, "cuts[1].depth", "1.5", "1.5 mm", 1},
                                           Change{"redshank-seven", 3, "board.nut_margin", "4.2, 3", "4.2 mm", 1},
                                           Change{"stilt-twelve", 2, "strings.course_gap", "2", "2 mm", 0},
                                           Change{"heron-six", 5, "nut.floor", "arc", "arc", -1},
                                           Change{"wren-parlour", 3, "binding.lines", "0.4, 0.4", "2.3 mm", 1},
                                           Change{"snipe-lights", 6, "side_dots.edge", "treble", "treble", 0},
                                           Change{"heron-six", 9, "measured.chips", "200, 10, 2", "2 mm", 0},
                                           Change{"whimbrel-fretless", 5, "slots.line_thickness", "0.5", "0.5 mm", 0},
                                           Change{"stilt-classical", 3, "board.heel_arc_radius", "60", "heel end",
                                                  -1}));

TEST(Decisions, AWidthAtAFretIsTyped) {
  Hand hand;
  hand.open_group(3);
  hand.choose("Decisions/form.width", "nut and a fret");
  hand.enter("Decisions/board.width_at_fret", "12, 52");
  hand.wait();
  const Layout& layout = hand.desk().results.good->prepared->layout();
  EXPECT_NEAR(2 * layout.half_width(layout.frets[12].middle.x), 52, 1e-9);
  EXPECT_EQ(hand.text("Board/dimension"), "52 mm");
}

// One space alone: a trough half as deep leaves more wood.
TEST(Decisions, AScallopIsMadeShallower) {
  Hand hand;
  Board draft = hand.board();
  draft.scallop = Scallop{12, 13, 1.0, 1.5};
  hand.desk().document.change(draft, "Test");
  hand.wait();
  const double before = hand.desk().results.good->exact->volume;
  hand.open_group(4);
  hand.enter("Decisions/scallop.depth", "0.5");
  hand.wait();
  EXPECT_GT(hand.desk().results.good->exact->volume, before);
  EXPECT_EQ(hand.text("Board/dimension").substr(0, 6), "0.5 mm");
}

TEST(Decisions, HeightsAreTickedAndTyped) {
  Hand hand;
  hand.open_group(9);
  hand.click("Decisions/String heights");
  ASSERT_TRUE(hand.board().height);
  hand.enter("Decisions/height.action", "2, 1.6");
  hand.wait();
  EXPECT_DOUBLE_EQ(hand.board().height->action->first, 2);
  EXPECT_EQ(hand.text("Board/dimension"), "1.6 mm");  // the treble string's, drawn last
}

TEST(Decisions, ANoteIsAddedAndTakenAway) {
  Hand hand;
  hand.open_group(9);
  hand.click("Decisions/Add note");
  hand.enter("Decisions/notes[0].text", "seen");
  ASSERT_EQ(hand.board().notes.size(), 1u);
  EXPECT_EQ(hand.board().notes[0].text, "seen");
  hand.click("Decisions/Note 1 remove");
  EXPECT_TRUE(hand.board().notes.empty());
}

TEST(Decisions, ACutIsTakenOutAloneAndUndoBringsItBack) {
  Hand hand({"snipe-lights"});
  const Board before = hand.board();
  ASSERT_GE(before.cuts.size(), 3u);
  hand.open_group(7);
  hand.click("Decisions/Cut 1 remove");
  Board expected = before;
  expected.cuts.erase(expected.cuts.begin());
  EXPECT_EQ(hand.board(), expected);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), before);
}

TEST(Decisions, AMaterialIsDescribed) {
  Hand hand;
  hand.open_group(8);
  hand.click("Decisions/Describe ebony");
  hand.enter("Decisions/materials.ebony.density", "1150");
  EXPECT_DOUBLE_EQ(hand.board().materials.at("ebony").density.value_or(0), 1150);
  EXPECT_DOUBLE_EQ(material(hand.board(), "ebony").density, 1150);
}

TEST(Decisions, ASheetIsHeldByASkin) {
  Hand hand;
  hand.open_group(8);
  hand.click("Decisions/Add sheet");
  hand.choose("Decisions/sheets[0].hold", "skin");
  hand.enter("Decisions/sheets[0].skin", "0.4");
  EXPECT_EQ(hand.board().sheets.at(0).hold, SheetHold::skin);
  EXPECT_DOUBLE_EQ(hand.board().sheets.at(0).skin, 0.4);
}

}  // namespace
}  // namespace sagitta::test
