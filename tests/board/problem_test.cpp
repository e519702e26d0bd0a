// Every kind of problem that a board file can have: where it is found, on which key, and what it is.

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"

namespace sagitta {
namespace {

struct Case {
  std::string name;
  std::string part, by;  ///< change to the sample
  std::string key;
  int line, column;
  FaultCode code;
  std::string value;  ///< that the hint proposes
};

void PrintTo(const Case& c, std::ostream* out) { *out << c.key; }

class OneProblem : public testing::TestWithParam<Case> {};

TEST_P(OneProblem, IsFoundInItsPlace) {
  const Case& c = GetParam();
  const BoardFile file = sample::read(sample::with(c.part, c.by));
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  const Problem& p = file.problems[0];
  EXPECT_EQ(p.file, "board.toml");
  EXPECT_EQ(p.key, c.key);
  EXPECT_EQ(std::pair(p.line, p.column), std::pair(c.line, c.column)) << sample::told(file.problems);
  EXPECT_EQ(fault_word(p.code), fault_word(c.code)) << p.message;
  EXPECT_FALSE(p.message.empty());
  EXPECT_NE(p.hint.find(c.value), std::string::npos) << p.hint;
}

const std::vector<Case> keys = {
    {"MissingKey", "length = 648\n", "", "scale.length", 5, 1, FaultCode::missing_key, ""},
    {"MissingPlainKey", "frets = 22\n", "", "scale.frets", 5, 1, FaultCode::missing_key, "from 0 to 96"},
    {"MissingWidth", "edge_margin = 3.2\n", "", "board.edge_margin", 14, 1, FaultCode::missing_key, ""},
    {"HalfAForm", "edge_margin = 3.2", "nut_width = 43", "board.heel_width", 14, 1, FaultCode::missing_key, ""},
    {"MissingChoice", "profile = \"compound\"\nradius_at_nut = 254\nradius_at_heel = 406.4\n", "", "surface.profile",
     18, 1, FaultCode::missing_key, "\"even-edge\""},
    {"MissingByChoice", "radius_at_heel = 406.4\n", "", "surface.radius_at_heel", 18, 1, FaultCode::missing_key, ""},
    {"MissingFormat", "format = 1\n", "", "format", 1, 1, FaultCode::missing_key, "must be 1"},
    {"MissingInARow", "depth = 1.5\n", "", "inlays[0].depth", 29, 1, FaultCode::missing_key, "from 0.05 mm"},
    {"MissingFallFret", "[nut]", "fall = 0.4\n[nut]", "surface.fall_from_fret", 18, 1, FaultCode::missing_key, ""},
    {"MissingGauges", "count = 6", "spacing = \"equal-gaps\"\ncount = 6", "strings.gauges", 9, 1,
     FaultCode::missing_key, ""},
    {"MissingMarks", "frets = [3, 5]\n", "", "side_dots.frets", 35, 1, FaultCode::missing_key, ""},
    {"UnknownKey", "nut_spread", "nut_spred = 3\nnut_spread", "strings.nut_spred", 11, 1, FaultCode::unknown_key,
     "did you mean \"nut_spread\"?"},
    {"UnknownKeyAtTop", "name", "hnad = \"left\"\nname", "hnad", 2, 1, FaultCode::unknown_key,
     "did you mean \"hand\"?"},
    {"UnknownTable", "[slots]", "[slot]", "slot", 26, 2, FaultCode::unknown_key, "did you mean \"slots\"?"},
    {"KeyOfAnotherTable", "frets = 22", "frets = 22\nradius_at_heel = 3", "scale.radius_at_heel", 8, 1,
     FaultCode::unknown_key, ""},
    {"UnknownKeyBehindWideText", "name = \"Heron\"", "\"n\u00e4m\" = 3", "n\u00e4m", 2, 1, FaultCode::unknown_key, ""},
    {"UnusedKey", "\"compound\"", "\"single\"", "surface.radius_at_heel", 21, 1, FaultCode::not_used, ""},
    {"UnusedHeelAt", "\"compound\"\nradius_at_nut = 254\nradius_at_heel = 406.4",
     "\"string-line\"\nradius_at_nut = 254\nheel_at = \"heel\"", "surface.heel_at", 21, 1, FaultCode::not_used, ""},
    {"UnusedCornerRadius", "edge_margin = 3.2",
     "edge_margin = 3.2\nheel = \"drawn\"\nheel_file = \"end.svg\"\ncorner_radius = 3", "board.corner_radius", 19, 1,
     FaultCode::not_used, ""},
    {"UnusedEndsCutSlots", "edge_margin = 3.2", "edge_margin = 3.2\nends_cut_slots = true", "board.ends_cut_slots", 17,
     1, FaultCode::not_used, ""},
    {"UnusedEdgeLeft", "width = 0.584", "edge_left = 2", "slots.edge_left", 27, 1, FaultCode::not_used, ""},
    {"UnusedDiameter", "shape = \"dot\"", "shape = \"block\"\nalong = 20\nacross = 10\ndiameter = 6",
     "inlays[0].diameter", 33, 1, FaultCode::not_used, ""},
    {"UnusedDistance", "seat = \"slot\"", "seat = \"slot\"\ndistance = 1", "nut.distance", 25, 1, FaultCode::not_used,
     ""},
    {"UnusedNutWidth", "seat = \"slot\"", "width = 3", "nut.width", 24, 1, FaultCode::not_used, ""},
    {"UnusedArcRadius", "edge_margin = 3.2", "edge_margin = 3.2\nheel_arc_radius = 80", "board.heel_arc_radius", 17, 1,
     FaultCode::not_used, ""},
    {"UnusedSpread", "frets = [3, 5]\n", "frets = [3, 5]\nspread = 5\n", "side_dots.spread", 37, 1, FaultCode::not_used,
     ""},
    {"TwoWaysOfWidth", "edge_margin = 3.2", "edge_margin = 3.2\nnut_width = 43\nheel_width = 57", "board.nut_width", 17,
     1, FaultCode::given_twice, ""},
    {"HeelWidthAndWidthAtFret", "edge_margin = 3.2", "nut_width = 43\nheel_width = 57\nwidth_at_fret = [12, 52]",
     "board.width_at_fret", 18, 1, FaultCode::given_twice, ""},
    {"MarginAndWidthAtFret", "edge_margin = 3.2", "edge_margin = 3.2\nwidth_at_fret = [12, 52]", "board.width_at_fret",
     17, 1, FaultCode::given_twice, ""},
    {"WidthAtFretAlone", "edge_margin = 3.2", "width_at_fret = [12, 52]", "board.nut_width", 14, 1,
     FaultCode::missing_key, ""},
    {"WidthBeyondTheLastFret", "edge_margin = 3.2", "nut_width = 43\nwidth_at_fret = [23, 52]", "board.width_at_fret",
     17, 17, FaultCode::no_such_fret, ""},
    {"LengthAndBass", "length = 648", "length = 648\nbass = 686\ntreble = 648", "scale.bass", 7, 1,
     FaultCode::given_twice, ""},
    {"RollAndBevel", "[nut]", "[edges]\nroll = 1\nbevel = 1\n[nut]", "edges.bevel", 25, 9, FaultCode::given_twice, ""},
    {"BevelAngleWithRoll", "[nut]", "[edges]\nroll = 1\nbevel_angle = 40\n[nut]", "edges.bevel_angle", 25, 1,
     FaultCode::not_used, ""},
    {"StageAlone", "[nut]", "[edges]\nstage = \"machine\"\n[nut]", "edges.stage", 24, 1, FaultCode::not_used, ""},
    {"ScallopWithoutASpace", "[nut]", "[scallop]\nfrom_fret = 5\nto_fret = 5\ndepth = 1\n[nut]", "scallop.to_fret", 25,
     11, FaultCode::not_allowed, ""},
    {"ScallopBeyondTheLastFret", "[nut]", "[scallop]\nfrom_fret = 5\nto_fret = 23\ndepth = 1\n[nut]", "scallop.to_fret",
     25, 11, FaultCode::no_such_fret, ""},
    {"LengthAndSquareFret", "length = 648", "length = 648\nsquare_fret = 7", "scale.square_fret", 7, 1,
     FaultCode::given_twice, ""},
};

const std::vector<Case> values = {
    {"TextForLength", "length = 648", "length = \"long\"", "scale.length", 6, 10, FaultCode::wrong_kind, "25 1/2 in"},
    {"ListForLength", "length = 648", "length = [648]", "scale.length", 6, 10, FaultCode::wrong_kind, ""},
    {"YesForLength", "length = 648", "length = true", "scale.length", 6, 10, FaultCode::wrong_kind, ""},
    {"DateForLength", "length = 648", "length = 1979-05-27", "scale.length", 6, 10, FaultCode::wrong_kind, ""},
    {"SumForLength", "length = 648", "length = \"640 + 8 mm\"", "scale.length", 6, 10, FaultCode::wrong_kind,
     "write 648 mm"},
    {"SpeedForLength", "length = 648", "length = \"648 mm/min\"", "scale.length", 6, 10, FaultCode::wrong_kind, ""},
    {"DecimalForWhole", "frets = 22", "frets = 22.0", "scale.frets", 7, 9, FaultCode::wrong_kind, ""},
    {"NumberForText", "\"Heron\"", "7", "name", 2, 8, FaultCode::wrong_kind, ""},
    {"NumberForList", "frets = [3, 5]", "frets = 3", "side_dots.frets", 36, 9, FaultCode::wrong_kind, ""},
    {"TextInList", "frets = [3, 5]", "frets = [3, \"5\"]", "side_dots.frets[1]", 36, 13, FaultCode::wrong_kind, ""},
    {"TextForYes", "frets = 22", "frets = 22\nzero_fret = \"no\"", "scale.zero_fret", 8, 13, FaultCode::wrong_kind, ""},
    {"WrongChoice", "\"compound\"", "\"conical\"", "surface.profile", 19, 11, FaultCode::not_allowed, ""},
    {"NearChoice", "seat = \"slot\"", "seat = \"shelve\"", "nut.seat", 24, 8, FaultCode::not_allowed,
     "did you mean \"shelf\"?"},
    {"NotANumber", "length = 648", "length = nan", "scale.length", 6, 10, FaultCode::not_allowed, "100 mm"},
    {"Infinite", "length = 648", "length = -inf", "scale.length", 6, 10, FaultCode::not_allowed, ""},
    {"Huge", "length = 648", "length = 1e300", "scale.length", 6, 10, FaultCode::not_allowed, ""},
    {"HugeWhole", "frets = 22", "frets = 9000000000000000000", "scale.frets", 7, 9, FaultCode::not_allowed, ""},
    {"Negative", "thickness = 6.35", "thickness = -6.35", "board.thickness", 15, 13, FaultCode::not_allowed, ""},
    {"ZeroNotAllowed", "width = 0.584", "ends = \"blind\"\nedge_left = 0", "slots.edge_left", 28, 13,
     FaultCode::not_allowed, ""},
    {"TooManyFrets", "frets = 22", "frets = 97", "scale.frets", 7, 9, FaultCode::not_allowed, ""},
    {"FormatTwo", "format = 1", "format = 2", "format", 1, 10, FaultCode::not_allowed, ""},
    {"InchesInMmFile", "length = 648", "length = 25.5", "scale.length", 6, 10, FaultCode::not_allowed,
     "this looks like inches: write \"25.5 in\""},
    {"SlotInInches", "width = 0.584", "width = 0.023", "slots.width", 27, 9, FaultCode::not_allowed,
     "write \"0.023 in\""},
    {"TextInWrongUnit", "length = 648", "length = \"648 in\"", "scale.length", 6, 10, FaultCode::not_allowed,
     "this looks like millimetres: write \"648 mm\""},
    {"RadiusInInches", "radius_at_nut = 254", "radius_at_nut = 10", "surface.radius_at_nut", 20, 17,
     FaultCode::no_surface, "write \"10 in\""},
    {"RadiusTooSmall", "radius_at_nut = 254", "radius_at_nut = \"21 mm\"", "surface.radius_at_nut", 20, 17,
     FaultCode::no_surface, ""},
    {"CommaInNumber", "length = 648", "length = \"25,5 in\"", "scale.length", 6, 10, FaultCode::wrong_kind, ""},
    {"LineBreakInName", "\"Heron\"", "\"He\\nron\"", "name", 2, 8, FaultCode::not_text, ""},
    {"EmptyList", "frets = 22", "frets = 22\ncents = []", "scale.cents", 8, 9, FaultCode::wrong_count, ""},
};

const std::vector<Case> rules = {
    {"FewerCents", "frets = 22", "frets = 22\ncents = [100, 200]", "scale.cents", 8, 9, FaultCode::wrong_count, ""},
    {"FretBeyond", "double_frets = [12]", "double_frets = [12, 24]", "inlays[0].double_frets[1]", 32, 21,
     FaultCode::no_such_fret, "1 to 22"},
    {"FretTwice", "frets = [3, 5, 7, 9]", "frets = [3, 5, 7, 3]", "inlays[0].frets[3]", 31, 19, FaultCode::named_twice,
     ""},
    {"FretInBoth", "double_frets = [12]", "double_frets = [12, 9]", "inlays[0].double_frets[1]", 32, 21,
     FaultCode::named_twice, ""},
    {"FallBeyond", "[nut]", "fall_from_fret = 23\nfall = 0.4\n[nut]", "surface.fall_from_fret", 23, 18,
     FaultCode::no_such_fret, ""},
    {"SquareBeyond", "length = 648", "bass = 686\ntreble = 648\nsquare_fret = 30", "scale.square_fret", 8, 15,
     FaultCode::no_such_fret, ""},
    {"GaugeCount", "count = 6", "count = 6\ngauges = [1, 0.8]", "strings.gauges", 11, 10, FaultCode::wrong_count, ""},
    {"OrderTwice", "[side_dots]",
     "[work]\norder = [\"pockets\", \"inlay\", \"radius\", \"slots\", \"outline\", \"slots\"]\n[side_dots]",
     "work.order[5]", 36, 60, FaultCode::named_twice, ""},
    {"OrderShort", "[side_dots]", "[work]\norder = [\"pockets\", \"inlay\", \"radius\", \"slots\"]\n[side_dots]",
     "work.order", 36, 9, FaultCode::missing_key, ""},
    {"OrderImpossible", "[side_dots]",
     "[work]\norder = [\"inlay\", \"pockets\", \"radius\", \"slots\", \"outline\"]\n[side_dots]", "work.order[0]", 36,
     10, FaultCode::wrong_order, "after \"pockets\""},
    {"MeasuredCount", "[side_dots]", "[measured]\nslots = [36, 70]\n[side_dots]", "measured.slots", 36, 9,
     FaultCode::wrong_count, ""},
    {"SetupTwice", "[side_dots]", "[[setups]]\noperations = [\"slots\", \"slots\"]\n[side_dots]",
     "setups[0].operations[1]", 36, 24, FaultCode::named_twice, ""},
    {"Colour", "[side_dots]", "[materials.oak]\ncolour = \"brown\"\n[side_dots]", "materials.oak.colour", 36, 10,
     FaultCode::wrong_kind, ""},
    {"Limit", "[side_dots]", "[limits]\nwall = \"wide\"\n[side_dots]", "limits.wall", 36, 8, FaultCode::wrong_kind, ""},
    {"ArtworkSizes", "shape = \"dot\"", "shape = \"artwork\"\nfile = \"wave.svg\"\nalong = 10\nacross = 10",
     "inlays[0].across", 33, 1, FaultCode::given_twice, ""},
    {"ArtworkNoSize", "shape = \"dot\"", "shape = \"artwork\"\nfile = \"wave.svg\"", "inlays[0].along", 29, 1,
     FaultCode::missing_key, ""},
};

const std::vector<Case> shapes = {
    {"ListForTable", "[nut]", "[[nut]]", "nut", 23, 3, FaultCode::wrong_kind, ""},
    {"TableForList", "[[inlays]]", "[inlays]", "inlays", 29, 2, FaultCode::wrong_kind, ""},
    {"ValueForMaterial", "[side_dots]", "[materials]\noak = 3\n[side_dots]", "materials.oak", 36, 1,
     FaultCode::wrong_kind, ""},
};

const std::vector<Case> slips = {
    {"NoQuotes", "length = 648", "length = 648 mm", "", 6, 10, FaultCode::not_well_formed, "length = \"648 mm\""},
    {"NoQuotesFraction", "length = 648", "length = 25 1/2 in  # as drawn", "", 6, 10, FaultCode::not_well_formed,
     "length = \"25 1/2 in\""},
    {"NoQuotesWord", "name = \"Heron\"", "hand = left", "", 2, 8, FaultCode::not_well_formed, "hand = \"left\""},
    {"CurlyQuotes", "length = 648", "length = \u201C648 mm\u201D", "", 6, 10, FaultCode::not_well_formed,
     "length = \"648 mm\""},
    {"CurlyName", "\"Heron\"", "\u201EHeron\u201C", "", 2, 8, FaultCode::not_well_formed, "name = \"Heron\""},
    {"ListWithOneBracket", "[[inlays]]", "[inlays]", "inlays", 29, 2, FaultCode::wrong_kind, "[[inlays]]"},
    {"ListTwiceWithOneBracket", "[side_dots]", "[setups]\nzero = \"nut\"\n[setups]\n[side_dots]", "setups", 37, 1,
     FaultCode::named_twice, "[[setups]]"},
    {"CentimetresOrAPoint", "length = 648", "length = 64.8", "scale.length", 6, 10, FaultCode::not_allowed,
     "\"64.8 cm\" or \"648 mm\""},
    {"CentimetresOfSpread", "nut_spread = 36", "nut_spread = 3.6", "strings.nut_spread", 11, 14, FaultCode::not_allowed,
     "\"3.6 cm\" or \"36 mm\""},
};

std::string case_name(const testing::TestParamInfo<Case>& info) { return info.param.name; }

INSTANTIATE_TEST_SUITE_P(Keys, OneProblem, testing::ValuesIn(keys), case_name);
INSTANTIATE_TEST_SUITE_P(Values, OneProblem, testing::ValuesIn(values), case_name);
INSTANTIATE_TEST_SUITE_P(Rules, OneProblem, testing::ValuesIn(rules), case_name);
INSTANTIATE_TEST_SUITE_P(Slips, OneProblem, testing::ValuesIn(slips), case_name);
INSTANTIATE_TEST_SUITE_P(Shapes, OneProblem, testing::ValuesIn(shapes), case_name);

TEST(Problems, SampleIsSound) {
  EXPECT_TRUE(sample::read(sample::text).sound()) << sample::told(sample::read(sample::text).problems);
}

TEST(Problems, AreAllReportedAtOnceInOrder) {
  std::string text = sample::with("frets = 22", "frets = 97\ncolour = 1");
  text = sample::with("thickness = 6.35", "thickness = 0.25", text);
  text = sample::with("seat = \"slot\"", "seat = \"groove\"", text);
  text = sample::with("depth = 1.5", "", text);
  const BoardFile file = sample::read(text);
  std::vector<std::string> found;
  for (const Problem& p : file.problems) found.push_back(p.key);
  EXPECT_EQ(found, (std::vector<std::string>{"scale.frets", "scale.colour", "board.thickness", "nut.seat",
                                             "inlays[0].depth"}));
}

TEST(Problems, CentimetresAreReadInEveryLength) {
  std::string text = sample::with("length = 648", "length = \"64.8 cm\"");
  text = sample::with("edge_margin = 3.2", "edge_margin = [\"0.32 cm\", \"3.2 mm\"]", text);
  text = sample::with("[side_dots]", "[limits]\nwall = \"0.1 cm\"\n[side_dots]", text);
  const BoardFile file = sample::read(text);
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board.scale.length, 648);
  EXPECT_EQ(file.board.board.edge_margin->second, 3.2);
  EXPECT_EQ(file.board.limits.at("wall"), 1);
}

TEST(Problems, ValueForTable) {
  const BoardFile file =
      sample::read(sample::with("[nut]\nseat = \"slot\"\n", "", sample::with("units", "nut = 3\nunits")));
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "nut");
  EXPECT_EQ(std::pair(file.problems[0].line, file.problems[0].column), std::pair(3, 1));
  EXPECT_EQ(file.problems[0].message, "found a whole number where a table is needed");
}

