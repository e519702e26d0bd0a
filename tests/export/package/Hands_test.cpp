// BOARD-FILE: a left-handed board is the mirror in y of the same file; so in every file that holds a solid.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "export/CommandLine.hpp"

namespace sagitta::test {
namespace {

using nlohmann::json;

json manifest_of(const ScratchFolder& scratch, const std::string& hand) {
  const fs::path board = scratch / (hand + ".toml"), folder = scratch / hand;
  // A board whose two edges differ: blocks shifted off the middle, and side dots in the player's edge.
  write_file(board, "hand = \"" + hand + "\"\n" + bytes_of(preset_path("heron-six")) +
                        "\n[[inlays]]\nshape = \"block\"\nfrets = [1]\nalong = 8\nacross = 10\nshift_across = 7\n"
                        "turn = 20\ndepth = 1.2\n\n[side_dots]\nfrets = [2]\n");
  const Outcome made =
      sagitta("export '" + board.string() + "' --to '" + folder.string() + "' --only step,stl,3mf --stage board");
  EXPECT_EQ(made.code, 0) << made.err;
  return json::parse(bytes_of(folder / "manifest.json"));
}

TEST(Hands, MirrorEachOtherInEveryFormatWithSolids) {
  const ScratchFolder scratch;
  const json right = manifest_of(scratch, "right"), left = manifest_of(scratch, "left");
  std::set<std::string> kinds;
  ASSERT_EQ(right["files"].size(), left["files"].size());
  for (std::size_t i = 0; i < right["files"].size(); ++i) {
    const json &one = right["files"][i], &other = left["files"][i];
    kinds.insert(one["kind"].get<std::string>());
    for (std::size_t b = 0; b < one["bodies"].size(); ++b) {
      const json &a = one["bodies"][b], &m = other["bodies"][b];
      SCOPED_TRACE(one["file"].get<std::string>());
      // Triangles lie within the deviation of the exact skin, whose halves need not be cut up alike.
      const double area = a["area"].get<double>();
      const double skin = one["deviation"].is_number() ? one["deviation"].get<double>() * area : 0;
      EXPECT_NEAR(m["volume"].get<double>(), a["volume"].get<double>(), 1e-9 * area + 2 * skin);
      if (skin == 0) {
        EXPECT_NEAR(m["area"].get<double>() / area, 1, 1e-9);
      }
      EXPECT_NEAR(m["bbox"][0][1].get<double>(), -a["bbox"][1][1].get<double>(), 1e-4);
      EXPECT_NEAR(m["bbox"][1][1].get<double>(), -a["bbox"][0][1].get<double>(), 1e-4);
      EXPECT_NEAR(m["bbox"][0][0].get<double>(), a["bbox"][0][0].get<double>(), 1e-4);
    }
  }
  EXPECT_EQ(kinds, (std::set<std::string>{"step", "stl", "3mf"}));
  // And it is another body: the same bytes would be the same hand.
  EXPECT_NE(bytes_of(scratch / "right/board.stl"), bytes_of(scratch / "left/board.stl"));
}

}  // namespace
}  // namespace sagitta::test
