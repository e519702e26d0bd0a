#include "jobsheet/JobPdf.hpp"

#include <gtest/gtest.h>

#include "Places.hpp"
#include "drawing/Paper.hpp"
#include "export/CommandLine.hpp"
#include "export/PageWords.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "input/Presets.hpp"

/// The job sheet on paper, as poppler reads it: whatever the sheet's value holds is there, and can be read.

namespace sagitta::test {
namespace {

/// Two set-ups with tape, a feed, and a sheet of shell that has room for two or three dots of 6 mm.
constexpr const char* busy = R"(
[[setups]]
name = "inlay side"
operations = ["pockets", "inlay"]
zero = "corner"
z_zero = "blank-top"
[[setups]]
name = "shape and trim"
operations = ["outline", "radius", "slots"]
z_zero = "bed"
tape = 0.15
[[cutters]]
name = "slot cutter"
use = ["slot"]
diameter = 0.58
cutting_length = 3
feed = 300
pass_depth = 0.5
[[sheets]]
material = "shell"
length = 20
width = 12
thickness = 2
margin = 1
clamp = 1
)";

JobSheet sheet_of(const std::string& preset, const std::string& more = "") {
  const ScratchFolder scratch;
  copy_drawings(scratch.path());
  write_file(scratch / "a.toml", bytes_of(preset_path(preset)) + more);
  const PreparedBoard ready = std::get<PreparedBoard>(prepare((scratch / "a.toml").string()));
  return job_sheet(ready, board_findings(ready));
}

std::string one_spaced(const std::string& text) {
  std::istringstream words(text);
  std::string all;
  for (std::string word; words >> word;) all += (all.empty() ? "" : " ") + word;
  return all;
}

/// A sheet's PDF and its text in the order of the file; white space is one space.
struct OnPaper {
  ScratchFolder scratch;
  std::string reading;

  OnPaper(const JobSheet& sheet, const std::string& paper) {
    write_file(file(), job_book(sheet, {}, *paper_named(paper)).bytes());
    reading = one_spaced(shell("pdftotext -raw '" + file().string() + "' -").out);
  }
  fs::path file() const { return scratch / "sheet.pdf"; }
  bool says(const std::string& words) const { return reading.find(one_spaced(words)) != std::string::npos; }
  bool has_row(const std::vector<std::string>& cells) const {
    std::string row;
    for (const std::string& cell : cells) row += cell + " ";
    return says(row);
  }
};

void expect_all_of(const JobSheet& sheet, const OnPaper& paper) {
  EXPECT_TRUE(paper.says(sheet.title));
  EXPECT_TRUE(paper.says("All lengths in " + sheet.units));
  EXPECT_TRUE(paper.says(sheet.no_clock));
  for (const auto* list : {&sheet.findings, &sheet.cautions, &sheet.no_room})
    for (const std::string& each : *list) EXPECT_TRUE(paper.says(each)) << each;
  for (const JobSetup& setup : sheet.setups) {
    EXPECT_TRUE(paper.says(setup.title)) << setup.title;
    EXPECT_TRUE(paper.says("setups/" + setup.folder)) << setup.folder;
    for (const std::string& note : setup.notes) EXPECT_TRUE(paper.says(note)) << note;
    for (const JobLevel& level : setup.levels) EXPECT_TRUE(paper.says(level.what + ", " + level.z)) << level.what;
    for (const JobStep& step : setup.steps) {
      for (const auto& [name, what] : step.facts) EXPECT_TRUE(paper.says(what)) << what;
      for (const std::string& tick : step.ticks) EXPECT_TRUE(paper.says(tick)) << tick;
      for (const std::string& stage : {step.before, step.after}) EXPECT_TRUE(paper.says(stage)) << stage;
    }
  }
  std::size_t number = 0;
  for (const WalkStep& step : sheet.walk) {
    EXPECT_TRUE(paper.says(std::to_string(++number) + ". " + step.title)) << step.title;
    for (const JobLevel& level : step.levels) EXPECT_TRUE(paper.says(level.what + ", " + level.z)) << level.what;
    for (const auto* list : {&step.need, &step.act, &step.check, &step.wrong, &step.findings, &step.ticks})
      for (const std::string& each : *list) EXPECT_TRUE(paper.says(each)) << each;
  }
  for (const JobTable* table : {&sheet.facts, &sheet.tools, &sheet.clock, &sheet.material})
    for (const auto& row : table->rows)
      for (const std::string& cell : row) EXPECT_TRUE(paper.says(cell)) << cell;
  for (const JobTable* table : {&sheet.pieces, &sheet.sheets, &sheet.wire})
    for (const auto& row : table->rows) EXPECT_TRUE(paper.has_row(row)) << row[0] << " " << row[1];
  for (const auto& row : sheet.checks.rows) EXPECT_TRUE(paper.says(row[1])) << row[0];
}

class JobPdfOn : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Papers, JobPdfOn, testing::Values("A4", "A3", "Letter", "Tabloid"));

