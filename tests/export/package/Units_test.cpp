/// One unit a paper: the text of every page and of the HTML sheet of every preset, told in mm and in inches, names no
/// length, area or temperature in another unit, and its fret places are those of the formula.

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>

#include "board/Length.hpp"
#include "drawing/Paper.hpp"
#include "export/CommandLine.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "input/Presets.hpp"
#include "jobsheet/JobHtml.hpp"
#include "jobsheet/JobPdf.hpp"
#include "package/DrawingFiles.hpp"
#include "package/Report.hpp"
#include "rules/BoardUnits.hpp"

namespace sagitta::test {
namespace {

PreparedBoard told(const std::string& preset, Units units) {
  BoardFile file = read_board(preset_path(preset).string());
  file.board = told_in(std::move(file.board), units);
  return std::get<PreparedBoard>(prepare(file));
}

std::string text_of(const PdfBook& book) {
  const ScratchFolder scratch;
  write_file(scratch / "page.pdf", book.bytes());
  return shell("pdftotext -layout '" + (scratch / "page.pdf").string() + "' -").out;
}

/// The sheet's text without its pictures and marks.
std::string text_of_html(std::string html) {
  html = std::regex_replace(html, std::regex("<style>[^<]*</style>"), "");
  for (std::size_t at = html.find("base64,"); at != std::string::npos; at = html.find("base64,", at)) {
    const std::size_t end = html.find('"', at);
    html.erase(at, end - at);
  }
  return std::regex_replace(html, std::regex("<[^>]*>"), " ");
}

/// Numbers with a unit that is not the page's. The template's check scales are rulers in both units: their labels stand
/// alone.
std::vector<std::string> in_other_units(const std::string& text, Units units) {
  const std::regex other(
      units == Units::mm
          ? R"([0-9] ?(in[23]?\b(?! (the|a|its|it|one|by|every|two|all|their|this|place|[0-9]+ pass))|inch|degrees Fahrenheit|oz\b|lbf\b))"
          : R"([0-9] ?(mm[23]?\b|millimet|degrees Celsius|g\b|N\b)|in millimet)");
  std::vector<std::string> found;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    const std::string bare = std::regex_replace(line, std::regex("100 mm|4 in"), "");
    if (std::regex_search(bare, match, other)) found.push_back(line);
  }
  return found;
}

class OneUnit : public testing::TestWithParam<std::tuple<std::string, Units>> {};
INSTANTIATE_TEST_SUITE_P(Presets, OneUnit,
                         testing::Combine(testing::ValuesIn([] {
                                            std::vector<std::string> names;
                                            for (const Preset& preset : presets()) names.emplace_back(preset.name);
                                            return names;
                                          }()),
                                          testing::Values(Units::mm, Units::inch)),
                         [](const auto& one) {
                           std::string name = std::get<0>(one.param);
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name + (std::get<1>(one.param) == Units::mm ? "_mm" : "_in");
                         });

TEST_P(OneUnit, OnEveryPage) {
  const auto& [preset, units] = GetParam();
  const PreparedBoard ready = told(preset, units);
  const JobSheet sheet = job_sheet(ready, board_findings(ready));
  std::vector<PrintedBook> books = printed_books(ready, {});
  books.push_back({"job-sheet.pdf", job_book(sheet, {}, *paper_named("A4"))});
  for (const PrintedBook& printed : books)
    for (const std::string& line : in_other_units(text_of(printed.book), units))
      ADD_FAILURE() << preset << ", " << printed.file << ": " << line;
  for (const std::string& line : in_other_units(finding_text(board_findings(ready)), units))
    ADD_FAILURE() << preset << ", findings: " << line;
  for (const std::string& line : in_other_units(text_of_html(job_html(sheet, {})), units))
    ADD_FAILURE() << preset << ", job-sheet.html: " << line;
}

// d(n) = L (1 - 2^(-n/12)): what the caliper page says of a slot differs by its rounding at most.
TEST_P(OneUnit, CaliperPagesAreTheFormulasWithinTheirRounding) {
  const auto& [preset, units] = GetParam();
  const PreparedBoard ready = told(preset, units);
  const Scale& scale = ready.board().scale;
  if (!scale.length || !scale.cents.empty()) return;
  const double half_step = units == Units::mm ? 0.005 : 0.0005;
  int looked_at = 0;
  for (const auto& row : job_sheet(ready, {}).checks.rows) {
    int fret = 0;
    if (std::sscanf(row[0].c_str(), "nut line to the middle of slot %d", &fret) != 1) continue;
    const double mm = *scale.length * (1 - std::exp2(-1.0 * fret / scale.steps_per_octave.value_or(12)));
    EXPECT_NEAR(std::stod(row[1]), mm / (units == Units::mm ? 1 : 25.4), half_step * 1.0001) << row[0];
    ++looked_at;
  }
  EXPECT_GT(looked_at, 1);
}

/// The boards that tests are made of, below tests/cases.
std::vector<fs::path> case_boards() {
  std::vector<fs::path> boards;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(places::source()) / "tests" / "cases"))
    if (entry.path().extension() == ".toml") boards.push_back(entry.path());
  std::sort(boards.begin(), boards.end());
  return boards;
}