TEST(Problems, CentsMustRise) {
  std::string text =
      sample::with("frets = 22", "frets = 12\ncents = [100, 90, 300, 300, 400, 500, 600, 700, 800, 900, 1000, 1100]");
  const BoardFile file = sample::read(text);
  ASSERT_EQ(file.problems.size(), 2u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "scale.cents[1]");
  EXPECT_EQ(file.problems[0].column, 15);
  EXPECT_EQ(file.problems[1].key, "scale.cents[3]");
}

TEST(Problems, StepsAndCentsAreTwoWays) {
  const BoardFile file =
      sample::read(sample::with("frets = 22", "frets = 22\nsteps_per_octave = 12\ncents = [100, 200]"));
  ASSERT_EQ(file.problems.size(), 2u) << sample::told(file.problems);
  EXPECT_TRUE(std::ranges::count(file.problems, FaultCode::given_twice, &Problem::code) == 1);
}

TEST(Problems, CompensationEndsWithAZeroFret) {
  std::string text = sample::with("frets = 22", "frets = 22\nzero_fret = true");
  text = sample::with("seat = \"slot\"", "seat = \"slot\"\ncompensation = 1", text);
  const BoardFile file = sample::read(text);
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "nut.compensation");
}

TEST(Problems, DistanceNeedsASeat) {
  std::string text = sample::with("frets = 22", "frets = 22\nzero_fret = true");
  text = sample::with("seat = \"slot\"", "distance = 1", text);
  const BoardFile file = sample::read(text);
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "nut.distance");
}