TEST_P(JobPdfOn, SaysEverythingThatTheSheetHolds) {
  for (const char* preset : {"heron-six", "numerals", "avocet-bound", "curlew-seven-fan", "tern-inch-left"}) {
    SCOPED_TRACE(preset);
    const JobSheet sheet = sheet_of(preset);
    EXPECT_GT(sheet.cautions.size(), 2U);
    EXPECT_GT(sheet.wire.rows.size(), 10U);
    expect_all_of(sheet, OnPaper(sheet, GetParam()));
  }
}

TEST_P(JobPdfOn, SaysEverythingOfTwoSetUpsAndNamesPiecesWithoutASheet) {
  const JobSheet sheet = sheet_of("heron-six", busy);
  ASSERT_EQ(sheet.setups.size(), 2U);
  EXPECT_EQ(sheet.setups[1].levels.front().what, "bed");
  const OnPaper paper(sheet, GetParam());
  expect_all_of(sheet, paper);
  // 20 x 12 mm has no room for ten dots of 6 mm: ten times pi 3^2 is 283 mm2 of its 240.
  EXPECT_GT(sheet.no_room.size(), 1U);
  EXPECT_LT(sheet.no_room.size(), 10U);
  for (const auto& row : sheet.pieces.rows)
    EXPECT_EQ(row.back() == "none",
              std::any_of(sheet.no_room.begin(), sheet.no_room.end(),
                          [&](const std::string& each) { return each.starts_with(row.front() + ":"); }))
        << row.front();
  EXPECT_TRUE(paper.says("estimate: ")) << "a time is called what it is";
}

/// A sheet that is longer and wider than any board's: names without a space, hundreds of rows.
JobSheet crowded() {
  JobSheet sheet = sheet_of("heron-six", busy);
  const std::string endless(400, 'n');
  sheet.title = "A board for " + endless;
  sheet.setups[0].title = "Set-up 1: " + endless;
  sheet.setups[0].folder = endless;
  sheet.setups[0].steps[0].facts.emplace_back("cutter", endless + ": 3 flat");
  sheet.setups[0].steps[0].ticks.push_back("pocket at " + endless);
  for (int i = 0; i < 300; ++i) {
    const std::string number = std::to_string(i);
    sheet.setups[0].steps[1].ticks.push_back("reed-" + number + " at fret 12");
    sheet.pieces.rows.push_back({"reed-" + number, "12", "reed", "1.00", "2.00", "1.70", "1.50", "none"});
    sheet.findings.push_back("look, reed-" + number + ": the piece is thin where it lies farthest out");
  }
  sheet.pieces.rows.push_back({endless, "12", "reed", "1.00", "2.00", "1.70", "1.50", "none"});
  return sheet;
}

