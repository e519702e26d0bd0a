// Each fill colour is a material with a sheet; the rule is the board file's own.

#include "Drawing.hpp"
#include "artwork/Colour.hpp"
#include "artwork/ColourMaterials.hpp"

namespace sagitta::test {
namespace {

Artwork two_colours() {
  return good(svg_artwork(page("<rect width='9' height='9' fill='#C02020'/><circle cx='50' cy='50' r='9' fill='teal'/>"
                               "<circle cx='80' cy='80' r='9' fill='#c02020'/>")),
              "two colours");
}

Board board(std::map<std::string, std::string> colours, std::vector<std::string> sheets = {}) {
  Board board;
  board.inlays.resize(2);
  board.inlays[1].shape = InlayShape::artwork;
  board.inlays[1].colours = std::move(colours);
  for (const std::string& material : sheets) board.sheets.push_back({material, 100, 50, 1.5, Pattern::none});
  return board;
}

TEST(Colours, AreListedOnceInOrder) {
  EXPECT_EQ(colours_of(two_colours()), (std::vector<std::string>{"#c02020", "#008080"}));
}

TEST(Colours, EachNamesItsMaterial) {
  const Board good = board({{"#C02020", "bone"}, {"teal", "shell"}}, {"bone", "shell"});
  EXPECT_TRUE(material_faults(good, 1, two_colours()).empty());
  EXPECT_EQ(material_of(good.inlays[1], "#c02020"), "bone");
  EXPECT_EQ(material_of(good.inlays[1], "#008080"), "shell");
}

TEST(Colours, OneColourNeedsNoList) {
  const Artwork art = good(svg_artwork(page("<circle r='9'/>")), "one colour");
  EXPECT_TRUE(material_faults(board({}, {"shell"}), 1, art).empty());
  EXPECT_EQ(material_of(board({}).inlays[1], "#000000"), "shell");
}

TEST(Colours, AMissingOneIsSaidWithAllThatWereFound) {
  const Faults faults = material_faults(board({{"#c02020", "bone"}}), 1, two_colours());
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].key, "inlays[1].colours");
  EXPECT_EQ(faults[0].code, FaultCode::no_material);
  for (const char* colour : {"#c02020", "#008080"})
    EXPECT_NE(faults[0].message.find(colour), std::string::npos) << faults[0].message;
}

TEST(Colours, OneThatIsNotDrawnIsSaid) {
  const Faults faults =
      material_faults(board({{"#c02020", "bone"}, {"teal", "shell"}, {"#fff", "bone"}}), 1, two_colours());
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].code, FaultCode::no_such_colour);
  EXPECT_NE(faults[0].message.find("#fff"), std::string::npos) << faults[0].message;
}

TEST(Colours, AMaterialWithoutASheetIsSaidWhereSheetsAreGiven) {
  const Faults faults = material_faults(board({{"#c02020", "bone"}, {"teal", "shell"}}, {"bone"}), 1, two_colours());
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].code, FaultCode::no_sheet);
  for (const char* missing : {"#008080", "shell"})
    EXPECT_NE(faults[0].message.find(missing), std::string::npos) << faults[0].message;
  EXPECT_TRUE(material_faults(board({{"#c02020", "bone"}, {"teal", "shell"}}), 1, two_colours()).empty());
}

// SVG 1.1, section 4.4 (M): a few of the names, among them the first and the last.
TEST(Colours, HaveTheNamesOfTheSpecification) {
  const std::pair<const char*, const char*> some[] = {{"aliceblue", "#f0f8ff"}, {"yellowgreen", "#9acd32"},
                                                      {"grey", "#808080"},      {"green", "#008000"},
                                                      {"peru", "#cd853f"},      {"lime", "#00ff00"}};
  for (const auto& [name, code] : some) EXPECT_EQ(read_colour(name).value_or(""), code) << name;
  for (const char* name : {"", "#12", "#12345g", "rgb(1,2", "heron"}) EXPECT_FALSE(read_colour(name)) << name;
}

}  // namespace
}  // namespace sagitta::test
