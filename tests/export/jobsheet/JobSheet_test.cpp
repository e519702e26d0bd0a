#include "jobsheet/JobSheet.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"
#include "jobsheet/JobHtml.hpp"

namespace sagitta::test {
namespace {

/// heron-six, done in two set-ups: its pockets from the blank's top, the rest from the bed with tape.
constexpr const char* two_setups = R"(
[[setups]]
name = "inlay side"
operations = ["pockets"]
zero = "corner"
z_zero = "blank-top"
[[setups]]
name = "shape & trim"
operations = ["outline", "radius", "slots"]
zero = "nut"
z_zero = "bed"
tape = 0.15
)";
constexpr const char* with_feed = R"(
[[cutters]]
name = "slot cutter"
use = ["slot"]
diameter = 0.58
cutting_length = 3
feed = 300
pass_depth = 0.5
)";

JobSheet sheet_of(const std::string& more, const std::vector<Finding>& findings = {}) {
  const ScratchFolder scratch;
  write_file(scratch / "a.toml", bytes_of(preset_path("heron-six")) + more);
  return job_sheet(std::get<PreparedBoard>(prepare((scratch / "a.toml").string())), findings);
}

bool has_fact(const JobStep& step, const std::string& name, const std::string& words) {
  return std::any_of(step.facts.begin(), step.facts.end(), [&](const auto& fact) {
    return fact.first == name && fact.second.find(words) != std::string::npos;
  });
}

// Blank 7.5, finished 6.3, pockets 1.5: 6.3 - 1.5 - 7.5 = -2.7 from the blank's top.
TEST(JobSheet, TellsDepthsFromTheSetUpsOwnZero) {
  const JobSheet sheet = sheet_of(two_setups);
  ASSERT_EQ(sheet.setups.size(), 2U);
  ASSERT_EQ(sheet.setups[0].steps.size(), 1U);
  EXPECT_TRUE(has_fact(sheet.setups[0].steps[0], "depth", "z = -2.7,"));
  // From the bed under 0.15 of tape: glue face 0.15, finished middle 6.45, nut slot's floor 6.3 - 3.2 + 0.15.
  ASSERT_EQ(sheet.setups[1].steps.size(), 3U);
  EXPECT_TRUE(has_fact(sheet.setups[1].steps[0], "depth", "to the middle at z = 6.45 "));
  EXPECT_TRUE(has_fact(sheet.setups[1].steps[1], "depth", "nut slot: level floor at z = 3.25"));
  EXPECT_TRUE(has_fact(sheet.setups[1].steps[2], "depth", "glue face at z = 0.15,"));
}

/// The first number behind these words. NaN where they are not said.
double number_behind(const std::vector<std::string>& notes, const std::string& words) {
  for (const std::string& note : notes)
    if (const std::size_t at = note.find(words); at != std::string::npos)
      return std::stod(note.substr(at + words.size()));
  return std::nan("");
}

// The board's file: blank 22 x 3 x 5/16 in, board 1/4 in thick, bed at z = 0 under no tape; 0.3125 is 5/16.
TEST(JobSheet, TellsABoardInInchesItsHeightsAndItsBlankInInches) {
  ScratchFolder scratch;
  write_file(
      scratch / "a.toml",
      bytes_of(preset_path("tern-inch-left")) +
          "\n[[setups]]\nname = \"all\"\noperations = [\"pockets\"]\nz_zero = \"blank-top\"\nzero = \"corner\"\n");
  const JobSheet sheet = job_sheet(std::get<PreparedBoard>(prepare((scratch / "a.toml").string())), {});
  const std::vector<std::string>& notes = sheet.setups.at(0).notes;
  EXPECT_EQ(number_behind(notes, "glue face at z = "), -0.3125);
  EXPECT_EQ(number_behind(notes, "finished top at z = "), -0.0625);
  EXPECT_EQ(number_behind(notes, "blank's top at z = "), 0);
  EXPECT_EQ(number_behind(notes, "Blank "), 22);
  EXPECT_EQ(number_behind(notes, "Blank 22 x "), 3);
  EXPECT_EQ(number_behind(notes, "Blank 22 x 3 x "), 5) << "5/16";
  EXPECT_EQ(number_behind(notes, "Blank 22 x 3 x 5/"), 16);
  for (const std::string& note : notes) EXPECT_EQ(note.find(" mm"), std::string::npos) << note;
}