TEST_P(JobPdfOn, HoldsALongSheetOnManyPages) {
  const JobSheet sheet = crowded();
  const OnPaper paper(sheet, GetParam());
  const std::vector<Page> pages = pages_of(paper.file());
  ASSERT_GT(pages.size(), 4U);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    expect_readable(pages[i], "page " + std::to_string(i + 1));
    EXPECT_TRUE(paper.says("Page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())));
    // Where rows of pieces stand, their headings stand above them, on every page again.
    const auto count = [&](const std::string& start) {
      return std::count_if(pages[i].words.begin(), pages[i].words.end(),
                           [&](const Word& word) { return word.text == start; });
    };
    if (count("reed") > 0) {
      EXPECT_GT(count("material"), 0) << "page " << i + 1;
    }
  }
  for (int i = 0; i < 300; ++i) {
    EXPECT_TRUE(paper.says("reed-" + std::to_string(i) + " at fret 12"));
    EXPECT_TRUE(paper.has_row({"reed-" + std::to_string(i), "12", "reed"}));
  }
}

/// A board's sheet as an export prints it, with the pictures of its stages.
fs::path printed_sheet(const fs::path& board, const fs::path& to, const std::string& more) {
  const Outcome made = sagitta("export '" + board.string() + "' --only pdf " + more + " --to '" + to.string() + "'");
  if (made.code != 0) throw std::runtime_error(made.err);
  return to / "job-sheet.pdf";
}

/// How far a page's two columns are filled with words, from the head down to the margin of 12 mm: 0 to 1.
double filled(const Page& page) {
  constexpr double mm = 72 / 25.4, margin = 12 * mm, head = 13 * mm;
  double low[2] = {margin + head, margin + head};
  for (const Word& word : page.words) {
    double& own = low[(word.left + word.right) / 2 < page.width / 2 ? 0 : 1];
    own = std::max(own, std::min(word.bottom, page.height - margin));
  }
  const double high = page.height - 2 * margin - head;
  return ((low[0] - margin - head) / high + (low[1] - margin - head) / high) / 2;
}

// Two thirds of every page, the last one too. Measured on the finished sheets: the emptiest page is filled to 0.72.
TEST(JobPdf, LeavesNoPageHalfEmpty) {
  std::vector<fs::path> boards{fs::path(places::tests()) / "export" / "jobsheet" / "every-feature.toml"};
  for (const Preset& preset : presets()) boards.push_back(preset_path(std::string(preset.name)));
  const ScratchFolder scratch;
  copy_drawings(scratch.path());
  for (const fs::path& board : boards) {
    const std::string name = board.stem().string();
    write_file(scratch / board.filename(), bytes_of(board));
    const std::vector<Page> pages = pages_of(printed_sheet(scratch / board.filename(), scratch / name, ""));
    EXPECT_LE(pages.size(), 10U) << name;
    for (std::size_t i = 0; i < pages.size(); ++i) EXPECT_GT(filled(pages[i]), 0.66) << name << " page " << i + 1;
  }
}

// On none of its papers does a word leave the page or lie on another.
TEST(JobPdf, HoldsABoardWithEveryFeature) {
  const ScratchFolder scratch;
  copy_drawings(scratch.path());
  const fs::path board = fs::path(places::tests()) / "export" / "jobsheet" / "every-feature.toml";
  write_file(scratch / "a.toml", bytes_of(board));
  for (const char* more : {"--paper A4", "--paper Letter --units in"}) {
    const fs::path sheet = printed_sheet(scratch / "a.toml", scratch / (std::string(more).substr(8, 2)), more);
    for (const auto& entry : fs::recursive_directory_iterator(sheet.parent_path()))
      if (entry.path().extension() == ".pdf")
        for (const Page& page : pages_of(entry.path()))
          expect_readable(page, entry.path().filename().string() + " " + more);
  }
}

TEST(JobPdf, GivesTheSameBytesEveryTime) {
  const JobSheet sheet = sheet_of("numerals", busy);
  const std::string first = job_book(sheet, {}, *paper_named("A4")).bytes();
  EXPECT_TRUE(first == job_book(sheet_of("numerals", busy), {}, *paper_named("A4")).bytes());
  EXPECT_FALSE(first == job_book(sheet_of("numerals"), {}, *paper_named("A4")).bytes());
}

TEST(JobPdf, GoesIntoTheFolderWithEachStagesPictureOnce) {
  const ScratchFolder scratch;
  const std::string to = scratch / "out";
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --only pdf --to '" + to + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  const std::string manifest = bytes_of(to + "/manifest.json");
  EXPECT_NE(manifest.find("\"job-sheet.pdf\""), std::string::npos);
  // blank, pocketed, radiused, slotted, board: eight pictures of five stages, and the board on the first page.
  std::istringstream list(shell("pdfimages -list '" + to + "/job-sheet.pdf'").out);
  std::set<std::string> objects;
  std::size_t images = 0;
  for (std::string line; std::getline(list, line);) {
    std::istringstream words(line);
    std::vector<std::string> cells;
    for (std::string cell; words >> cell;) cells.push_back(cell);
    if (cells.size() < 12 || cells[2] != "image") continue;
    ++images;
    objects.insert(cells[10]);
    EXPECT_GT(std::stoi(cells[12]), 200) << "dots an inch: " << line;
  }
  EXPECT_EQ(images, 9U);
  EXPECT_EQ(objects.size(), 5U);
}

TEST(JobPdf, RefusesAPictureThatIsNone) {
  const JobSheet sheet = sheet_of("heron-six");
  EXPECT_THROW(job_book(sheet, {{"blank", "no picture"}}, *paper_named("A4")).bytes(), std::runtime_error);
}

}  // namespace
}  // namespace sagitta::test
