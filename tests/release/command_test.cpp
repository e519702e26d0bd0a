// The commands that take what was measured, as a builder types them.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "board/Writer.hpp"
#include "export/CommandLine.hpp"
#include "findings/GoodBoard.hpp"

namespace sagitta::test {
namespace {

using nlohmann::json;

class MeasuredCommand : public testing::Test {
 protected:
  ScratchFolder scratch;

  std::string file(const Board& board, const std::string& name = "board.toml") const {
    write_file(scratch / name, write_board(board));
    return "'" + (scratch / name).string() + "'";
  }
};

TEST_F(MeasuredCommand, BeforeExitsByItsAnswer) {
  Board board = good_board();
  EXPECT_EQ(sagitta("check --before slots " + file(board)).code, 0);
  board.measured.thickness = {{200, 0, 6.25}};
  const Outcome changed = sagitta("check --before slots " + file(board));
  EXPECT_EQ(changed.code, 5);
  EXPECT_EQ(std::count(changed.out.begin(), changed.out.end(), '\n'), 1);
  board.measured.blank_thickness = 6.0;
  board.measured.thickness.clear();
  const Outcome refused = sagitta("check --before slots --json " + file(board));
  EXPECT_EQ(refused.code, 1);
  EXPECT_EQ(json::parse(refused.out)["answer"], "refused");
  EXPECT_EQ(sagitta("check --before varnish " + file(board)).code, 2);
}

TEST_F(MeasuredCommand, RescueListsWaysAndAppliesOne) {
  Board board = good_board();
  for (int fret = 1; fret <= 22; ++fret) board.measured.slots.push_back(648.09 * (1 - std::exp2(-fret / 12.0)));
  const std::string path = file(board);
  const json ways = json::parse(sagitta("rescue --json " + path).out)["ways"];
  ASSERT_FALSE(ways.empty());
  EXPECT_EQ(ways[0]["name"], "other-scale");
  EXPECT_EQ(ways[0]["edits"][0]["key"], "scale.length");
  EXPECT_NEAR(ways[0]["edits"][0]["value"].get<double>(), 648.09, 1e-6);
  EXPECT_TRUE(ways[0]["cost"].is_string());
  for (const json& way : ways)
    for (const json& finding : way["findings"]) EXPECT_NE(finding["severity"], "stop");
  const Outcome applied = sagitta("rescue --apply other-scale " + path);
  EXPECT_EQ(applied.code, 0);
  write_file(scratch / "next.toml", applied.out);
  EXPECT_EQ(sagitta("check '" + (scratch / "next.toml").string() + "'").code, 0);
  EXPECT_EQ(sagitta("rescue --apply wish " + path).code, 2);
}

TEST_F(MeasuredCommand, RescueWorksWhereTheBlankIsRefused) {
  Board board = good_board();
  board.measured.blank_thickness = 6.2;
  const std::string path = file(board);
  EXPECT_EQ(sagitta("check " + path).code, 2);
  const Outcome rescue = sagitta("rescue --json " + path);
  EXPECT_EQ(rescue.code, 0);
  EXPECT_FALSE(json::parse(rescue.out)["ways"].empty());
}

TEST_F(MeasuredCommand, CompareOfOneBoardTellsWhatWasMeasured) {
  Board board = good_board();
  board.measured.slot_width = 0.6;
  const json compared = json::parse(sagitta("compare --json " + file(board)).out);
  ASSERT_EQ(compared["keys"].size(), 1U);
  EXPECT_EQ(compared["keys"][0]["key"], "measured.slot_width");
  board.measured = {};
  EXPECT_TRUE(json::parse(sagitta("compare --json " + file(board)).out)["keys"].empty());
}

TEST_F(MeasuredCommand, AFolderKeepsWhatWasPlannedAndWhatWasMeasured) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  board.measured.serial = "23";
  const std::string folder = (scratch / "out").string();
  ASSERT_EQ(sagitta("export " + file(board) + " --to '" + folder + "' --only csv").code, 0);
  const json manifest = json::parse(bytes_of(folder + "/manifest.json"));
  EXPECT_EQ(manifest["serial"], "23");
  EXPECT_EQ(manifest["board"], write_board(board));
}

/// Every file of a folder but the record of what was measured: the manifest, and the sheets that it stands on.
std::map<std::string, std::string> but_the_record(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& each : fs::recursive_directory_iterator(folder)) {
    const std::string name = fs::relative(each.path(), folder).string();
    const bool record = name == "manifest.json" || name.starts_with("job-sheet") || name.starts_with("sources");
    if (each.is_regular_file() && !record) files[name] = bytes_of(each.path());
  }
  return files;
}

