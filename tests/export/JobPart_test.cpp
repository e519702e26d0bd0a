// A part of the job beside the whole: what is exported again lies where it lay, read back by ezdxf; what is left out is
// not there. heron-six: slots 1 to 22, ten shell dots of 6 mm, clearance 0.05.

#include "export/JobPart.hpp"

#include <gtest/gtest.h>

#include "DrawingCopy.hpp"
#include "StepReading.hpp"

namespace sagitta::test {
namespace {

std::string exported(const ScratchFolder& scratch, const std::string& folder, const std::string& options) {
  const std::string to = scratch / folder;
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --to '" + to + "' " + options);
  EXPECT_EQ(made.code, 0) << made.err;
  return to;
}

std::string refused(const std::string& options) {
  const ScratchFolder scratch;
  const std::string to = scratch / "part";
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --to '" + to + "' " + options);
  EXPECT_EQ(made.code, 2);
  EXPECT_FALSE(fs::exists(to));
  return made.err;
}

TEST(JobPart, FretsAreReadAsTheyAreTyped) {
  EXPECT_EQ(frets_in("9-12"), (std::set<int>{9, 10, 11, 12}));
  EXPECT_EQ(frets_in("1,3,9-10"), (std::set<int>{1, 3, 9, 10}));
  EXPECT_EQ(words_of(frets_in("3,1,9-12")), "1,3,9-12");
  for (const char* wrong : {"", "9-", "-3", "x", "12-9", "1,,2", "1.5"})
    EXPECT_THROW(frets_in(wrong), PartError) << wrong;
}

TEST(JobPart, SlotsOfSomeFretsStayWhereTheyAre) {
  const ScratchFolder scratch;
  const std::string all = exported(scratch, "all", "--only dxf"),
                    part = exported(scratch, "part", "--only dxf --frets 9-22 --operation slots");
  for (const char* file : {"board.dxf", "setups/whole-job-01/setup.dxf"}) {
    const json whole = drawing_copies(all).at(file), some = drawing_copies(part).at(file);
    const std::vector<CopiedFigure> before = copied_layer(whole, "slot-middle"),
                                    after = copied_layer(some, "slot-middle");
    ASSERT_EQ(before.size(), 22U);
    ASSERT_EQ(after.size(), 14U);
    EXPECT_TRUE(same_layer(after, {before.begin() + 8, before.end()})) << file;
    EXPECT_TRUE(same_layer(copied_layer(some, "blank"), copied_layer(whole, "blank")));
    for (const char* other : {"pocket", "outline", "radius-area", "piece-shell"})
      EXPECT_TRUE(copied_layer(some, other).empty()) << file << " " << other;
  }
}

TEST(JobPart, SolidLacksTheFretsLeftOut) {
  const ScratchFolder scratch;
  const std::string part = exported(scratch, "part", "--only step --frets 1-2 --operation slots");
  EXPECT_EQ(listing(part), "manifest.json\nslotted.step\n");
  const ReadStep step = read_step(bytes_of(part + "/slotted.step"));
  std::size_t slots = 0;
  for (const ReadPart& each : step.parts) slots += each.layer == "slot middle lines";
  EXPECT_EQ(slots, 2U);
}

TEST(JobPart, PiecesGrowByTheRoomTheyLose) {
  const ScratchFolder scratch;
  const std::string part = exported(scratch, "part", "--only dxf,csv --pieces shell-03,shell-05 --clearance 0.03");
  const std::vector<CopiedFigure> pieces = copied_layer(drawing_copies(part).at("board.dxf"), "piece-shell");
  ASSERT_EQ(pieces.size(), 2U);
  // A 6 mm dot is the pocket less 0.05 mm all round; with 0.03 mm of room it is 0.02 mm larger in radius.
  const std::vector<CopiedFigure> whole =
      copied_layer(drawing_copies(exported(scratch, "all", "--only dxf")).at("board.dxf"), "piece-shell");
  for (const CopiedFigure& piece : pieces) {
    ASSERT_TRUE(piece.circle);
    EXPECT_NEAR(piece.corners[0][2], whole.front().corners[0][2] + 0.02, read_back);
  }
  const std::string list = bytes_of(part + "/pieces.csv");
  EXPECT_NE(list.find("shell-03"), std::string::npos);
  EXPECT_EQ(list.find("shell-04"), std::string::npos);
}

TEST(JobPart, ManifestMakesThePartAgain) {
  const ScratchFolder scratch;
  const std::string first = exported(scratch, "first", "--only dxf,step --frets 3,5 --operation pockets");
  const std::string again = scratch / "again";
  const Outcome made = sagitta("export '" + first + "/manifest.json' --to '" + again + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  EXPECT_EQ(listing(first), listing(again));
  for (const char* file : {"board.dxf", "pocketed.step", "manifest.json"})
    EXPECT_EQ(bytes_of(first + "/" + file), bytes_of(fs::path(again) / file)) << file;
}

TEST(JobPart, SaysWhatTheBoardHas) {
  EXPECT_NE(refused("--frets 9-30").find("the board has 22 frets"), std::string::npos);
  EXPECT_NE(refused("--pieces bone-01").find("shell-01 to shell-10"), std::string::npos);
  EXPECT_NE(refused("--operation sanding").find("pockets, inlay, radius, slots and outline"), std::string::npos);
  EXPECT_NE(refused("--clearance 0.03").find("--pieces"), std::string::npos);
}

}  // namespace
}  // namespace sagitta::test
