// A short fixed range of the campaign, and that its log can be trusted: resumed, crashed, endless and failing boards.

#include "campaign/Campaign.hpp"

#include <gtest/gtest.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "board/BoardFile.hpp"

namespace sagitta::campaign {
namespace {

namespace fs = std::filesystem;
using random_boards::Space;
using random_boards::Verdict;

class Campaign : public testing::Test {
 protected:
  ~Campaign() override { fs::remove_all(folder); }
  fs::path log(const Range& range) const {
    return folder / (std::string(name(range.space)) + "-" + std::to_string(range.first) + "-" +
                     std::to_string(range.count) + ".log");
  }
  fs::path folder = fs::temp_directory_path() / ("sagitta-campaign-" + std::to_string(::getpid()));
  std::ostringstream out;
};

Verdict sound(std::uint64_t, const Board&, const std::vector<Stage>&) {
  Verdict verdict;
  verdict.stages = 5;
  return verdict;
}

/// Numbers from the environment run other ranges: SAGITTA_CAMPAIGN_FIRST, SAGITTA_CAMPAIGN_BOARDS,
/// SAGITTA_CAMPAIGN_KINDS.
std::uint64_t number_from(const char* variable, std::uint64_t otherwise) {
  const char* text = std::getenv(variable);
  return text ? std::strtoull(text, nullptr, 10) : otherwise;
}

TEST_F(Campaign, NearBoardsAreSound) {
  const Range range{Space::near, number_from("SAGITTA_CAMPAIGN_FIRST", 1),
                    static_cast<int>(number_from("SAGITTA_CAMPAIGN_BOARDS", 40))};
  const auto records = run(range, folder, std::cout);
  print(records, std::cout);
  ASSERT_EQ(records.size(), static_cast<std::size_t>(range.count));
  for (const Record& record : records) EXPECT_EQ(record.outcome, Outcome::sound) << "board " << record.number;
}

/// All keys that shape the wood: scallops, worked edges, ends, tongues, courses, cuts of one's own.
TEST_F(Campaign, BoardsOfAllKindsAreSound) {
  const Range range{Space::kinds, number_from("SAGITTA_CAMPAIGN_FIRST", 9),
                    static_cast<int>(number_from("SAGITTA_CAMPAIGN_KINDS", 6))};
  const auto records = run(range, folder, std::cout);
  print(records, std::cout);
  ASSERT_EQ(records.size(), static_cast<std::size_t>(range.count));
  for (const Record& record : records) EXPECT_EQ(record.outcome, Outcome::sound) << "board " << record.number;
}

TEST_F(Campaign, GoesOnWhereItWasStopped) {
  const Range range{Space::near, 100, 6};
  const auto records = run(range, folder, out, {.judge = sound});
  std::ifstream file(log(range));
  const std::string whole{std::istreambuf_iterator<char>(file), {}};
  const std::size_t third = whole.find('\n', whole.find('\n') + 1) + 1;
  std::ofstream(log(range)) << whole.substr(0, third + 4);  // two lines and the beginning of a third
  const auto from_third_on = [](std::uint64_t number, const Board& board, const std::vector<Stage>& stages) {
    Verdict verdict = sound(number, board, stages);
    verdict.stages = 7;
    return verdict;
  };
  const auto resumed = run(range, folder, out, {.judge = from_third_on});
  ASSERT_EQ(resumed.size(), 6u);
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_EQ(resumed[i].number, 100 + i);
    EXPECT_EQ(resumed[i].stages, i < 2 ? 5 : 7);
  }
}

TEST_F(Campaign, BoardsThatEndTheProcessAreRecorded) {
  const auto judge = [](std::uint64_t number, const Board& board, const std::vector<Stage>& stages) {
    if (number == 3) std::raise(SIGKILL);
    if (number == 4) std::_Exit(9);
    for (volatile bool endless = number == 5; endless;) {
    }
    return sound(number, board, stages);
  };
  const auto records = run({Space::near, 1, 6}, folder, out, {.judge = judge, .most_seconds = 1});
  ASSERT_EQ(records.size(), 6u);
  for (const Record& record : records)
    EXPECT_EQ(record.outcome, record.number >= 3 && record.number <= 5 ? Outcome::died : Outcome::sound);
  for (const char* kept : {"near-3.toml", "near-4.toml", "near-5.toml"})
    EXPECT_TRUE(read_board((folder / kept).string()).sound()) << kept;
}

TEST_F(Campaign, WhatFailsIsMadeSmallAndKept) {
  const auto fails_with_pins = [](std::uint64_t number, const Board& board, const std::vector<Stage>& stages) {
    Verdict verdict = sound(number, board, stages);
    if (!board.pins) return verdict;
    verdict.trouble = "board: a pin\n";
    verdict.failed = {Stage::board};
    return verdict;
  };
  const auto records = run({Space::near, 1, 12}, folder, out, {.judge = fails_with_pins});
  int failed = 0;
  for (const Record& record : records) {
    const auto drawn = random_boards::random_board(record.number, Space::near).board;
    EXPECT_EQ(record.outcome, drawn.pins ? Outcome::unsound : Outcome::sound);
    if (!drawn.pins) continue;
    ++failed;
    const BoardFile kept = read_board((folder / ("near-" + std::to_string(record.number) + ".toml")).string());
    ASSERT_TRUE(kept.sound());
    ASSERT_TRUE(kept.board.pins);
    EXPECT_EQ(kept.board.pins->at.size(), 1u);
    EXPECT_TRUE(kept.board.inlays.empty());
  }
  EXPECT_GT(failed, 0);
}

TEST(CampaignRecord, ComesBackFromItsLine) {
  const Record record{17, Outcome::threw, 6, 0.125, 3e-10, {{"pins.at", 2}, {"side_dots.frets", 1}}};
  EXPECT_EQ(record_from(line(record)), record);
  EXPECT_EQ(record_from("17 fine 6 0.1 0"), std::nullopt);
  EXPECT_EQ(record_from("17 sound 6"), std::nullopt);
}

TEST(CampaignRecord, NamesTheGravestOutcome) {
  Verdict verdict;
  EXPECT_EQ(record_of(1, verdict).outcome, Outcome::sound);
  verdict.refusals = {{Stage::board, "pins.at", true}, {Stage::finished, "pins.at", true}};
  EXPECT_EQ(record_of(1, verdict).outcome, Outcome::sound);
  EXPECT_EQ(record_of(1, verdict).refusals.at("pins.at"), 2);
  verdict.seconds = patience + 1;
  EXPECT_EQ(record_of(1, verdict).outcome, Outcome::slow);
  verdict.trouble = "board: open";
  EXPECT_EQ(record_of(1, verdict).outcome, Outcome::unsound);
  verdict.threw = true;
  EXPECT_EQ(record_of(1, verdict).outcome, Outcome::threw);
}

}  // namespace
}  // namespace sagitta::campaign
