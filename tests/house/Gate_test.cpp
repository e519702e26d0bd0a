#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "Source.hpp"

namespace sagitta::test {
namespace {

/// Solids, meshes and the texts made of them leave through export/cad/Gate.cpp, which judges them.
TEST(Gate, IsTheOnlyWayOut) {
  static const std::regex made("\\b(make_solid|make_mesh|step_text|three_mf_bytes)\\(");
  const std::set<std::string> may{
      "export/cad/Gate.cpp",           "export/cad/StepFile.cpp", "export/cad/ThreeMfFile.cpp",
      "export/package/Compare.cpp",     // weighs
      "export/package/PrintedJob.cpp",  // paints
  };
  std::size_t seen = 0;
  for (const fs::path& file : code_below("export")) {
    if (file.extension() != ".cpp") continue;
    for (const std::string& line : lines_of(file)) {
      if (!std::regex_search(line, made)) continue;
      ++seen;
      EXPECT_TRUE(may.contains(shown(file))) << shown(file) << ": " << line;
    }
  }
  EXPECT_GE(seen, 4U) << "the test no longer sees the calls";
}

}  // namespace
}  // namespace sagitta::test