// Tape 0.15, glue face, finished 6.3, blank 7.5, upward from the bed; from the blank's top downward.
TEST(JobSheet, TellsTheLevelsFromTheBedToTheBlanksTop) {
  const auto levels = [](const JobSetup& setup) {
    std::string text;
    for (const JobLevel& level : setup.levels)
      text += level.what + " " + level.z + (level.zero ? " zero" : "") +
              (level.above.empty() ? "" : ", " + level.above) + "\n";
    return text;
  };
  const JobSheet sheet = sheet_of(two_setups);
  EXPECT_EQ(levels(sheet.setups[1]),
            "bed z = 0 zero, tape 0.15\nglue face z = 0.15, board 6.3\nfinished top z = 6.45, comes off 1.2\n"
            "blank's top z = 7.65\n");
  EXPECT_EQ(
      levels(sheet.setups[0]),
      "glue face, on the bed z = -7.5, board 6.3\nfinished top z = -1.2, comes off 1.2\nblank's top z = 0 zero\n");
}

TEST(JobSheet, PutsPocketsOfOneDepthTogether) {
  const JobSheet sheet = sheet_of(
      "\n[[inlays]]\nshape = \"dot\"\nfrets = [1]\ndepth = 1.5\n[[inlays]]\nshape = \"dot\"\n"
      "frets = [2]\ndepth = 1\n");
  std::vector<std::string> depths;
  for (const auto& [name, what] : sheet.setups[0].steps[0].facts)
    if (name == "depth") depths.push_back(what.substr(0, what.find(':')));
  EXPECT_EQ(depths, (std::vector<std::string>{"inlay 3", "inlays 1-2"}));
}

TEST(JobSheet, HasTheOperationsInTheOrderOfWorkWithTheStockBeforeAndAfter) {
  const JobSheet sheet = sheet_of(two_setups);
  const std::vector<JobStep>& steps = sheet.setups[1].steps;
  ASSERT_EQ(steps.size(), 3U);
  const std::vector<std::array<std::string, 3>> wanted = {
      {"radius", "pocketed", "radiused"}, {"slots", "radiused", "slotted"}, {"outline", "slotted", "board"}};
  for (std::size_t i = 0; i < 3; ++i)
    EXPECT_EQ((std::array<std::string, 3>{steps[i].title, steps[i].before, steps[i].after}), wanted[i]);
  EXPECT_EQ(steps[1].ticks.size(), 23U) << "22 slots and the nut seat";
  EXPECT_EQ(sheet.setups[0].steps[0].ticks.size(), 10U) << "eight dots and a pair";
}

// d(n) = L (1 - 2^(-n/12)) with L = 648; edge height by z = t - (R - sqrt(R^2 - y^2)), R = 254 and y = (35.5 + 7) / 2.
TEST(JobSheet, ListsWhatTheCaliperShouldRead) {
  const JobSheet sheet = sheet_of("");
  const auto row = [&](const std::string& start) {
    for (const auto& each : sheet.checks.rows)
      if (each[0].rfind(start, 0) == 0) return each[1];
    return std::string("absent");
  };
  for (const int fret : {1, 7, 12, 22}) {
    char wanted[32];
    std::snprintf(wanted, sizeof wanted, "%.2f", 648 * (1 - std::exp2(-fret / 12.0)));
    EXPECT_EQ(row("nut line to the middle of slot " + std::to_string(fret)), wanted);
  }
  char wanted[32];
  std::snprintf(wanted, sizeof wanted, "%.2f", 6.3 - (254 - std::sqrt(254.0 * 254 - 21.25 * 21.25)));
  EXPECT_EQ(row("thickness at the edge, at the nut line"), wanted);
  EXPECT_EQ(sheet.wire.rows.size(), 23U) << "22 pieces and their sum";
}

