#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "export/CommandLine.hpp"

/// `sagitta compare`, and `sagitta export` of a manifest, from the command line.

namespace sagitta::test {
namespace {

using nlohmann::json;

class Compare : public testing::Test {
 protected:
  ScratchFolder scratch;

  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }
  /// heron-six with the given changes, "from" to "to".
  std::string board(const std::string& name, const std::vector<std::pair<std::string, std::string>>& changes) const {
    std::string text = bytes_of(preset_path("heron-six"));
    for (const auto& [from, to] : changes) text.replace(text.find(from), from.size(), to);
    write_file(scratch / name, text);
    return at(name);
  }
  json compared(const std::string& a, const std::string& b) const {
    const Outcome outcome = sagitta("compare --json " + a + " " + b);
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    return json::parse(outcome.out);
  }
};

TEST_F(Compare, FindsNothingBetweenABoardAndItself) {
  const std::string a = board("a.toml", {});
  EXPECT_EQ(compared(a, a)["keys"], json::array());
  EXPECT_EQ(sagitta("compare " + a + " " + a).out, "the two boards are the same\n");
}

// 0.05 in more of 24.75 move fret 22 by 0.05 (1 - 2^(-22/12)) in.
TEST_F(Compare, TellsABoardInInchesInInches) {
  const std::string text = bytes_of(preset_path("tern-inch-left"));
  std::string longer = text;
  longer.replace(longer.find("24 3/4 in"), 9, "24.8 in");
  write_file(scratch / "a.toml", text);
  write_file(scratch / "b.toml", longer);
  const std::string out = sagitta("compare " + at("a.toml") + " " + at("b.toml")).out;
  const std::size_t found = out.find("slots up to ");
  ASSERT_NE(found, std::string::npos) << out;
  EXPECT_NEAR(std::stod(out.substr(found + 12)), 0.05 * (1 - std::exp2(-22 / 12.0)), 0.000006);
  EXPECT_EQ(out.find(" mm"), std::string::npos) << out;
}

// A compound surface needs its second radius: that key alone makes no board, and its effect is left open.
TEST_F(Compare, GivesNoEffectOfAKeyThatAloneMakesNoBoard) {
  const std::string a = board("a.toml", {});
  const std::string b =
      board("b.toml", {{"profile = \"compound\"", "profile = \"string-line\""}, {"radius_at_heel = 406", ""}});
  const json found = compared(a, b);
  int seen = 0;
  for (const json& key : found["keys"]) {
    if (key["key"] != "surface.radius_at_heel") continue;
    EXPECT_TRUE(key["effect"].is_null()) << key;
    ++seen;
  }
  EXPECT_EQ(seen, 1);
}

// d(n) = L (1 - 2^(-n/12)): 1 mm more scale moves fret 22, where its middle crosses the centre line, by 0.7194 mm; the
// edges there move apart by less.
TEST_F(Compare, TellsHowFarSlotsMove) {
  const json found = compared(board("a.toml", {}), board("b.toml", {{"length = 648 ", "length = 649 "}}));
  ASSERT_EQ(found["keys"].size(), 1U);
  EXPECT_EQ(found["keys"][0]["key"], "scale.length");
  EXPECT_EQ(found["keys"][0]["a"], "648");
  EXPECT_EQ(found["keys"][0]["b"], "649");
  EXPECT_NEAR(found["keys"][0]["effect"]["slot"], 1 - std::exp2(-22.0 / 12), 2e-3);
  EXPECT_GE(found["keys"][0]["effect"]["slot"], 1 - std::exp2(-22.0 / 12) - 1e-9);
  EXPECT_EQ(found["effect"], found["keys"][0]["effect"]);
}

// 0.2 mm deeper pockets and 0.25 mm more margin are just that; ten pockets of 6.1 mm lose 0.2 mm of wood each.
TEST_F(Compare, TellsDepthsAndEdgesApart) {
  const json found =
      compared(board("a.toml", {}),
               board("b.toml", {{"depth = 1.5 ", "depth = 1.7 "}, {"edge_margin = 3.5", "edge_margin = 3.75"}}));
  ASSERT_EQ(found["keys"].size(), 2U);
  const json &edge = found["keys"][0], &depth = found["keys"][1];
  EXPECT_EQ(edge["key"], "board.edge_margin");
  EXPECT_EQ(depth["key"], "inlays[0].depth");
  EXPECT_NEAR(edge["effect"]["edge"], 0.25, 1e-4) << "square to an edge that leans by a degree";
  EXPECT_NEAR(depth["effect"]["depth"], 0.2, 1e-9);
  EXPECT_NEAR(depth["effect"]["edge"], 0, 1e-9);
  EXPECT_EQ(depth["effect"]["slot"], 0);
  // Circles of 3.05 mm with chords 0.005 mm off have 0.2 % less area, 0.13 mm3 here.
  EXPECT_NEAR(depth["effect"]["volume"], -10 * M_PI * 3.05 * 3.05 * 0.2, 0.2);
}

TEST_F(Compare, CountsWhatComesAndGoes) {
  const json found = compared(board("a.toml", {}),
                              board("b.toml", {{"frets = 22", "frets = 21"}, {"frets = [3, 5, 7", "frets = [5, 7"}}));
  EXPECT_EQ(found["effect"]["slots"], -1);
  EXPECT_EQ(found["effect"]["pockets"], -1);
}

TEST_F(Compare, RefusesWhatIsNoBoard) {
  write_file(scratch / "other.json", "{}");
  const std::string a = board("a.toml", {});
  EXPECT_EQ(sagitta("compare " + a + " " + at("other.json")).code, 2);
  EXPECT_EQ(sagitta("compare " + a + " " + at("absent.toml")).code, 2);
  EXPECT_EQ(sagitta("export " + at("other.json") + " --to " + at("out")).code, 2);
  EXPECT_FALSE(fs::exists(scratch / "out"));
}

TEST_F(Compare, AManifestMakesItsFolderAgainByteForByte) {
  const std::string options =
      " --only step,3mf,stl,csv,dxf --stage board --deviation 0.02 --step ap242 --step-units in";
  ASSERT_EQ(sagitta("export " + board("a.toml", {}) + " --to " + at("first") + options).code, 0);
  ASSERT_EQ(fs::remove(scratch / "a.toml"), true);
  const Outcome again = sagitta("export " + at("first/manifest.json") + " --to " + at("second"));
  ASSERT_EQ(again.code, 0) << again.err;
  EXPECT_EQ(shell("diff -r " + at("first") + " " + at("second")).code, 0);
  EXPECT_TRUE(fs::exists(scratch / "second/board.3mf"));
  EXPECT_FALSE(fs::exists(scratch / "second/slotted.step"));
  EXPECT_EQ(compared(at("first/manifest.json"), at("second/manifest.json"))["keys"], json::array());
  EXPECT_EQ(sagitta("export " + at("first/manifest.json") + " --only stl --to " + at("third")).code, 2)
      << "a manifest says itself what to make";
}

}  // namespace
}  // namespace sagitta::test
