#include <gtest/gtest.h>

#include <regex>

#include "Source.hpp"

namespace sagitta::test {
namespace {

// What is exported may be a part of the job: its files hold what is selected, which the prepared board tells, not the
// layout and the inlays, which stay whole.
const std::regex past_the_selection(
    R"(layout(_|\(\))?\.(slots|markers|side_dots)\b|inlays(_|\(\))\.(pieces|pockets)\b)");

TEST(Selection, IsAskedByWhatIsExported) {
  const std::set<std::string> of_whole_boards{
      "export/package/Compare.cpp",       // two boards, no part of them
      "export/drawing/DrawingBlank.cpp",  // tabs keep clear of every side dot
      "export/tables/FretTable.cpp",      // lists every fret, with the pieces of its slot
  };
  int seen = 0;
  for (const fs::path& file : code_below("export")) {
    const std::string name = shown(file);
    for (const std::string& line : lines_of(file)) {
      const bool past = std::regex_search(line, past_the_selection);
      seen += past;
      EXPECT_FALSE(past && !of_whole_boards.contains(name)) << name << ": " << line;
    }
  }
  EXPECT_GT(seen, 0) << "the test no longer sees the layout";
}

TEST(Selection, TheTestSeesALoopOverTheLayout) {
  EXPECT_TRUE(std::regex_search("for (const Slot& slot : ready.layout().slots)", past_the_selection));
  EXPECT_TRUE(std::regex_search("  nest(inlays_.pieces, ..)", past_the_selection));
  EXPECT_FALSE(std::regex_search("for (const Slot& slot : ready.slots())", past_the_selection));
}

}  // namespace
}  // namespace sagitta::test
