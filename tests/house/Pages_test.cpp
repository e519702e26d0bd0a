#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "Boxes.hpp"
#include "board/Keys.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta::test {
namespace {

TEST(Pages, TheTopLevelIsExactlyTheDesigns) {
  const std::set<std::string> wanted = {"CMakeLists.txt", "README.md",         "DEVELOPERS.md", "LICENSE",
                                        "CHANGELOG.md",   "CMakePresets.json", "modeler",       "export",
                                        "viewer",         "presets",           "tests"};
  std::set<std::string> found;
  for (const auto& entry : fs::directory_iterator(source())) {
    const std::string name = entry.path().filename();
    if (!name.starts_with(".") && !name.starts_with("build") && name != "compile_commands.json") found.insert(name);
  }
  EXPECT_EQ(found, wanted);
}

/// What a page holds between two lines that mark a generated part.
std::string generated(const std::string& page, const std::string& begin, const std::string& end) {
  const std::string text = text_of(source() / page);
  const std::size_t from = text.find(begin), to = text.find(end);
  if (from == std::string::npos || to == std::string::npos) return "no marks in " + page;
  return text.substr(from + begin.size(), to - from - begin.size());
}

TEST(Pages, TheKeysAreInStep) {
  EXPECT_TRUE(generated("modeler/board/KEYS.md", "<!-- keys: written by `sagitta keys --markdown` -->\n",
                        "<!-- end of keys -->") == keys_markdown())
      << "put the output of `sagitta keys --markdown` between the two marks of modeler/board/KEYS.md";
}

TEST(Pages, TheFindingsAreInStep) {
  EXPECT_TRUE(generated("modeler/findings/FINDINGS.md", "<!-- findings: written by `sagitta findings --markdown` -->\n",
                        "<!-- end of findings -->") == findings_markdown())
      << "put the output of `sagitta findings --markdown` between the two marks of modeler/findings/FINDINGS.md";
}

/// Every page for readers, from the top level down.
std::vector<fs::path> pages() {
  std::vector<fs::path> all{source() / "README.md", source() / "DEVELOPERS.md", source() / "CHANGELOG.md"};
  for (const char* folder : {"modeler", "export", "viewer", "presets", "tests"})
    for (const auto& entry : fs::recursive_directory_iterator(source() / folder))
      if (entry.path().extension() == ".md") all.push_back(entry.path());
  return all;
}

TEST(Pages, LinksLeadToFiles) {
  const std::regex link("\\]\\(([^)#:]+)(#[^)]*)?\\)");
  std::size_t seen = 0;
  for (const fs::path& page : pages()) {
    const std::string text = text_of(page);
    for (std::sregex_iterator at(text.begin(), text.end(), link), end; at != end; ++at, ++seen)
      EXPECT_TRUE(fs::exists(page.parent_path() / (*at)[1].str())) << shown(page) << ": " << (*at)[1];
  }
  EXPECT_GT(seen, 15U);
}

/// Lines of running text that follow each other; tables, lists, code and headings end a paragraph.
TEST(Pages, NoParagraphForReadersIsOverSixLines) {
  for (const fs::path& page : pages()) {
    if (page.filename() == "DEVELOPERS.md") continue;  // for contributors
    std::size_t run = 0, most = 0;
    bool code = false;
    for (const std::string& line : lines_of(page)) {
      if (line.starts_with("```")) code = !code;
      const bool text = !code && !line.empty() && line.find_first_of("|#`<!-") != 0;
      run = text ? run + 1 : 0;
      most = std::max(most, run);
    }
    EXPECT_LE(most, 6U) << shown(page);
  }
}

TEST(Pages, TheReadmeIsReadInAMinute) { EXPECT_LE(lines_of(source() / "README.md").size(), 140U); }

TEST(Pages, EveryPresetIsOnItsPage) {
  const std::string page = text_of(source() / "presets/README.md");
  for (const auto& entry : fs::directory_iterator(source() / "presets")) {
    if (entry.path().extension() != ".toml") continue;
    EXPECT_NE(page.find("| `" + entry.path().stem().string() + "` |"), std::string::npos) << entry.path();
  }
}

TEST(Pages, CiRunsTheReadmesTestCommand) {
  const std::vector<std::string> ci = lines_of(source() / ".ci/run");
  ASSERT_FALSE(ci.empty());
  EXPECT_NE(ci.back().find("ctest"), std::string::npos);
  const std::vector<std::string> readme = lines_of(source() / "README.md");
  EXPECT_NE(std::find(readme.begin(), readme.end(), ci.back()), readme.end()) << ci.back();
}

TEST(Pages, DevelopersNamesEveryBox) {
  const std::string page = text_of(source() / "DEVELOPERS.md");
  for (const auto& [name, box] : boxes())
    EXPECT_NE(page.find("`" + box.folder + "/`"), std::string::npos)
        << "DEVELOPERS.md does not say what " << name << " is";
}

TEST(Pages, NoFileIsOverFourHundredLines) {
  int seen = 0;
  for (const char* folder : {"modeler", "export", "viewer", "tests"})
    for (const fs::path& file : code_below(folder)) {
      ++seen;
      EXPECT_LE(lines_of(file).size(), 400U) << shown(file);
    }
  EXPECT_GT(seen, 30);
}

}  // namespace
}  // namespace sagitta::test
