#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "export/CommandLine.hpp"

/// The tables of the hand-off folder, as a spreadsheet and another program read them.

namespace sagitta::test {
namespace {

using nlohmann::json;

struct Tables {
  ScratchFolder scratch;

  explicit Tables(const std::string& preset) {
    const Outcome made =
        sagitta("export '" + preset_path(preset).string() + "' --only csv --to '" + (scratch / "out").string() + "'");
    if (made.code != 0) throw std::runtime_error(made.err);
  }
  json table(const std::string& name) const { return json::parse(bytes_of(scratch / ("out/" + name + ".json"))); }
  /// Rows of a CSV file, read by Python's csv module, as lists of text.
  json rows(const std::string& name) const {
    return json::parse(
        shell("/usr/bin/python3 -c 'import csv, json, sys; print(json.dumps(list(csv.reader(open(sys.argv[1])))))' '" +
              (scratch / ("out/" + name + ".csv")).string() + "'")
            .out);
  }
};

double number(const json& text) { return std::stod(text.get<std::string>()); }

TEST(Tables, FretTableIsTheOneThatIsPrinted) {
  const Tables tables("heron-six");
  const std::string board = "'" + preset_path("heron-six").string() + "'";
  EXPECT_EQ(bytes_of(tables.scratch / "out/frets.csv"), sagitta("frets --csv " + board).out);
  EXPECT_EQ(tables.table("frets"), json::parse(sagitta("frets --json " + board).out));
}

// A fret square to the centre line of width w on a radius R: arc 2 R asin(w / 2R), bent to R (Machinery's Handbook,
// 31st ed., p. 79: c = 2 sqrt(h(2r-h)), so w is the chord), and 2 mm more at each end. The preset: 648 mm, widths of
// the strings' spread 35.5 to 52 mm and 3.5 mm at each side, R from 254 to 406 mm at the heel end 10 mm past fret 22.
TEST(Tables, WireListHasTheArcsAndTheOverhang) {
  const Tables tables("heron-six");
  const json wire = tables.table("wire"), rows = tables.rows("wire");
  ASSERT_EQ(wire["pieces"].size(), 22U);
  ASSERT_EQ(rows.size(), 24U) << "heading, frets, total";
  const double heel = 648 * (1 - std::exp2(-22 / 12.0)) + 10;
  double total = 0;
  for (int n = 1; n <= 22; ++n) {
    const double x = 648 * (1 - std::exp2(-n / 12.0));
    const double w = 35.5 + (52 - 35.5) * x / 648 + 7, radius = 254 + (406 - 254) * x / heel;
    const double cut = 2 * radius * std::asin(w / 2 / radius) + 4;
    const json& piece = wire["pieces"][n - 1];
    EXPECT_EQ(piece["fret"], n);
    EXPECT_NEAR(piece["straight"], w, 1e-6) << n;
    EXPECT_NEAR(piece["cut"], cut, 1e-6) << n;
    EXPECT_NEAR(piece["bend_radius"], radius, 1e-6) << n;
    EXPECT_NEAR(number(rows[n][3]), cut, 0.00006) << n;
    total += cut;
  }
  EXPECT_NEAR(wire["total"], total, 22e-6) << "22 lengths, each to 1e-6";
  EXPECT_EQ(rows[23][0], "total");
  EXPECT_NEAR(number(rows[23][3]), total, 0.00006);
}

// Dots of 6 mm at 3 5 7 9 15 17 19 21 and two at 12; the middle of space n is midway between frets n - 1 and n.
TEST(Tables, PieceListCountsTheDots) {
  const Tables tables("heron-six");
  const json pieces = tables.table("pieces"), rows = tables.rows("pieces");
  const std::vector<int> spaces = {3, 5, 7, 9, 12, 12, 15, 17, 19, 21};
  ASSERT_EQ(pieces.size(), spaces.size());
  ASSERT_EQ(rows.size(), spaces.size() + 1);
  for (std::size_t i = 0; i < spaces.size(); ++i) {
    const int n = spaces[i];
    const double x = 648 * (2 - std::exp2(-n / 12.0) - std::exp2(-(n - 1) / 12.0)) / 2;
    EXPECT_EQ(pieces[i]["number"], i + 1);
    EXPECT_EQ(pieces[i]["fret"], n);
    EXPECT_EQ(pieces[i]["material"], "shell");
    EXPECT_NEAR(pieces[i]["x"], x, 1e-6);
    EXPECT_NEAR(pieces[i]["along"], 6, 1e-6);
    EXPECT_NEAR(pieces[i]["pocket_depth"], 1.5, 1e-9);
    EXPECT_NEAR(pieces[i]["thickness"], 1.7, 1e-9) << "BOARD-FILE: depth + 0.2 mm";
    EXPECT_NEAR(number(rows[i + 1][4]), x, 0.00006);
  }
  std::set<std::string> names;
  for (const json& piece : pieces) names.insert(piece["piece"]);
  EXPECT_EQ(names.size(), 10U) << "each its own";
  EXPECT_EQ(*names.begin(), "shell-01");
  EXPECT_EQ(*names.rbegin(), "shell-10");
  EXPECT_NEAR(pieces[4]["y"], -13, 1e-6);
  EXPECT_NEAR(pieces[5]["y"], 13, 1e-6);
}

// The parlour board: binding 1.5 and two lines of 0.5 on each edge, 4 high, from end to end.
TEST(Tables, StripsOfBindingAndLines) {
  const Tables tables("wren-parlour");
  const json strips = tables.table("strips");
  ASSERT_EQ(strips.size(), 6U);
  EXPECT_EQ(strips[0]["strip"], "binding");
  EXPECT_TRUE(strips[0]["material"].is_null());
  EXPECT_EQ(strips[1]["material"], "maple");
  EXPECT_EQ(strips[2]["thickness"], 0.5);
  EXPECT_EQ(strips[2]["height"], 4);
  // 624 (1 - 2^(-19/12)) + 10 and 5 + 3 behind the nut, along edges that lean by (w1 - w0) / 2 from 45.5 at the nut.
  const double end = 624 * (1 - std::exp2(-19 / 12.0)) + 10, slope = (57 - 37.5) / 624 / 2;
  for (const json& strip : strips) EXPECT_NEAR(strip["length"].get<double>(), (end + 8) * std::hypot(1, slope), 1e-6);
  EXPECT_EQ(tables.rows("strips").size(), 7U);
}

}  // namespace
}  // namespace sagitta::test