// What `check` prints of a board in one unit: problems, notes of the plan, findings.
TEST(OneUnit, InEveryMessageOfTheTestBoards) {
  int looked_at = 0;
  for (const fs::path& path : case_boards())
    for (const Units units : {Units::mm, Units::inch}) {
      BoardFile file = read_board(path.string());
      if (!file.sound()) continue;
      file.board = told_in(std::move(file.board), units);
      const auto prepared = prepare(file);
      std::string text = problem_text(problems_of(prepared));
      if (const auto* ready = std::get_if<PreparedBoard>(&prepared)) text += finding_text(board_findings(*ready));
      for (const std::string& line : in_other_units(text, units)) ADD_FAILURE() << path.filename() << ": " << line;
      ++looked_at;
    }
  EXPECT_GT(looked_at, 100);
}

/// Texts for people in an answer of `check --json`.
void texts_in(const nlohmann::json& answer, std::string& text) {
  for (const auto& [name, value] : answer.items())
    if (value.is_structured())
      texts_in(value, text);
    else if (value.is_string() &&
             (name == "message" || name == "hint" || name == "suggestion" || name == "cost" || name == "feature"))
      text += value.get<std::string>() + "\n";
}

// What the program itself prints: `check` with its notes, the texts of `check --json`, and what `export` says.
TEST_P(OneUnit, InWhatTheProgramPrints) {
  const auto& [preset, units] = GetParam();
  const ScratchFolder scratch;
  const std::string board = "'" + preset_path(preset).string() + "' --units " + (units == Units::mm ? "mm" : "in");
  const Outcome checked = sagitta("check " + board + " --notes"), json = sagitta("check " + board + " --json");
  const Outcome made = sagitta("export " + board + " --only csv --verbose --to '" + (scratch / "out").string() + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  std::string texts;
  texts_in(nlohmann::json::parse(json.out), texts);
  EXPECT_GT(texts.size(), 100U);
  for (const std::string& printed : {checked.out, texts, made.out, made.err})
    for (const std::string& line : in_other_units(printed, units)) ADD_FAILURE() << preset << ": " << line;
}

TEST(OneUnit, LimitsKeepTheirLength) {
  Board board;
  board.limits["thin-edge"] = 2.54;
  board.limits["placement-sensitive"] = 3;  // cents
  const Board inches = told_in(board, Units::inch);
  EXPECT_NEAR(inches.limits.at("thin-edge"), 0.1, 1e-15);
  EXPECT_EQ(inches.limits.at("placement-sensitive"), 3);
  EXPECT_EQ(told_in(inches, Units::mm).limits.at("thin-edge"), 2.54);
}

}  // namespace
}  // namespace sagitta::test
