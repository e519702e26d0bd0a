// A folder's bytes do not depend on how many threads made it: everything that is exported of two boards, one of them
// with a drawing, on one thread, on two and on eight.

#include <gtest/gtest.h>

#include <map>

#include "export/CommandLine.hpp"
#include "folder/Folder.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/HandOff.hpp"
#include "plane/ParallelFor.hpp"

namespace sagitta::test {
namespace {

/// Sets the number of threads and puts the old one back.
struct Threads {
  explicit Threads(int count) { set_parallel_threads(count); }
  ~Threads() { set_parallel_threads(before); }
  int before = parallel_threads();
};

/// Every file of the folder that a board is exported to: path, bytes.
std::map<std::string, std::string> exported(const std::string& preset, int count) {
  const Threads threads(count);
  const ScratchFolder scratch;
  const PreparedBoard board = std::get<PreparedBoard>(prepare(preset_path(preset).string()));
  ExportOrder order{stages_of(board.board()), assemblies_of(board), {}};
  order.kinds = {true, true, true, true, true, true, true, true, true};
  Folder folder(scratch / "job", false);
  write_hand_off(board, board_findings(board), order, folder, {});
  folder.keep();
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(scratch / "job"))
    if (entry.is_regular_file()) files[fs::relative(entry.path(), scratch / "job").string()] = bytes_of(entry.path());
  return files;
}

class FolderMadeOf : public testing::TestWithParam<const char*> {};

TEST_P(FolderMadeOf, HasTheSameBytesOnOneTwoAndEightThreads) {
  const auto alone = exported(GetParam(), 1);
  EXPECT_GT(alone.size(), 40U);
  for (const int count : {2, 8}) {
    const auto shared = exported(GetParam(), count);
    EXPECT_EQ(shared.size(), alone.size());
    for (const auto& [file, bytes] : alone) {
      const auto found = shared.find(file);
      ASSERT_NE(found, shared.end()) << file;
      EXPECT_TRUE(found->second == bytes) << file << " on " << count << " threads";
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Threads, FolderMadeOf, testing::Values("heron-six", "egret-figure"));

}  // namespace
}  // namespace sagitta::test