TEST(Problems, AWrongChoiceSaysNothingAboutItsKeys) {
  const BoardFile file = sample::read(sample::with("shape = \"dot\"", "shape = \"ring\"\ndiameter = 6\nalong = 3"));
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "inlays[0].shape");
}

TEST(Problems, InchFileNamesItsOwnUnits) {
  std::string text = sample::with("units = \"mm\"", "units = \"in\"");
  const BoardFile file = sample::read(text);
  ASSERT_FALSE(file.sound());
  EXPECT_EQ(file.problems[0].key, "scale.length");
  EXPECT_EQ(fault_word(file.problems[0].code), "not-allowed");
  for (const char* value : {"648 in", "3.937 in", "118.1102 in"})
    EXPECT_NE(file.problems[0].message.find(value), std::string::npos) << file.problems[0].message;
  EXPECT_NE(file.problems[0].hint.find("\"648 mm\""), std::string::npos);
}

TEST(Problems, MisspeltUnitsAreOneProblem) {
  std::string text = sample::with("units = \"mm\"", "units = \"inches\"");
  text = sample::with("length = 648", "length = 25.5", text);
  const BoardFile file = sample::read(text);
  ASSERT_FALSE(file.sound());
  EXPECT_EQ(file.problems[0].key, "units");
  EXPECT_EQ(sample::told(file.problems).find("scale.length"), std::string::npos);
}

