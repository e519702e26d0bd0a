#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>

#include "files/ScratchFolder.hpp"
#include "files/WriteFile.hpp"

namespace sagitta::test {
namespace {

mode_t mode_of(const fs::path& path) {
  struct stat found {};
  EXPECT_EQ(::stat(path.c_str(), &found), 0);
  return found.st_mode & 07777;
}

/// Files may not grow larger than this meanwhile, bytes; the system then refuses as it does on a full disk.
class SizeLimit {
 public:
  explicit SizeLimit(rlim_t most) {
    signal(SIGXFSZ, SIG_IGN);
    getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit limit{most, before_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &limit);
  }
  ~SizeLimit() { setrlimit(RLIMIT_FSIZE, &before_); }

 private:
  rlimit before_{};
};

TEST(MakeFile, WritesEveryByteUnderTheUsersMask) {
  const ScratchFolder scratch;
  const mode_t mask = umask(027);
  EXPECT_EQ(make_file(scratch / "a", std::string("a\0b", 3)), 0);
  umask(mask);
  EXPECT_EQ(bytes_of(scratch / "a"), std::string("a\0b", 3));
  EXPECT_EQ(mode_of(scratch / "a"), 0640U);
  EXPECT_EQ(listing(scratch.path()), "a\n");
}

TEST(MakeFile, OverwritesNothing) {
  const ScratchFolder scratch;
  write_file(scratch / "a", "old");
  EXPECT_EQ(make_file(scratch / "a", "new"), EEXIST);
  EXPECT_EQ(bytes_of(scratch / "a"), "old");
  EXPECT_EQ(make_file(scratch / "none/a", "new"), ENOENT);
  EXPECT_EQ(listing(scratch.path()), "a\n");
}

TEST(MakeFile, LeavesNothingOfAFileThatDoesNotFit) {
  const ScratchFolder scratch;
  const SizeLimit limit(1000);
  EXPECT_EQ(make_file(scratch / "a", std::string(1001, 'x')), EFBIG);
  EXPECT_EQ(listing(scratch.path()), "");
  EXPECT_EQ(make_file(scratch / "a", std::string(1000, 'x')), 0);
}

TEST(ReplaceFile, KeepsTheModeAndFollowsLinks) {
  const ScratchFolder scratch;
  write_file(scratch / "a", "old");
  fs::permissions(scratch / "a", fs::perms(0640));
  fs::create_symlink(scratch / "a", scratch / "link");
  EXPECT_EQ(replace_file(scratch / "link", "new"), 0);
  EXPECT_TRUE(fs::is_symlink(scratch / "link"));
  EXPECT_EQ(bytes_of(scratch / "a"), "new");
  EXPECT_EQ(mode_of(scratch / "a"), 0640U);
  EXPECT_EQ(replace_file(scratch / "b", "made"), 0);
  EXPECT_EQ(bytes_of(scratch / "b"), "made");
  EXPECT_EQ(listing(scratch.path()), "a\nb\nlink\n");
}

TEST(ReplaceFile, KeepsTheOldBytesWhenTheNewOnesDoNotFit) {
  const ScratchFolder scratch;
  write_file(scratch / "a", "old");
  const SizeLimit limit(1000);
  EXPECT_EQ(replace_file(scratch / "a", std::string(1001, 'x')), EFBIG);
  EXPECT_EQ(bytes_of(scratch / "a"), "old");
  EXPECT_EQ(listing(scratch.path()), "a\n");
}

// Root may write what is read-only; it is left alone all the same.
TEST(ReplaceFile, LeavesAlone) {
  const ScratchFolder scratch;
  write_file(scratch / "locked", "old");
  fs::permissions(scratch / "locked", fs::perms(0444));
  EXPECT_TRUE(is_protected(scratch / "locked"));
  EXPECT_EQ(replace_file(scratch / "locked", "new"), EACCES);
  EXPECT_EQ(bytes_of(scratch / "locked"), "old");
  ASSERT_EQ(mkfifo((scratch / "pipe").c_str(), 0600), 0);
  EXPECT_EQ(replace_file(scratch / "pipe", "new"), EOPNOTSUPP);
  EXPECT_EQ(fs::status(scratch / "pipe").type(), fs::file_type::fifo);
  EXPECT_EQ(replace_file(scratch.path(), "new"), EISDIR);
  EXPECT_EQ(listing(scratch.path()), "locked\npipe\n");
  EXPECT_FALSE(is_protected(scratch / "nothing"));
}

}  // namespace
}  // namespace sagitta::test
