// Tables of a board whose heel end parts a slot, and of one with a tongue: places by hand, frets at 200, 300, 350, 375.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "frets/WireList.hpp"
#include "prepared/PreparedBoard.hpp"
#include "tables/FretTable.hpp"
#include "tables/WireTable.hpp"

namespace sagitta::test {
namespace {

PreparedBoard family(const std::string& name) {
  auto made = prepare(read_board(places::tests() + "/cases/families/" + name + ".toml").board);
  if (const auto* faults = std::get_if<Faults>(&made)) throw std::runtime_error(faults->front().message);
  return std::get<PreparedBoard>(std::move(made));
}

TEST(PartsInTables, AFretIsListedOnceWithItsPieces) {
  // Left-handed, the end x = 365 - y: of slot 4 stays what lies beyond y = -10, of slot 3 beyond y = 15; the edge at
  // x lies 24 + 0.015 x + 3 from y = 0.
  const auto table = fret_json(family("f51-slant-cuts").layout());
  ASSERT_EQ(table.size(), 5u);
  EXPECT_FALSE(table[2].contains("pieces"));
  ASSERT_EQ(table[4]["pieces"].size(), 1u);
  EXPECT_NEAR(table[4]["pieces"][0][0][0], 375, 1e-9);
  EXPECT_NEAR(table[4]["pieces"][0][0][1], -10, 1e-9);
  EXPECT_NEAR(table[4]["pieces"][0][1][1], -(24 + 0.015 * 375 + 3), 1e-9);
  EXPECT_NEAR(table[3]["pieces"][0][0][1], 15, 1e-9);
}

TEST(PartsInTables, TheWireListHasAColumnForParts) {
  const auto list = wire_list(family("f51-slant-cuts"));
  EXPECT_EQ(wire_csv(list).substr(0, 10), "fret,part,");
  const auto json = wire_json(list);
  ASSERT_EQ(json["pieces"].size(), 4u);
  EXPECT_FALSE(json["pieces"][1].contains("part"));
  EXPECT_EQ(json["pieces"][3]["part"], 1);
  EXPECT_NEAR(json["pieces"][3]["straight"], 24 + 0.015 * 375 + 3 - 10, 1e-9);
}

TEST(PartsInTables, ATonguesFretGivesItsSlotsEndAsBass) {
  const auto table = fret_json(family("f80-tongue").layout());
  ASSERT_EQ(table.size(), 5u);
  // The third of four strings at x = 375, spread 48 + 12 * 375 / 400 = 59.25: y = 59.25 / 6; its margin is 3.
  EXPECT_EQ(table[4]["fret"], 4);
  EXPECT_NEAR(table[4]["bass"][1], 59.25 / 6 - 3, 1e-9);
  EXPECT_NEAR(table[4]["treble"][1], 59.25 / 2, 1e-9);
  EXPECT_NEAR(table[4]["from_nut"], 375, 1e-9);
}

}  // namespace
}  // namespace sagitta::test
