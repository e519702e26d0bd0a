#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <set>

#include "export/CommandLine.hpp"
#include "export/PageWords.hpp"
#include "input/Presets.hpp"

/// The working drawings, as poppler reads their text and its places.

namespace sagitta::test {
namespace {

/// A preset's PDFs on one paper.
struct Printed {
  ScratchFolder scratch;
  Printed(const fs::path& board, const std::string& paper) {
    const Outcome made = sagitta("export '" + board.string() + "' --only pdf --paper " + paper + " --to '" +
                                 (scratch / "out").string() + "'");
    if (made.code != 0) throw std::runtime_error(made.err);
  }
  fs::path file(const std::string& name) const { return scratch / ("out/" + name); }
};

class PrintedOn : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Papers, PrintedOn, testing::Values("A4", "A3", "Letter", "Tabloid"));

TEST_P(PrintedOn, NoWordLeavesThePaperOrLiesOnAnother) {
  // Every board on the paper that is used most; long, short, wide, drawn and inch boards on the others.
  const std::set<std::string_view> everywhere{"dunlin-bass", "reed-tenor", "curlew-seven-fan", "wave-border",
                                              "tern-inch-left"};
  for (const Preset& preset : presets()) {
    if (GetParam() != "A4" && !everywhere.contains(preset.name)) continue;
    const Printed printed(preset_path(std::string(preset.name)), GetParam());
    for (const char* name :
         {"shop-drawing.pdf", "inlay-drawing.pdf", "template.pdf", "setups/whole-job-01/setup.pdf", "job-sheet.pdf"}) {
      if (!fs::exists(printed.file(name))) continue;
      const std::vector<Page> pages = pages_of(printed.file(name));
      ASSERT_FALSE(pages.empty()) << preset.name << " " << name;
      for (const Page& page : pages) {
        EXPECT_GT(page.words.size(), 10U);
        expect_readable(page, std::string(preset.name) + " " + name);
      }
    }
  }
}

/// The figures of one row over the drawing's columns.
std::vector<double> row_of(const std::string& text, const std::string& name) {
  std::vector<double> figures;
  for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + 1))
    figures.push_back(std::atof(text.c_str() + at + name.size()));
  return figures;
}

// TRADE, edge thickness: 6.35 mm thick, R 9.5 in: 5.40 at 1-11/16 in, 4.65 at 57.15 mm; Machinery's Handbook, 31st ed.,
// p. 79: h = r - 1/2 sqrt(4 r^2 - c^2).
TEST(ShopDrawing, SectionsCarryTheEdgesThickness) {
  const ScratchFolder scratch;
  std::string text = bytes_of(preset_path("heron-six"));
  const auto change = [&](const std::string& from, const std::string& to) {
    text.replace(text.find(from), from.size(), to);
  };
  change("thickness = 6.3 ", "thickness = 6.35 ");
  change("edge_margin = 3.5", "nut_width = 42.8625\nheel_width = 57.15");
  change("\"compound\"", "\"single\"");
  change("radius_at_nut = 254", "radius_at_nut = 241.3");
  change("radius_at_heel = 406", "");
  write_file(scratch / "board.toml", text);
  const Printed printed(scratch / "board.toml", "A4");
  const std::string page = shell("pdftotext -layout '" + printed.file("shop-drawing.pdf").string() + "' -").out;
  const std::vector<double> edge = row_of(page, "Thickness at the edge"), radius = row_of(page, "Radius");
  ASSERT_EQ(edge.size(), 3U) << page;
  EXPECT_NEAR(edge[0], 5.40, 0.005001);
  EXPECT_NEAR(edge[2], 4.65, 0.005001);
  EXPECT_EQ(radius, (std::vector<double>{241.3, 241.3, 241.3}));
  const std::vector<double> depth = row_of(page, "Slot depth at its ends"),
                            left = row_of(page, "Left below, at the ends");
  EXPECT_EQ(depth, (std::vector<double>{2.05, 2.05, 2.05})) << "tang 1.7 and 0.35 (BOARD-FILE)";
  EXPECT_NEAR(left[2], 4.65 - 2.05, 0.005001);
}

/// Words of the page that read as this number.
std::ptrdiff_t times(const Page& page, const std::string& number) {
  return std::ranges::count(page.words, number, &Word::text);
}

std::string decimals(double value, int places) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", places, value);
  return text;
}

// d(n) = L (1 - 2^(-n/12)); 648 mm and 22 frets on heron-six, 24 3/4 in and 22 on tern-inch-left.
TEST(ShopDrawing, ListsEveryFretsDistanceFromTheNutInTheBoardsUnits) {
  for (const char* paper : {"A4", "A3", "Letter", "Tabloid"}) {
    const std::vector<Page> pages = pages_of(Printed(preset_path("heron-six"), paper).file("shop-drawing.pdf"));
    ASSERT_EQ(pages.size(), 1U);
    for (int n = 1; n <= 22; ++n)
      EXPECT_GE(times(pages[0], decimals(648 * (1 - std::exp2(-n / 12.0)), 2)), 1) << paper << ", fret " << n;
  }
  const Printed inches(preset_path("tern-inch-left"), "Letter");
  const std::vector<Page> pages = pages_of(inches.file("shop-drawing.pdf"));
  for (int n = 1; n <= 22; ++n)
    EXPECT_GE(times(pages.at(0), decimals(24.75 * (1 - std::exp2(-n / 12.0)), 3)), 1) << "fret " << n;
}

