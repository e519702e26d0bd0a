#include <gtest/gtest.h>

#include <map>
#include <regex>

#include "Source.hpp"

namespace sagitta::test {
namespace {

/// "namespace::Type" of every type that the text of a header defines outside of any other.
std::vector<std::string> types_in(const std::vector<std::string>& lines) {
  static const std::regex opened("namespace ([a-z:_]+) \\{.*"),
      type("(?:struct|class|enum class) ([A-Z]\\w*)(?: [^<]*)? \\{.*");
  std::vector<std::string> found;
  std::string space;
  std::smatch match;
  for (const std::string& line : lines) {
    if (std::regex_match(line, match, opened)) space = match[1];
    if (std::regex_match(line, match, type)) found.push_back(space + "::" + match[1].str());
  }
  return found;
}

/// C++20 [basic.def.odr]: one name, one definition in the whole program; the linker does not say where two differ.
TEST(Names, AreGivenOnce) {
  std::map<std::string, std::string> home;
  for (const char* folder : {"modeler", "export", "viewer"})
    for (const fs::path& file : code_below(folder)) {
      if (file.extension() != ".hpp") continue;
      for (const std::string& name : types_in(lines_of(file))) {
        const auto [other, fresh] = home.try_emplace(name, shown(file));
        EXPECT_TRUE(fresh) << name << " is defined in " << other->second << " and in " << shown(file);
      }
    }
  EXPECT_GT(home.size(), 100U) << "the test no longer sees the types";
}

/// A file's name says what is in it, in every folder. Each program has its Main.cpp.
TEST(Names, NoTwoFilesAreCalledTheSame) {
  std::map<std::string, std::string> home;
  for (const char* folder : {"modeler", "export", "viewer"})
    for (const fs::path& file : code_below(folder)) {
      const std::string noun = shown(file.parent_path() / file.stem());
      const auto [other, fresh] = home.try_emplace(file.stem(), noun);
      EXPECT_TRUE(fresh || other->second == noun || file.stem() == "Main") << noun << " and " << other->second;
    }
  EXPECT_GT(home.size(), 200U) << "the test no longer sees the files";
}

/// What a header holds is said in one sentence before its includes.
TEST(Names, EveryHeaderBeginsWithASentence) {
  for (const char* folder : {"modeler", "export", "viewer"})
    for (const fs::path& file : code_below(folder)) {
      if (file.extension() != ".hpp") continue;
      const std::vector<std::string> lines = lines_of(file);
      ASSERT_GT(lines.size(), 3U);
      EXPECT_TRUE(lines[0] == "#pragma once" && lines[2].starts_with("/// ")) << shown(file);
    }
}

TEST(Names, TheTestSeesATypeInItsNamespace) {
  const std::vector<std::string> lines{"namespace a {", "struct One {",     "};",
                                       "struct Two;",   "namespace b::c {", "class Two final : Base {"};
  EXPECT_EQ(types_in(lines), (std::vector<std::string>{"a::One", "b::c::Two"}));
}

}  // namespace
}  // namespace sagitta::test
