// What the manual page and the shells are told of the command line, against what the program takes.

#include <gtest/gtest.h>

#include "cad/PieceBodies.hpp"
#include "drawing/JobPart.hpp"
#include "drawing/Paper.hpp"
#include "export/CommandLine.hpp"
#include "manual/ManPage.hpp"
#include "package/Repeat.hpp"
#include "plan/Stage.hpp"
#include "program/Command.hpp"
#include "program/ProgramManual.hpp"

namespace sagitta::test {
namespace {

TEST(Manual, EveryWordThatIsOfferedIsTaken) {
  const Offers offers = program_offers();
  ExportKinds kinds;
  for (const std::string& word : offers.at("--only").words) EXPECT_TRUE(add_kind(kinds, word)) << word;
  for (const std::string& word : offers.at("--stage").words)
    EXPECT_TRUE(stage_named(word) || assembly_named(word)) << word;
  for (const std::string& word : offers.at("--operation").words) EXPECT_NO_THROW(operation_named(word)) << word;
  EXPECT_EQ(offers.at("--before").words, offers.at("--operation").words);
  for (const std::string& word : offers.at("--paper").words) EXPECT_TRUE(paper_named(word)) << word;
  for (const char* option : {"--units", "--step", "--step-units"})
    for (const std::string& word : offers.at(option).words) {
      const Outcome made = sagitta("export no-such-board.toml --to no-such-folder " + std::string(option) + " " + word);
      EXPECT_EQ(made.err.find(option), std::string::npos) << made.err;
    }
}

TEST(Manual, EveryOfferIsForSomethingThatTheProgramHas) {
  const std::string page = sagitta("--manual bash").out + sagitta("--manual zsh").out;
  for (const auto& [name, offer] : program_offers()) {
    const std::string last = name.substr(name.find(' ') + 1);
    EXPECT_NE(page.find(last), std::string::npos) << name;
  }
}

TEST(Manual, ThePageOfTheCommandLineHasTheExitCodes) {
  const std::string page = bytes_of(fs::path(places::source()) / "export/program/COMMANDS.md");
  for (const ExitMeaning& exit : exit_meanings)
    EXPECT_NE(page.find("| " + std::to_string(exit.code) + " | " + exit.meaning + " |"), std::string::npos)
        << exit.code;
}

// groff_man(7), mandoc's man(7): a line that begins with a dot or an apostrophe is a request, a backslash an escape.
TEST(Manual, TextCannotBecomeARequest) {
  ProgramTable table;
  table.self = {
      "tool", ".TH of a 'quoted' back\\slash", {}, {{{"--x-y"}, "", "'so' begins this; -1", "", {}, false, false}}};
  table.version = "1", table.date = "2026-01-01";
  const std::string page = man_page(table);
  EXPECT_NE(page.find("\n\\&.TH of a 'quoted' back\\eslash.\n"), std::string::npos) << page;
  EXPECT_NE(page.find("\n\\&'so' begins this; \\-1.\n"), std::string::npos) << page;
  EXPECT_NE(page.find("\\fB\\-\\-x\\-y\\fR"), std::string::npos) << page;
}

TEST(Manual, LinesAreShortEnoughToRead) {
  std::istringstream page(sagitta("--manual man").out);
  std::size_t lines = 0;
  for (std::string line; std::getline(page, line); ++lines) EXPECT_LE(line.size(), 80U) << line;
  EXPECT_GT(lines, 200U);
}

TEST(Manual, AFormThatThereIsNotIsWrongUsage) {
  EXPECT_EQ(sagitta("--manual troff").code, 2);
  EXPECT_EQ(sagitta("--manual").code, 2);
}

}  // namespace
}  // namespace sagitta::test