// Width 42.5 at the nut and 59 - .. at the saddle: 42.5 + 16.5 x / 648; x = 324 at fret 12, 648 (1 - 2^(-14/12)) at 14.
TEST(ShopDrawing, DimensionsTheWidthsAtFretTwelveAndAtTheJoint) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", bytes_of(preset_path("heron-six")) + "\n[neck]\njoint_fret = 14\n");
  const Printed printed(scratch / "board.toml", "A4");
  const std::string page = shell("pdftotext -raw '" + printed.file("shop-drawing.pdf").string() + "' -").out;
  const auto width = [&](const std::string& words) {
    const std::vector<double> figures = row_of(page, words);
    return figures.size() == 1 ? figures[0] : std::nan("");
  };
  EXPECT_NEAR(width("fret 12: "), 42.5 + 16.5 / 2, 0.005001);
  EXPECT_NEAR(width("joint, fret 14: "), 42.5 + 16.5 * (1 - std::exp2(-14 / 12.0)), 0.005001);
}

// A level floor 2.05 mm below the middle is shallower at the edges by the drop: TRADE rank 6.
TEST(ShopDrawing, LevelSlotsAreShallowAtTheEdges) {
  const ScratchFolder scratch;
  std::string text = bytes_of(preset_path("heron-six"));
  text.replace(text.find("floor = \"arc\""), 13, "floor = \"level\"");
  write_file(scratch / "board.toml", text);
  const Printed printed(scratch / "board.toml", "A4");
  const std::string page = shell("pdftotext -layout '" + printed.file("shop-drawing.pdf").string() + "' -").out;
  const std::vector<double> depth = row_of(page, "Slot depth at its ends");
  ASSERT_EQ(depth.size(), 3U);
  const double drop = 254 - std::sqrt(254 * 254 - 21.25 * 21.25);
  EXPECT_NEAR(depth[0], 2.05 - drop, 0.005001);
  EXPECT_EQ(row_of(page, "Left below, at the ends")[0], 4.25);
}

TEST(ShopDrawing, PlanCarriesTheMainDimensions) {
  const Printed printed(preset_path("heron-six"), "A4");
  const std::string page = shell("pdftotext -layout '" + printed.file("shop-drawing.pdf").string() + "' -").out;
  // 648 (1 - 2^(-22/12)) to the last fret, 10 mm past it, 7 mm behind the nut; 35.5 + 7 mm wide.
  for (const char* figure : {"466.16", "483.16", " 10\n", "42.5", "1:2"})
    EXPECT_NE(page.find(figure), std::string::npos) << figure << "\n" << page;
}

// The main board ends at 630 (1 - 2^(-20/12)) + 5.5; the tongue, in the middle of the space beyond fret 24, at
// 630 (1 - (2^(-24/12) + 2^(-25/12)) / 2).
TEST(ShopDrawing, DimensionsTheTonguesEnd) {
  const Printed printed(preset_path("whimbrel-tongue"), "A4");
  const std::string page = shell("pdftotext -layout '" + printed.file("shop-drawing.pdf").string() + "' -").out;
  const double main = 630 * (1 - std::exp2(-20 / 12.0)) + 5.5;
  const double all = 630 * (1 - (std::exp2(-2) + std::exp2(-25 / 12.0)) / 2);
  EXPECT_NE(page.find(" " + decimals(all - main, 2) + "\n"), std::string::npos) << page;
  EXPECT_NE(page.find(" " + decimals(all, 2) + "\n"), std::string::npos) << page;
}

// Spreads 35.5 at the nut and 52 at the saddle, six strings with equal centres.
TEST(GaugePage, ListsTheStringsPlaces) {
  const Printed printed(preset_path("heron-six"), "A4");
  const std::string page = shell("pdftotext -layout '" + printed.file("gauges.pdf").string() + "' -").out;
  for (const int string : {2, 5})
    for (const double spread : {35.5, 52.0})
      EXPECT_NE(page.find(" " + decimals(spread * ((string - 1) / 5.0 - 0.5), 2)), std::string::npos) << page;
}

TEST(InlayDrawing, NumbersEveryPieceOnceInThePlanAndOnceInTheList) {
  const Printed printed(preset_path("heron-six"), "A4");
  const std::vector<Page> pages = pages_of(printed.file("inlay-drawing.pdf"));
  ASSERT_EQ(pages.size(), 1U);
  for (int piece = 1; piece <= 10; ++piece) {
    char name[16];
    std::snprintf(name, sizeof name, "shell-%02d", piece);
    const auto count = [&](const std::string& text) {
      return std::count_if(pages[0].words.begin(), pages[0].words.end(), [&](const Word& w) { return w.text == text; });
    };
    EXPECT_EQ(count(name), 1) << name;
    EXPECT_GE(count(std::to_string(piece)), 2) << piece;
  }
}

TEST(ShopDrawing, FontsAreInTheFile) {
  const Printed printed(preset_path("heron-six"), "A4");
  for (const char* name : {"shop-drawing.pdf", "inlay-drawing.pdf", "template.pdf"}) {
    const std::string fonts = shell("pdffonts '" + printed.file(name).string() + "'").out;
    EXPECT_NE(fonts.find("Inter-Regular"), std::string::npos) << fonts;
    EXPECT_NE(fonts.find("Inter-SemiBold"), std::string::npos) << fonts;
    EXPECT_EQ(fonts.find(" no  "), std::string::npos) << "all embedded: " << fonts;
  }
}

}  // namespace
}  // namespace sagitta::test
