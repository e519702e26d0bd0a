#include "jobsheet/Walk.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "Places.hpp"
#include "board/Length.hpp"
#include "export/CommandLine.hpp"
#include "export/jobsheet/OneKeys.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "jobsheet/JobSheet.hpp"

/// The walk through the job: which steps a board has, what a key changes, and numbers by hand from the preset
/// heron-six: finished 6.3, blank 7.5, pockets 1.5 deep, pieces 1.7 thick, slots 0.584 wide and 1.7 + 0.35 deep.

namespace sagitta::test {
namespace {

PreparedBoard board_of(const std::string& preset, const std::string& more = "", const std::string& from = "",
                       const std::string& to = "") {
  const ScratchFolder scratch;
  copy_drawings(scratch.path());
  std::string text = bytes_of(preset_path(preset));
  if (!from.empty()) text.replace(text.find(from), from.size(), to);
  write_file(scratch / "a.toml", text + more);
  return std::get<PreparedBoard>(prepare((scratch / "a.toml").string()));
}

JobSheet sheet_of(const PreparedBoard& ready) { return job_sheet(ready, board_findings(ready)); }

std::vector<WalkKind> kinds_of(const std::vector<WalkStep>& walk) {
  std::vector<WalkKind> kinds;
  for (const WalkStep& step : walk) kinds.push_back(step.kind);
  return kinds;
}

const WalkStep& step_of(const JobSheet& sheet, WalkKind kind) {
  const auto found = std::ranges::find(sheet.walk, kind, &WalkStep::kind);
  EXPECT_NE(found, sheet.walk.end());
  return *found;
}

bool says(const std::vector<std::string>& lines, const std::string& words) {
  return std::ranges::any_of(lines, [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

TEST(Walk, HasTheStepsOfTheBoardInTheirOrder) {
  EXPECT_EQ(kinds_of(sheet_of(board_of("heron-six")).walk),
            (std::vector{WalkKind::blank, WalkKind::set_up, WalkKind::pockets, WalkKind::pieces, WalkKind::dry_fit,
                         WalkKind::gluing, WalkKind::radius, WalkKind::slots, WalkKind::nut, WalkKind::outline,
                         WalkKind::wire, WalkKind::pressing, WalkKind::end_bevel}));
}

TEST(Walk, LeavesOutWhatTheBoardHasNot) {
  const std::vector<WalkKind> plain = kinds_of(sheet_of(board_of("egret-classical")).walk);
  for (const WalkKind kind : {WalkKind::pockets, WalkKind::pieces, WalkKind::gluing, WalkKind::nut, WalkKind::side_dots,
                              WalkKind::binding, WalkKind::from_below, WalkKind::sanding})
    EXPECT_EQ(std::ranges::count(plain, kind), 0) << static_cast<int>(kind);
}

/// Kinds of the steps that are not the same on two boards.
std::set<WalkKind> differing(const JobSheet& a, const JobSheet& b) {
  std::set<WalkKind> kinds;
  for (const auto& [one, other] : {std::pair{&a, &b}, std::pair{&b, &a}})
    for (const WalkStep& step : one->walk) {
      const auto same = std::ranges::find(other->walk, step.kind, &WalkStep::kind);
      if (same == other->walk.end() || !(*same == step)) kinds.insert(step.kind);
    }
  return kinds;
}

TEST(Walk, OneKeyChangesOnlyTheStepsConcerned) {
  const JobSheet plain = sheet_of(board_of("heron-six"));
  const auto changed = [&](const std::string& more, const std::string& from = "", const std::string& to = "") {
    return differing(plain, sheet_of(board_of("heron-six", more, from, to)));
  };
  using Kinds = std::set<WalkKind>;
  EXPECT_EQ(changed(""), Kinds{});
  EXPECT_EQ(changed("\n[side_dots]\nfrets = [3, 5]\ndiameter = 1.5\n"), Kinds{WalkKind::side_dots});
  EXPECT_EQ(changed("\n[pins]\nat = [[20, 0], [430, 0]]\n"), Kinds{WalkKind::from_below});
  EXPECT_EQ(changed("", "[wire]", "[wire]\nend_bevel = 35"), Kinds{WalkKind::end_bevel});
  EXPECT_EQ(changed("", "clearance = 0.05", "clearance = 0.04"), Kinds{WalkKind::dry_fit});
  EXPECT_EQ(changed("\n[finish]\nsanding = 0.1\n"), (Kinds{WalkKind::gluing, WalkKind::radius, WalkKind::slots,
                                                           WalkKind::nut, WalkKind::outline, WalkKind::sanding}));
  EXPECT_EQ(changed("", "[wire] ", "[wire]\noverhang = 3 "), Kinds{WalkKind::wire});
}

/// All that a step shows but its findings: its own words, what the machine's step adds, the set-up's notes and levels,
/// and the tables that stand at it.
struct ShownStep {
  WalkStep step;
  std::vector<std::pair<std::string, std::string>> facts;
  std::vector<std::string> ticks, notes;
  std::vector<JobLevel> levels;
  std::vector<std::vector<std::string>> rows;
  friend bool operator==(const ShownStep&, const ShownStep&) = default;
};

std::vector<ShownStep> shown_steps(const JobSheet& sheet) {
  std::vector<ShownStep> shown;
  for (const WalkStep& step : sheet.walk) {
    ShownStep own{step, {}, {}, {}, {}, {}};
    own.step.findings.clear();
    const JobSetup* setup = step.setup < 0 ? nullptr : &sheet.setups[static_cast<std::size_t>(step.setup)];
    if (setup && step.job >= 0) {
      own.facts = setup->steps[static_cast<std::size_t>(step.job)].facts;
      own.ticks = setup->steps[static_cast<std::size_t>(step.job)].ticks;
    }
    if (setup && step.kind == WalkKind::set_up) own.notes = setup->notes, own.levels = setup->levels;
    if (shows_wire(step)) own.rows = sheet.wire.rows;
    if (shows_lines(step)) own.rows = sheet.lines.rows;
    shown.push_back(std::move(own));
  }
  return shown;
}

/// Titles of the kinds of steps that are not the same on two boards.
std::set<std::string> titles_differing(const JobSheet& a, const JobSheet& b) {
  const std::vector<ShownStep> left = shown_steps(a), right = shown_steps(b);
  std::set<std::string> titles;
  for (const auto& [one, other] : {std::pair{&left, &right}, std::pair{&right, &left}})
    for (const ShownStep& step : *one)
      if (std::ranges::find(*other, step) == other->end()) titles.insert(walk_title(step.step.kind));
  return titles;
}

TEST(Walk, EveryKeyChangesItsOwnStepsAndNoOther) {
  const std::string text = bytes_of(places::tests() + "/export/jobsheet/every-feature.toml");
  const ScratchFolder scratch;
  copy_drawings(scratch.path());
  const auto sheet_with = [&](const std::string& board) {
    write_file(scratch / "a.toml", board);
    const auto prepared = prepare((scratch / "a.toml").string());
    const auto* ready = std::get_if<PreparedBoard>(&prepared);
    return ready ? std::optional(job_sheet(*ready, {})) : std::nullopt;
  };
  const JobSheet plain = *sheet_with(text);
  for (const OneKey& one : one_keys) {
    std::string changed = text;
    const std::size_t at = changed.find(one.from);
    ASSERT_NE(at, std::string::npos) << one.key;
    changed.replace(at, std::string(one.from).size(), one.to);
    const auto other = sheet_with(changed);
    ASSERT_TRUE(other) << one.key;
    EXPECT_EQ(titles_differing(plain, *other), one.steps) << one.key;
  }
}

// Pocket's floor 6.3 - 1.5 = 4.8, that is 2.7 under the blank's top; the piece's top 4.8 + 1.7 = 6.5: 1.0 under the
// blank's top and 0.2 over the finished middle.
TEST(Walk, TellsWhereFloorPieceAndTopsLie) {
  const PreparedBoard ready = board_of("heron-six");
  const std::vector<InlayHeight> heights = inlay_heights(ready);
  ASSERT_EQ(heights.size(), 1U);
  EXPECT_NEAR(heights[0].floor, 4.8, 1e-12);
  EXPECT_NEAR(heights[0].piece_top, 6.5, 1e-12);
  EXPECT_NEAR(heights[0].proud(), -1.0, 1e-12);
  EXPECT_NEAR(heights[0].to_remove(), 0.2, 1e-12);
  const JobSheet sheet = sheet_of(ready);
  EXPECT_TRUE(says(step_of(sheet, WalkKind::pockets).check, "2.7 mm"));
  EXPECT_TRUE(says(step_of(sheet, WalkKind::gluing).check, "1 mm under"));
  EXPECT_TRUE(says(step_of(sheet, WalkKind::gluing).check, "0.2 mm above"));
}

// A piece 3 thick ends 4.8 + 3 = 7.8 up, 0.3 over the blank's top.
TEST(Walk, ProudPiecesAreLevelledBeforeTheNextCut) {
  const JobSheet sheet = sheet_of(board_of("heron-six", "", "depth = 1.5 ", "piece_thickness = 3\ndepth = 1.5 "));
  const std::vector<WalkKind> kinds = kinds_of(sheet.walk);
  const auto level = std::ranges::find(kinds, WalkKind::levelling);
  ASSERT_NE(level, kinds.end());
  EXPECT_LT(level, std::ranges::find(kinds, WalkKind::radius));
  EXPECT_TRUE(says(step_of(sheet, WalkKind::levelling).act, "0.3 mm"));
}

/// A step's levels from the lowest up: what lies there, and the number of its text.
std::vector<std::pair<std::string, double>> levels_of(const JobSheet& sheet, WalkKind kind) {
  std::vector<std::pair<std::string, double>> levels;
  for (const JobLevel& level : step_of(sheet, kind).levels)
    levels.emplace_back(level.what, std::stod(level.z.substr(level.z.find_last_of(' ') + 1)));
  return levels;
}

void expect_heights(const JobSheet& sheet, WalkKind kind, const std::vector<double>& wanted) {
  const auto levels = levels_of(sheet, kind);
  ASSERT_EQ(levels.size(), wanted.size()) << static_cast<int>(kind);
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    EXPECT_NEAR(levels[i].second, wanted[i], 0.00501) << levels[i].first;
    // What stands between two levels is their difference.
    if (i > 0) {
      EXPECT_NEAR(std::stod(step_of(sheet, kind).levels[i - 1].above), wanted[i] - wanted[i - 1], 0.00501);
    }
  }
}

// Glue face 0, pocket's floor 6.3 - 1.5 = 4.8, piece's top 4.8 + 1.7 = 6.5, finished 6.3, blank 7.5; the slots' floor
// 6.3 - (1.7 + 0.35) = 4.25, the nut's 6.3 - 3.2 = 3.1.
TEST(Walk, ShowsTheLevelsOfEveryStepThatCuts) {
  const JobSheet sheet = sheet_of(board_of("heron-six"));
  expect_heights(sheet, WalkKind::pockets, {0, 4.8, 6.3, 7.5});
  expect_heights(sheet, WalkKind::gluing, {0, 4.8, 6.3, 6.5, 7.5});
  expect_heights(sheet, WalkKind::radius, {0, 6.3, 7.5});
  expect_heights(sheet, WalkKind::slots, {0, 4.25, 6.3});
  expect_heights(sheet, WalkKind::nut, {0, 3.1, 6.3});
}

// Milled to 6.6 first: the pieces' tops at 6.5 are 0.1 under it. From the blank's top, 7.5 up, all is 7.5 less.
TEST(Walk, ShowsTheLevelsOfAnotherOrderFromTheSetUpsOwnZero) {
  const JobSheet sheet = sheet_of(board_of("heron-six",
                                           "\n[work]\norder = [\"thickness\", \"pockets\", \"inlay\", \"radius\", "
                                           "\"slots\", \"outline\"]\nthickness_to = 6.6\n[[setups]]\nname = \"a\"\n"
                                           "operations = [\"thickness\", \"pockets\", \"radius\", \"slots\", "
                                           "\"outline\"]\nz_zero = \"blank-top\"\n"));
  expect_heights(sheet, WalkKind::thickness, {-7.5, -0.9, 0});
  expect_heights(sheet, WalkKind::pockets, {-7.5, -2.7, -1.2, -0.9});
  expect_heights(sheet, WalkKind::gluing, {0, 4.8, 6.3, 6.5, 6.6});
  EXPECT_TRUE(says(step_of(sheet, WalkKind::pockets).check, "1.8 mm"));  // 6.6 - 4.8
  EXPECT_TRUE(says(step_of(sheet, WalkKind::gluing).check, "0.1 mm under"));
}

// 0.1 stays for the sanding: the slots are 2.05 + 0.1 below the top as it is cut.
TEST(Walk, TellsHowDeepSlotsAreBeforeTheSanding) {
  const JobSheet sheet = sheet_of(board_of("heron-six", "\n[finish]\nsanding = 0.1\n"));
  EXPECT_TRUE(says(step_of(sheet, WalkKind::slots).act, "2.15 mm"));
  expect_heights(sheet, WalkKind::slots, {0, 4.25, 6.3, 6.4});
  EXPECT_TRUE(says(step_of(sheet, WalkKind::radius).act, "1.1 mm"));  // 7.5 - 6.4
}

TEST(Walk, HasAStepForLinesForEdgesByHandAndForWorkFromBelow) {
  const JobSheet lines = sheet_of(board_of("whimbrel-fretless"));
  EXPECT_FALSE(step_of(lines, WalkKind::lines).act.empty());
  EXPECT_EQ(std::ranges::count(kinds_of(lines.walk), WalkKind::wire), 0);
  const JobSheet edges = sheet_of(board_of("heron-six", "\n[edges]\nroll = 2\n"));
  EXPECT_TRUE(says(step_of(edges, WalkKind::edges).act, "2 mm"));
  const JobSheet below =
      sheet_of(board_of("heron-six",
                        "\n[[cuts]]\nname = \"channel\"\nfrom = \"below\"\nshape = \"block\"\nalong = 300\n"
                        "across = 7\nat = [200, 0]\ndepth = 2\n"));
  EXPECT_TRUE(says(step_of(below, WalkKind::from_below).act, "channel"));
  EXPECT_EQ(step_of(below, WalkKind::from_below).ticks.size(), 1U);
}

// heron-six lays its two dots of fret 12 down after all others: by place they would come fifth.
TEST(Walk, ListsPiecesInTheOrderOfTheirNames) {
  const JobSheet sheet = sheet_of(board_of("heron-six"));
  ASSERT_EQ(sheet.pieces.rows.size(), 10U);
  for (std::size_t i = 0; i < 10; ++i)
    EXPECT_EQ(std::stoi(sheet.pieces.rows[i][0].substr(sheet.pieces.rows[i][0].find('-') + 1)),
              static_cast<int>(i) + 1);
}

TEST(Clock, SaysWhatItNeedsWhereNoCutterGivesAFeed) {
  const JobSheet sheet = sheet_of(board_of("heron-six"));
  EXPECT_TRUE(sheet.clock.rows.empty());
  EXPECT_FALSE(sheet.no_clock.empty());
}

TEST(Walk, TellsASetUpThatComesLaterToFindTheZeroAgain) {
  const JobSheet sheet =
      sheet_of(board_of("heron-six",
                        "\n[[setups]]\nname = \"a\"\noperations = [\"pockets\"]\n[[setups]]\nname = \"b\"\n"
                        "operations = [\"radius\", \"slots\", \"outline\"]\nreclamp_error = 0.15\n"));
  std::vector<const WalkStep*> set_ups;
  for (const WalkStep& step : sheet.walk)
    if (step.kind == WalkKind::set_up) set_ups.push_back(&step);
  ASSERT_EQ(set_ups.size(), 2U);
  EXPECT_FALSE(says(set_ups[0]->act, "again"));
  EXPECT_TRUE(says(set_ups[1]->act, "0.15 mm"));
}

TEST(Walk, PutsFindingsAtTheirStep) {
  // A slot of 0.52 for a tang of 0.51.
  const JobSheet sheet = sheet_of(board_of("heron-six", "", "width = 0.584", "width = 0.52"));
  EXPECT_TRUE(says(step_of(sheet, WalkKind::slots).findings, "0.52 mm"));
  EXPECT_FALSE(says(sheet.findings, "0.52 mm"));
}

// 22 slots of the widths at their frets: 648 (1 - 2^(-n/12)) along, width 42.5 + (52 - 35.5) x / 648.
TEST(Clock, TimesAreLengthTimesPassesOverFeed) {
  const JobSheet sheet = sheet_of(board_of("heron-six",
                                           "\n[[cutters]]\nname = \"fine\"\nuse = [\"slot\"]\ndiameter = 0.58\n"
                                           "cutting_length = 3\nfeed = 300\npass_depth = 0.5\n"));
  double path = 0;
  for (int n = 1; n <= 22; ++n) path += 42.5 + (52 - 35.5) * (1 - std::exp2(-n / 12.0));
  const auto row = std::ranges::find_if(sheet.clock.rows, [](const auto& each) { return each[1] == "fine"; });
  ASSERT_NE(row, sheet.clock.rows.end());
  EXPECT_NEAR(std::stod((*row)[2]), 5 * path, 0.006);  // 2.05 deep in passes of 0.5
  EXPECT_NEAR(std::stod((*row)[4]), 5 * path / 300, 0.06);
  EXPECT_EQ(std::ranges::count_if(sheet.clock.rows, [](const auto& each) { return each.back() == "unknown"; }), 4);
  ASSERT_EQ(sheet.tools.rows.size(), 1U);
}

// Widths over the edges: spread there and 3.5 on each side; x of fret 12 is 324, of the end 648 (1 - 2^(-22/12)) + 10.
TEST(CaliperPage, HasWidthsLengthThicknessesSlotsAndPockets) {
  const JobSheet sheet = sheet_of(board_of("heron-six"));
  const auto value = [&](const std::string& start) {
    for (const auto& row : sheet.checks.rows)
      if (row[0].starts_with(start)) return std::stod(row[1]);
    return std::nan("");
  };
  const double end = 648 * (1 - std::exp2(-22 / 12.0)) + 10;
  EXPECT_NEAR(value("width at the nut line"), 42.5, 0.005);
  EXPECT_NEAR(value("width at fret 12"), 42.5 + 16.5 / 2, 0.006);
  EXPECT_NEAR(value("width at the body end"), 42.5 + 16.5 * end / 648, 0.005);
  EXPECT_NEAR(value("length of the board"), end + 4 + 3, 0.005);  // behind the nut: its 4 and 3
  EXPECT_NEAR(value("slot 1, width"), 0.584, 0.005);
  EXPECT_NEAR(value("slot 22, depth"), 2.05, 0.005);
  EXPECT_NEAR(value("inlay 1, pocket"), 1.5, 0.005);
  EXPECT_NEAR(value("inlay 1, thickness"), 1.7, 0.005);
  EXPECT_EQ(std::ranges::count_if(sheet.checks.rows, [](const auto& row) { return row[0].starts_with("thickness"); }),
            6);
}

}  // namespace
}  // namespace sagitta::test
