#include "folder/Folder.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <functional>
#include <map>

#include "export/CommandLine.hpp"
#include "folder/Digest.hpp"
#include "folder/Manifest.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;
using test::bytes_of;
using test::listing;
using test::ScratchFolder;
using test::write_file;

/// Adds the files and the manifest that lists them, as an export does.
void fill(Folder& folder, const std::map<std::string, std::string>& files) {
  std::vector<ManifestFile> listed;
  for (const auto& [name, bytes] : files) {
    folder.add(name, bytes);
    listed.push_back({name, "", "", bytes.size(), sha256(bytes), {}, {}, {}});
  }
  folder.add(manifest_name, manifest_text({"0", "name = \"Heron\"\n", listed, "{}", "[]"}));
}

std::string error_of(const fs::path& path, bool replace, const std::vector<fs::path>& inputs = {},
                     const std::string& bytes = "a") try {
  Folder folder(path, replace, inputs);
  fill(folder, {{"a.step", bytes}, {"setups/first/setup.dxf", "lines"}});
  folder.keep();
  return "";
} catch (const FolderError& error) {
  return error.what();
}

constexpr const char* whole =
    "out\nout/a.step\nout/manifest.json\nout/setups\nout/setups/first\n"
    "out/setups/first/setup.dxf\n";

mode_t mode_of(const fs::path& path) {
  struct stat found {};
  EXPECT_EQ(::stat(path.c_str(), &found), 0);
  return found.st_mode & 07777;
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
  fs::create_directory(scratch / "out");
  EXPECT_EQ(error_of(scratch / "out", false), "");
  EXPECT_EQ(listing(scratch.path()), whole);
  EXPECT_EQ(error_of(scratch / "new/deep/out/", false), "");
  EXPECT_EQ(listing(scratch / "new/deep"), whole);
}

TEST(Folder, LeavesAFullFolderAlone) {
  const ScratchFolder scratch;
  fs::create_directory(scratch / "full");
  write_file(scratch / "full/mine", "keep me");
  EXPECT_NE(error_of(scratch / "full", false).find("not empty"), std::string::npos);
  EXPECT_EQ(listing(scratch.path()), "full\nfull/mine\n");
  EXPECT_EQ(bytes_of(scratch / "full/mine"), "keep me");
}

TEST(Folder, ReplacesAFolderOfOursWholly) {
  const ScratchFolder scratch;
  ASSERT_EQ(error_of(scratch / "out", false, {}, "old"), "");
  EXPECT_NE(error_of(scratch / "out", false), "");
  Folder folder(scratch / "out", true);
  fill(folder, {{"b.step", "new"}});
  EXPECT_EQ(bytes_of(scratch / "out/a.step"), "old") << "the old folder stays until the new one is complete";
  folder.keep();
  EXPECT_EQ(listing(scratch.path()), "out\nout/b.step\nout/manifest.json\n");
}

// A file of somebody else anywhere in it, a changed file, a link in place of a file: the folder stays as it is.
TEST(Folder, ReplacesNoFolderWithAnythingElseInIt) {
  const std::vector<std::pair<std::string, std::function<void(const fs::path&)>>> changes = {
      {"photo.jpg", [](const fs::path& out) { write_file(out / "photo.jpg", "a heron"); }},
      {"setups/first/tools.cam", [](const fs::path& out) { write_file(out / "setups/first/tools.cam", "12"); }},
      {"photographs", [](const fs::path& out) { fs::create_directory(out / "photographs"); }},
      {".hidden", [](const fs::path& out) { write_file(out / ".hidden", ""); }},
      {"a.step", [](const fs::path& out) { write_file(out / "a.step", "b"); }},
      {"a.step", [](const fs::path& out) { write_file(out / "a.step", "a and more"); }},
      {"a.step",
       [](const fs::path& out) {
         fs::rename(out / "a.step", out.parent_path() / "kept.step");
         fs::create_symlink(out.parent_path() / "kept.step", out / "a.step");
       }},
      {"manifest.json", [](const fs::path& out) { write_file(out / "manifest.json", "{\"program\": \"other\"}"); }},
      {"manifest.json", [](const fs::path& out) { write_file(out / "manifest.json", "not JSON"); }},
  };
  for (const auto& [found, change] : changes) {
    const ScratchFolder scratch;
    ASSERT_EQ(error_of(scratch / "out", false), "");
    change(scratch / "out");
    const std::string before = listing(scratch.path());
    EXPECT_NE(error_of(scratch / "out", true).find("\"" + found + "\""), std::string::npos)
        << error_of(scratch / "out", true);
    EXPECT_EQ(listing(scratch.path()), before) << found;
  }
}

