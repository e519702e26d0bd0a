#include "export/Folder.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include "CommandLine.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;
using test::bytes_of;
using test::listing;
using test::ScratchFolder;
using test::write_file;

std::string error_of(const fs::path& path, bool replace, const std::vector<fs::path>& sources = {}) try {
  Folder folder(path, replace, sources);
  folder.add("a.step", "a");
  folder.keep();
  return "";
} catch (const FolderError& error) {
  return error.what();
}

TEST(Folder, AppearsOnlyWhenKept) {
  const ScratchFolder scratch;
  Folder folder(scratch / "out", false);
  folder.add("a.step", "wood");
  EXPECT_FALSE(fs::exists(scratch / "out"));
  folder.keep();
  EXPECT_EQ(listing(scratch.path()), "out\nout/a.step\n");
  EXPECT_EQ(bytes_of(scratch / "out/a.step"), "wood");
}

TEST(Folder, LeavesNothingBehindWhenGivenUp) {
  const ScratchFolder scratch;
  {
    Folder folder(scratch / "new/deep/out", false);
    folder.add("a.step", "wood");
  }
  EXPECT_EQ(listing(scratch.path()), "");
}

TEST(Folder, TakesAnEmptyFolderAndMissingParents) {
  const ScratchFolder scratch;
  fs::create_directory(scratch / "empty");
  EXPECT_EQ(error_of(scratch / "empty", false), "");
  EXPECT_EQ(error_of(scratch / "new/deep/out/", false), "");
  EXPECT_EQ(listing(scratch.path()), "empty\nempty/a.step\nnew\nnew/deep\nnew/deep/out\nnew/deep/out/a.step\n");
}

TEST(Folder, LeavesAFullFolderAlone) {
  const ScratchFolder scratch;
  fs::create_directory(scratch / "full");
  write_file(scratch / "full/mine", "keep me");
  EXPECT_NE(error_of(scratch / "full", false).find("not empty"), std::string::npos);
  EXPECT_EQ(listing(scratch.path()), "full\nfull/mine\n");
  EXPECT_EQ(bytes_of(scratch / "full/mine"), "keep me");
}

TEST(Folder, ReplacesAFullFolderWholly) {
  const ScratchFolder scratch;
  fs::create_directory(scratch / "full");
  write_file(scratch / "full/old", "old");
  Folder folder(scratch / "full", true);
  folder.add("a.step", "new");
  EXPECT_EQ(bytes_of(scratch / "full/old"), "old") << "the old folder stays until the new one is complete";
  folder.keep();
  EXPECT_EQ(listing(scratch.path()), "full\nfull/a.step\n");
}

TEST(Folder, DoesNotReplaceWhatWouldHurt) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", "format = 1");
  const std::string error = error_of(scratch.path(), true, {scratch / "board.toml"});
  EXPECT_NE(error.find("board.toml"), std::string::npos) << error;
  EXPECT_NE(error_of(fs::current_path(), true), "");
  EXPECT_NE(error_of("/", true), "");
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
}

TEST(Folder, FollowsALinkToItsFolder) {
  const ScratchFolder scratch;
  fs::create_directory(scratch / "real");
  fs::create_directory_symlink(scratch / "real", scratch / "link");
  EXPECT_EQ(error_of(scratch / "link", false), "");
  EXPECT_TRUE(fs::is_symlink(scratch / "link"));
  EXPECT_EQ(bytes_of(scratch / "real/a.step"), "a");
}

TEST(Folder, SaysWhyItCannotWrite) {
  const ScratchFolder scratch;
  write_file(scratch / "file", "x");
  EXPECT_NE(error_of(scratch / "file", true).find("there is a file of that name"), std::string::npos);
  EXPECT_NE(error_of(scratch / "file/below", false).find("a file, not a folder"), std::string::npos);
  EXPECT_NE(error_of("/proc/sagitta", false), "") << "a place where not even root may make a folder";
  EXPECT_EQ(listing(scratch.path()), "file\n");
}

TEST(Folder, GivesTheNewFolderTheUsersMode) {
  const ScratchFolder scratch;
  const mode_t mask = umask(027);
  const std::string error = error_of(scratch / "out", false);
  umask(mask);
  EXPECT_EQ(error, "");
  EXPECT_EQ(fs::status(scratch / "out").permissions(), fs::perms(0750));
  EXPECT_EQ(fs::status(scratch / "out/a.step").permissions(), fs::perms(0640));
}

}  // namespace
}  // namespace sagitta