// Twenty-two slots; depth 1.7 + 0.35 = 2.05 in passes of 0.5 makes five of them.
TEST(JobSheet, GivesTimesOnlyWhereAFeedIsGivenAndCallsThemEstimates) {
  const auto slots_of = [](const JobSheet& sheet) {
    for (const JobStep& step : sheet.setups[0].steps)
      if (step.title == "slots") return step;
    return JobStep();
  };
  for (const JobStep& step : sheet_of("").setups[0].steps) EXPECT_FALSE(has_fact(step, "time", ""));
  EXPECT_TRUE(has_fact(slots_of(sheet_of(with_feed)), "time", "estimate: "));
  EXPECT_TRUE(has_fact(slots_of(sheet_of(with_feed)), "time", " in 5 passes"));
}

TEST(JobSheet, KeepsCautionsApartFromFindings) {
  Finding dust, thin;
  dust.name = "caution-dust", dust.message = "dust", thin.name = "edge", thin.message = "thin <edge>";
  const JobSheet sheet = sheet_of("", {dust, thin});
  ASSERT_EQ(sheet.cautions.size(), 1U);
  ASSERT_EQ(sheet.findings.size(), 1U);
  EXPECT_NE(job_html(sheet, {}).find("thin &lt;edge&gt;"), std::string::npos);
}

TEST(JobSheet, GivesOneLineForNotesOfOneKindWithAllTheirPlaces) {
  const auto note = [](const char* place, double value) {
    Finding finding;
    finding.name = "area-added", finding.feature = place, finding.value = value, finding.limit = 0.01;
    finding.message = "adds " + std::to_string(value), finding.suggestion = "look at it";
    return finding;
  };
  Finding other = note("fret 9", 0.5), look = note("fret 5", 0.2), again = note("fret 7", 0.3);
  other.suggestion = "name another cutter";
  look.severity = again.severity = Severity::look;
  const JobSheet sheet = sheet_of("", {note("fret 3", 0.02), look, note("fret 12", 0.44), again, other});
  ASSERT_EQ(sheet.findings.size(), 4U);  // two looks, two kinds of notes
  const std::string& line = sheet.findings.front();
  for (const char* part : {"2", "fret 3", "fret 12", "0.44"}) EXPECT_NE(line.find(part), std::string::npos) << part;
  EXPECT_EQ(line.find("0.02"), std::string::npos);
}

/// A reader of HTML that is not ours: every tag closed in its turn, every picture decoded and of the kind it says.
constexpr const char* reader = R"(
import sys, base64
from html.parser import HTMLParser
import xml.etree.ElementTree as tree
empty = {'meta', 'img', 'input', 'br'}
counts, stack = {}, []
class Page(HTMLParser):
    def handle_starttag(self, tag, attributes):
        counts[tag] = counts.get(tag, 0) + 1
        if tag not in empty: stack.append(tag)
        if tag == 'img':
            kind, data = dict(attributes)['src'].split(';base64,')
            data = base64.b64decode(data, validate=True)
            if kind == 'data:image/png': assert data[:8] == bytes([137, 80, 78, 71, 13, 10, 26, 10])
            else: assert kind == 'data:image/svg+xml' and tree.fromstring(data).tag.endswith('svg')
    def handle_endtag(self, tag):
        assert stack.pop() == tag, tag
page = Page()
page.feed(open(sys.argv[1], encoding='utf-8').read())
assert not stack
print(counts['img'], counts['input'], counts['section'])
)";

TEST(JobSheet, IsAPageThatStandsAlone) {
  const ScratchFolder scratch;
  write_file(scratch / "a.toml", bytes_of(preset_path("heron-six")) + two_setups);
  write_file(scratch / "read.py", reader);
  const std::string to = "'" + (scratch / "out").string() + "'";
  const Outcome made = sagitta("export '" + (scratch / "a.toml").string() + "' --only html --to " + to);
  ASSERT_EQ(made.code, 0) << made.err;
  EXPECT_EQ(listing(scratch / "out"), "job-sheet.html\nmanifest.json\n");
  const Outcome read = shell("/usr/bin/python3 '" + (scratch / "read.py").string() + "' " + to + "/job-sheet.html");
  EXPECT_EQ(read.code, 0) << read.err;
  // The board, two hold-downs and two pictures for each of four operations; a box for each of 14 steps, and for 10
  // pockets, 1 surface, 22 slots, 1 nut, 1 outline.
  EXPECT_EQ(read.out, "11 49 2\n");
}

}  // namespace
}  // namespace sagitta::test