// Solids, meshes, drawings, papers and tables: everything a builder gets.
TEST_F(MeasuredCommand, PlannedValuesThatWereMeasuredChangeNoByte) {
  Board board = good_board();
  board.setups = {{"all", board.order, Zero::nut, ZZero::bed, 0.2}};
  board.blank.thickness = 7.15;
  Board measured = board;
  measured.measured.blank_thickness = 7.15;
  measured.measured.tape = 0.2;
  measured.measured.slot_width = 0.58;
  measured.measured.pocket_depths = {{"shell-01", 1.5}, {"shell-03", 1.5}};
  measured.measured.piece_thickness = {{"shell", 1.7}};
  measured.measured.widths = {{0, 55.56}, {400, 55.56}};
  measured.measured.thickness = {{0, 0, 6.35}, {200, 0, 6.35}};
  const fs::path before = scratch / "before", after = scratch / "after";
  ASSERT_EQ(sagitta("export " + file(board) + " --to '" + before.string() + "'").code, 0);
  ASSERT_EQ(sagitta("export " + file(measured) + " --to '" + after.string() + "'").code, 0);
  const auto planned = but_the_record(before), made = but_the_record(after);
  ASSERT_GT(planned.size(), 30U);
  ASSERT_EQ(planned.size(), made.size());
  for (const auto& [name, bytes] : planned) EXPECT_TRUE(made.at(name) == bytes) << name;
}

// A rescued board is checked without a stop, and its solids are written: none is written that is not sound.
TEST_F(MeasuredCommand, RescuedBoardsPassAndTheirSolidsAreSound) {
  std::vector<Board> spoiled(5, good_board());
  spoiled[0].measured.blank_thickness = 6.2;
  spoiled[1].measured.chips = {{200, 27.78 - 0.5, 1.5}};
  spoiled[2].inlays[0].piece_thickness = 1.6;
  spoiled[2].measured.pocket_depths["shell-01"] = 2.4;
  spoiled[3].measured.thickness = {{50, 0, 5.95}, {250, 0, 5.95}};
  for (int fret = 1; fret <= 22; ++fret)
    spoiled[4].measured.slots.push_back(647.7 * (1 - std::exp2(-fret / 12.0)) + (fret == 5 ? 3 : 0));
  int rescued = 0;
  for (const Board& board : spoiled) {
    const std::string path = file(board);
    const json ways = json::parse(sagitta("rescue --json " + path).out)["ways"];
    ASSERT_FALSE(ways.empty());
    for (const json& way : ways) {
      const std::string name = way["name"];
      const Outcome applied = sagitta("rescue --apply " + name + " " + path);
      ASSERT_EQ(applied.code, 0) << name;
      write_file(scratch / "next.toml", applied.out);
      const std::string next = "'" + (scratch / "next.toml").string() + "'";
      EXPECT_EQ(sagitta("check " + next).code, 0) << name;
      const Outcome made =
          sagitta("export " + next + " --only step --stage board --replace --to '" + (scratch / "next").string() + "'");
      EXPECT_EQ(made.code, 0) << name << made.err;
      ++rescued;
    }
  }
  EXPECT_GE(rescued, 10);
}

}  // namespace
}  // namespace sagitta::test
