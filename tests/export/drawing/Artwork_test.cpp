#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "export/CommandLine.hpp"

/// A board with artwork from the command line: where its drawings may be, what is said of their colours (BOARD-FILE).

namespace sagitta::test {
namespace {

using nlohmann::json;

constexpr const char* two_colours =
    "<svg xmlns='http://www.w3.org/2000/svg' width='12mm' height='12mm' viewBox='0 0 12 12'>"
    "<rect width='12' height='12' fill='#c02020'/><circle cx='6' cy='6' r='3' fill='#2020c0'/></svg>";

class ArtworkBoard : public testing::Test {
 protected:
  ScratchFolder scratch;

  void SetUp() override { fs::create_directory(scratch / "shop"); }

  /// A board in the folder "shop" with one artwork inlay; gives its path in quotes.
  std::string board(const std::string& file, const std::string& more) const {
    std::string text = bytes_of(preset_path("reed-tenor"));
    text += "\n[[inlays]]\nshape = \"artwork\"\nfile = \"" + file + "\"\nfrets = [4]\nalong = 8\ndepth = 1.2\n" + more +
            "\n";
    write_file(scratch / "shop/board.toml", text);
    return "'" + (scratch / "shop/board.toml").string() + "'";
  }
  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }
};

const char* both = "colours = { \"#c02020\" = \"bone\", \"#2020c0\" = \"shell\" }";

json problems_of(const std::string& arguments) {
  return json::parse(sagitta("check --json " + arguments).out)["problems"];
}

TEST_F(ArtworkBoard, IsCutAndDrawn) {
  write_file(scratch / "shop/knot.svg", two_colours);
  const std::string good = board("knot.svg", both);
  EXPECT_EQ(problems_of(good), json::array());
  ASSERT_EQ(sagitta("export " + good + " --only dxf,csv,stl --to " + at("out")).code, 0);
  const std::string list = bytes_of(scratch / "out/pieces.csv"), drawing = bytes_of(scratch / "out/board.dxf");
  EXPECT_NE(list.find("bone-01"), std::string::npos);
  for (const char* layer : {"piece-bone", "piece-shell"}) EXPECT_NE(drawing.find(layer), std::string::npos) << layer;
}

TEST_F(ArtworkBoard, AColourWithoutMaterialListsTheColoursFound) {
  write_file(scratch / "shop/knot.svg", two_colours);
  const json problems = problems_of(board("knot.svg", "colours = { \"#c02020\" = \"bone\" }"));
  ASSERT_EQ(problems.size(), 1U);
  const std::string message = problems[0]["message"];
  EXPECT_NE(message.find("no material is named for #2020c0"), std::string::npos) << message;
  EXPECT_NE(message.find("#c02020 and #2020c0"), std::string::npos) << message;
  EXPECT_GT(problems[0]["line"], 1);
}

TEST_F(ArtworkBoard, ADrawingOutsideItsFolderNeedsTheBuildersWord) {
  write_file(scratch / "knot.svg", two_colours);
  const std::string outside = board("../knot.svg", both);
  const json problems = problems_of(outside);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(std::string(problems[0]["message"]).find("outside the board's folder"), std::string::npos);
  EXPECT_NE(std::string(problems[0]["hint"]).find("--allow-outside"), std::string::npos);
  EXPECT_EQ(problems_of("--allow-outside " + outside), json::array());
  const std::string to = " --only csv --to " + at("out");
  EXPECT_EQ(sagitta("export " + outside + to).code, 2);
  EXPECT_FALSE(fs::exists(scratch / "out"));
  EXPECT_EQ(sagitta("export --allow-outside " + outside + to).code, 0);
}

TEST_F(ArtworkBoard, AMissingDrawingIsAProblemOfItsLine) {
  const json problems = problems_of(board("no-such.svg", both));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(std::string(problems[0]["message"]).find("no-such.svg"), std::string::npos);
  EXPECT_TRUE(std::string(problems[0]["key"]).ends_with("].file")) << problems[0]["key"];
}

}  // namespace
}  // namespace sagitta::test
