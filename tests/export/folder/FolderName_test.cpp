#include <gtest/gtest.h>

#include "export/CommandLine.hpp"

namespace sagitta::test {
namespace {

/// The folder's name does not get into its files: the same board gives the same bytes in each of ten processes, in
/// folders with spaces and with letters that are not ASCII.
TEST(FolderName, MayHoldSpacesAndAnyLetterAndChangesNoByte) {
  const ScratchFolder scratch;
  std::string first;
  for (int i = 0; i < 10; ++i) {
    const std::string name = "Brett für Ägir, Nr " + std::to_string(i) + " – 葦";
    const fs::path to = scratch / name;
    const Outcome made = sagitta("export '" + preset_path("reed-tenor").string() + "' --to '" + to.string() +
                                 "' --only step --stage board");
    ASSERT_EQ(made.code, 0) << made.err;
    const std::string bytes = bytes_of(to / "board.step");
    EXPECT_GT(bytes.size(), 1000U);
    if (first.empty()) first = bytes;
    EXPECT_TRUE(bytes == first) << name;
  }
}

}  // namespace
}  // namespace sagitta::test