TEST(Problems, TextsInMessagesAreEscapedAndShort) {
  const BoardFile file =
      sample::read(sample::with("length = 648", "length = \"\\u001b[31m" + std::string(90, 'x') + "\""));
  ASSERT_EQ(file.problems.size(), 1u);
  EXPECT_NE(file.problems[0].message.find("\"\\u001B[31mxxx"), std::string::npos) << file.problems[0].message;
  EXPECT_EQ(file.problems[0].message.find('\x1b'), std::string::npos);
}

TEST(Problems, BothSpellingsAreRead) {
  EXPECT_TRUE(sample::read(sample::with("count = 6", "count = 6\nspacing = \"equal-centers\"")).sound());
  EXPECT_TRUE(sample::read(sample::text + "[[setups]]\nzero = \"center\"\n").sound());
  EXPECT_TRUE(sample::read(sample::text + "[[setups]]\nzero = \"centre\"\n").sound());
}

TEST(Locate, FindsTheKeyOrItsTable) {
  const BoardFile file = sample::read(sample::text);
  const auto places = locate(file, {{FaultCode::no_surface, "surface.radius_at_nut", "a", ""},
                                    {FaultCode::missing_key, "surface.fall", "b", ""},
                                    {FaultCode::missing_key, "inlays[0].frets[2]", "c", "d"},
                                    {FaultCode::missing_key, "inlays[0].spread", "e", ""},
                                    {FaultCode::missing_key, "blank.length", "f", ""}});
  ASSERT_EQ(places.size(), 5u);
  EXPECT_EQ(std::pair(places[0].line, places[0].column), std::pair(20, 17));
  EXPECT_EQ(std::pair(places[1].line, places[1].column), std::pair(18, 1));
  EXPECT_EQ(std::pair(places[2].line, places[2].column), std::pair(31, 16));
  EXPECT_EQ(places[2].hint, "d");
  EXPECT_EQ(std::pair(places[3].line, places[3].column), std::pair(29, 1));
  EXPECT_EQ(std::pair(places[4].line, places[4].column), std::pair(1, 1));
  EXPECT_EQ(places[4].file, "board.toml");
}

}  // namespace
}  // namespace sagitta
