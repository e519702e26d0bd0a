#include "release/Release.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "findings/GoodBoard.hpp"
#include "release/CutNumbers.hpp"

namespace sagitta::test {
namespace {

constexpr double close = 1e-9;

Release before(const Board& board, Operation operation) {
  BoardFile file;
  file.board = board;
  return release_before(file, operation);
}

const ChangedNumber* change(const Release& release, std::string_view what) {
  const auto at = std::find_if(release.changes.begin(), release.changes.end(),
                               [&](const ChangedNumber& each) { return each.what == what; });
  return at == release.changes.end() ? nullptr : &*at;
}

TEST(Release, IsAsPlannedWhereNothingWasMeasured) {
  for (const Operation each : good_board().order)
    EXPECT_EQ(before(good_board(), each).answer, Release::Answer::as_planned);
}

TEST(Release, IsAsPlannedWherePlannedValuesWereMeasured) {
  Board board = good_board();
  board.measured.blank_thickness = 7.15;  // 6.35 and 0.8
  board.measured.slot_width = 0.58;
  board.measured.thickness = {{200, 0, 6.35}};
  for (const Operation each : board.order) EXPECT_EQ(before(board, each).answer, Release::Answer::as_planned);
}

TEST(Release, NamesTheNumbersThatAThinnerBlankChanges) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  const Release release = before(board, Operation::pockets);
  EXPECT_EQ(release.answer, Release::Answer::changed);
  ASSERT_EQ(release.changes.size(), 1U);  // floors count from the glue face
  EXPECT_NEAR(*release.changes[0].planned, 7.15, close);
  EXPECT_NEAR(*release.changes[0].measured, 6.9, close);
  EXPECT_EQ(before(board, Operation::slots).answer, Release::Answer::as_planned) << "the radius has been cut by then";
}

TEST(Release, HeightsFromTheBedFollowTheTape) {
  Board board = good_board();
  board.setups = {{"all", board.order, Zero::nut, ZZero::bed, 0.2}};
  board.measured.tape = 0.25;
  const Release release = before(board, Operation::slots);
  EXPECT_EQ(release.answer, Release::Answer::changed);
  const ChangedNumber* floor = change(release, "floor of the nut seat, z");
  ASSERT_TRUE(floor);
  EXPECT_NEAR(*floor->planned, 6.35 - 3.2 + 0.2, close);
  EXPECT_NEAR(*floor->measured, 6.35 - 3.2 + 0.25, close);
}

TEST(Release, FloorsThatAreStillToBeCutFollowAThinnerBoard) {
  Board board = good_board();
  board.measured.thickness = {{200, 0, 6.25}};
  const Release release = before(board, Operation::slots);
  EXPECT_EQ(release.answer, Release::Answer::changed);
  EXPECT_NEAR(*change(release, "highest floor of the slots, z")->measured, 6.25 - 1.95, close);
  EXPECT_NEAR(*change(release, "highest floor of the slots, z")->planned, 6.35 - 1.95, close);
  EXPECT_FALSE(change(release, "slot depth"));
}

TEST(Release, IsRefusedWhereTheBoardCannotBeMade) {
  Board board = good_board();
  board.measured.blank_thickness = 6.2;
  const Release release = before(board, Operation::pockets);
  EXPECT_EQ(release.answer, Release::Answer::refused);
  ASSERT_FALSE(release.problems.empty());
  EXPECT_EQ(release.problems.front().code, FaultCode::blank_too_thin);
  EXPECT_NE(release.reason, "");
}

TEST(Release, IsRefusedWhereAFindingSaysStop) {
  Board board = good_board();
  for (int fret = 1; fret <= 22; ++fret) board.measured.slots.push_back(647.7 * (1 - std::exp2(-fret / 12.0)));
  board.measured.slots[11] += 2;  // 2 of 323.85 mm are 10.7 cents
  const Release release = before(board, Operation::outline);
  EXPECT_EQ(release.answer, Release::Answer::refused);
  ASSERT_EQ(release.stops.size(), 1U);
  EXPECT_EQ(release.stops.front().name, "slot-out-of-tune");
}

TEST(Release, IsRefusedOutOfTurn) {
  Board board = good_board();
  board.measured.done = {Operation::pockets};
  EXPECT_EQ(before(board, Operation::pockets).answer, Release::Answer::refused);
  EXPECT_EQ(before(board, Operation::radius).answer, Release::Answer::as_planned);
  EXPECT_EQ(before(board, Operation::slots).answer, Release::Answer::refused) << "the radius comes before";
}

TEST(Release, IsOneLineAndOneObject) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  const Release release = before(board, Operation::radius);
  const std::string text = release_text(release, Units::mm);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 1);
  const auto json = release_json(release);
  EXPECT_EQ(json["operation"], "radius");
  EXPECT_EQ(json["answer"], "changed");
  EXPECT_NEAR(json["changes"][0]["measured"].get<double>(), 6.9, close);
  EXPECT_TRUE(json["findings"].is_array());
}

TEST(CutNumbers, AreEachThereOnce) {
  const auto ready = std::get<PreparedBoard>(prepare(good_board()));
  for (const Operation each : good_board().order) {
    std::vector<std::string> names;
    for (const CutNumber& number : cut_numbers(ready, each)) names.push_back(number.what);
    std::sort(names.begin(), names.end());
    EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
  }
}

}  // namespace
}  // namespace sagitta::test
