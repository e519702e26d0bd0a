// What was measured on papers and in the manifest; what is as planned changes nothing else.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "findings/GoodBoard.hpp"
#include "folder/Manifest.hpp"
#include "jobsheet/JobSheet.hpp"
#include "package/Compare.hpp"
#include "package/DrawingFiles.hpp"
#include "text/Measures.hpp"

namespace sagitta::test {
namespace {

PreparedBoard ready(const Board& board) { return std::get<PreparedBoard>(prepare(board)); }

Board board_with_setups() {
  Board board = good_board();
  board.setups = {{"top", {Operation::pockets, Operation::radius}, Zero::corner, ZZero::bed, 0.2},
                  {"last", {Operation::slots, Operation::outline}}};
  board.blank.thickness = 7.15;
  return board;
}

TEST(Record, OfPlannedValuesChangesNoPaper) {
  const Board board = board_with_setups();
  Board measured = board;
  measured.measured.blank_thickness = 7.15;
  measured.measured.tape = 0.2;
  measured.setups[1].tape = 0.2;
  Board planned = measured;
  planned.measured = {};
  measured.measured.slot_width = 0.58;
  measured.measured.pocket_depths = {{"shell-01", 1.5}};
  measured.measured.piece_thickness = {{"shell", 1.7}};
  measured.measured.widths = {{0, 55.56}, {400, 55.56}};
  measured.measured.thickness = {{0, 0, 6.35}};
  const DrawingKinds kinds{true, true, true, true};
  const auto before = drawing_files(ready(planned), kinds, {}), after = drawing_files(ready(measured), kinds, {});
  ASSERT_EQ(before.size(), after.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    EXPECT_EQ(before[i].file, after[i].file);
    EXPECT_TRUE(before[i].bytes == after[i].bytes) << before[i].file;
  }
}

TEST(JobSheet, OfTheRestLeavesOutWhatIsDone) {
  Board board = board_with_setups();
  board.measured.done = {Operation::pockets, Operation::radius};
  board.measured.serial = "17";
  board.measured.blank_thickness = 7.0;
  board.notes = {{"look at the grain", "thin-edge", "Ida"}};
  const JobSheet sheet = job_sheet(ready(board), {});
  ASSERT_EQ(sheet.setups.size(), 1U);
  EXPECT_EQ(sheet.setups[0].folder, "last-02");
  EXPECT_EQ(sheet.done, (std::vector<std::string>{"pockets", "radius"}));
  ASSERT_EQ(sheet.record.rows.size(), 1U);
  EXPECT_EQ(sheet.record.rows[0][2], "7.15");
  EXPECT_EQ(sheet.record.rows[0][3], "7.00");
  EXPECT_EQ(sheet.record.rows[0][4], "-0.15");
  ASSERT_EQ(sheet.notes.size(), 1U);
  for (const char* part : {"look at the grain", "thin-edge", "Ida"})
    EXPECT_NE(sheet.notes[0].find(part), std::string::npos);
  EXPECT_NE(sheet.title.find("17"), std::string::npos);
}

TEST(JobSheet, OfABoardThatNobodyMeasuredHasNoRecord) {
  const JobSheet sheet = job_sheet(ready(board_with_setups()), {});
  EXPECT_TRUE(sheet.record.rows.empty());
  EXPECT_TRUE(sheet.done.empty());
  EXPECT_TRUE(sheet.notes.empty());
}

TEST(Manifest, SpeaksOfASerialNumberWhereThereIsOne) {
  Manifest manifest{"1", "", {}, "{}", "[]", "17"};
  EXPECT_EQ(nlohmann::json::parse(manifest_text(manifest))["serial"], "17");
  manifest.serial.clear();
  EXPECT_FALSE(nlohmann::json::parse(manifest_text(manifest)).contains("serial"));
}

TEST(Compare, TellsPlannedFromMeasured) {
  Board board = good_board();
  board.measured.pocket_depths = {{"shell-01", 1.7}};
  Board planned = board;
  planned.measured = {};
  const auto keys = differences(ready(planned), ready(board));
  ASSERT_EQ(keys.size(), 1U);
  EXPECT_EQ(keys[0].key, "measured.pocket_depths");
  ASSERT_TRUE(keys[0].effect);
  EXPECT_NEAR(keys[0].effect->depth, 0.2, 1e-9);
}

}  // namespace
}  // namespace sagitta::test