TEST(Folder, ReplacesOneFromWhichSomethingWasTakenAway) {
  const ScratchFolder scratch;
  ASSERT_EQ(error_of(scratch / "out", false), "");
  fs::remove(scratch / "out/a.step");
  EXPECT_EQ(error_of(scratch / "out", true), "");
  EXPECT_EQ(listing(scratch.path()), whole);
}

// What comes into the old folder while the new one is being made is seen too.
TEST(Folder, SeesWhatCameMeanwhile) {
  const ScratchFolder scratch;
  ASSERT_EQ(error_of(scratch / "out", false, {}, "old"), "");
  {
    Folder folder(scratch / "out", true);
    fill(folder, {{"b.step", "new"}});
    write_file(scratch / "out/tools.cam", "12");
    EXPECT_THROW(folder.keep(), FolderError);
  }
  EXPECT_EQ(listing(scratch.path()),
            "out\nout/a.step\nout/manifest.json\nout/setups\nout/setups/first\n"
            "out/setups/first/setup.dxf\nout/tools.cam\n");
}

TEST(Folder, HoldingAnInputOfTheBoardIsNotReplaced) {
  const ScratchFolder scratch;
  ASSERT_EQ(error_of(scratch / "out", false), "");
  // Listed and unchanged, but the board is made from it: by its name, by a link, by another name of the same file.
  fs::create_symlink(scratch / "out/a.step", scratch / "neck.step");
  fs::create_directory_symlink(scratch / "out", scratch / "art");
  fs::create_hard_link(scratch / "out/a.step", scratch / "twin.step");
  for (const char* input : {"out/a.step", "neck.step", "art/setups/../a.step", "twin.step", "out/../out/a.step"}) {
    EXPECT_EQ(look_at_folder(scratch / "out", {scratch / input}).kind, FolderState::Kind::input) << input;
    EXPECT_NE(error_of(scratch / "out", true, {scratch / input}).find("a.step"), std::string::npos) << input;
  }
  EXPECT_EQ(look_at_folder(scratch / "out", {scratch / "gone.step"}).kind, FolderState::Kind::ours);
}

TEST(Folder, DoesNotReplaceWhereOneWorks) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml", "format = 1");
  const std::string error = error_of(scratch.path(), true, {scratch / "board.toml"});
  EXPECT_NE(error.find("board.toml"), std::string::npos) << error;
  EXPECT_EQ(look_at_folder(fs::current_path(), {}).kind, FolderState::Kind::working);
  EXPECT_NE(error_of(fs::current_path(), true), "");
  EXPECT_NE(error_of("/", true), "");
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
}

// chmod(2): 02000 is set-group-ID, by which files in a shared folder belong to the folder's group.
TEST(Folder, KeepsTheModeOfTheFolderThatItReplaces) {
  for (const mode_t mode : {02770, 0700, 01777, 0755}) {
    const ScratchFolder scratch;
    ASSERT_EQ(error_of(scratch / "out", false), "");
    ASSERT_EQ(::chmod((scratch / "out").c_str(), mode), 0);
    EXPECT_EQ(error_of(scratch / "out", true), "");
    EXPECT_EQ(mode_of(scratch / "out"), mode);
    fs::create_directory(scratch / "empty");
    ASSERT_EQ(::chmod((scratch / "empty").c_str(), mode), 0);
    EXPECT_EQ(error_of(scratch / "empty", false), "");
    EXPECT_EQ(mode_of(scratch / "empty"), mode);
  }
}

TEST(Folder, TellsWhatAFolderIs) {
  const ScratchFolder scratch;
  EXPECT_EQ(look_at_folder(scratch / "out", {}).kind, FolderState::Kind::absent);
  ASSERT_EQ(error_of(scratch / "out", false), "");
  const FolderState state = look_at_folder(scratch / "out", {});
  EXPECT_EQ(state.kind, FolderState::Kind::ours);
  EXPECT_EQ(state.board, "Heron");
  EXPECT_EQ(state.files, 3U);
  fs::create_directory(scratch / "papers");
  EXPECT_EQ(look_at_folder(scratch / "papers", {}).kind, FolderState::Kind::empty);
  write_file(scratch / "papers/letter", "");
  EXPECT_EQ(look_at_folder(scratch / "papers", {}).kind, FolderState::Kind::foreign);
  EXPECT_EQ(look_at_folder(scratch / "papers/letter", {}).kind, FolderState::Kind::file);
}

// A manifest of a later program may list what this one cannot know.
TEST(Folder, OfALaterFormatIsNotReplaced) {
  const ScratchFolder scratch;
  ASSERT_EQ(error_of(scratch / "out", false), "");
  std::string manifest = bytes_of(scratch / "out/manifest.json");
  manifest.replace(manifest.find("\"format\": 1"), 11, "\"format\": 2");
  write_file(scratch / "out/manifest.json", manifest);
  EXPECT_EQ(look_at_folder(scratch / "out", {}).kind, FolderState::Kind::foreign);
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
