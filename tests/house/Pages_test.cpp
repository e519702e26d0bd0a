#include <gtest/gtest.h>

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

/// What README.md holds between two lines that mark a generated part.
std::string generated(const std::string& begin, const std::string& end) {
  const std::string readme = text_of(source() / "README.md");
  const std::size_t from = readme.find(begin), to = readme.find(end);
  if (from == std::string::npos || to == std::string::npos) return "no marks in README.md";
  return readme.substr(from + begin.size(), to - from - begin.size());
}

TEST(Pages, TheReadmesReferenceIsInStep) {
  EXPECT_EQ(generated("<!-- keys: written by `sagitta keys --markdown` -->\n", "<!-- end of keys -->"), keys_markdown())
      << "put the output of `sagitta keys --markdown` between the two marks of README.md";
}

TEST(Pages, TheReadmesFindingsAreInStep) {
  EXPECT_EQ(generated("<!-- findings: written by `sagitta findings --markdown` -->\n", "<!-- end of findings -->"),
            findings_markdown())
      << "put the output of `sagitta findings --markdown` between the two marks of README.md";
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
