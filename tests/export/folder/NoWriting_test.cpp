// Where the system does not let the program write: exit 3, the reason in a builder's words, nothing half made. Root may
// write everywhere, so that root steps down to nobody first; full and read-only disks are mounted in a name space of
// their own, which not every machine grants.

#include <gtest/gtest.h>
#include <unistd.h>

#include <optional>

#include "Places.hpp"
#include "export/CommandLine.hpp"

namespace sagitta::test {
namespace {

class NoWriting : public testing::Test {
 protected:
  ScratchFolder scratch;

  void SetUp() override {
    copy(places::program());  // where it was built nobody may not look
    copy(places::solid_program());
    fs::copy_file(preset_path("heron-six"), scratch / "board.toml");
    fs::permissions(scratch.path(), fs::perms(0755));
    fs::permissions(scratch / "board.toml", fs::perms(0644));
    fs::create_directory(scratch / "place");
  }
  /// To the same place from bin/ as where it was built.
  void copy(const fs::path& program) const {
    const fs::path to = scratch / "bin" / fs::relative(program, fs::path(places::program()).parent_path());
    fs::create_directories(to.parent_path());
    fs::copy_file(program, to);
    fs::permissions(to, fs::perms(0755));
  }
  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }

  /// The export as somebody who is not root.
  Outcome exported(const std::string& to, const std::string& options = "--only csv") const {
    const std::string down = geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups --no-new-privs " : "";
    return shell(down + at("bin/sagitta") + " export " + at("board.toml") + " " + options + " --to " + at(to));
  }

  /// The folder "place" as a mount of these options, while the lines run; what they print comes back, and the code of
  /// the last. Nothing where the machine does not grant mounts.
  std::optional<Outcome> mounted(const std::string& options, const std::string& lines) const {
    const std::string mount = "mount -t tmpfs -o " + options + " tmpfs " + at("place");
    const std::string apart = geteuid() == 0 ? "unshare -m " : "unshare -Urm ";
    if (shell(apart + "sh -c \"" + mount + "\"").code != 0) return {};
    write_file(scratch / "lines.sh", "set -e\n" + mount + "\n" + lines + "\n");
    return shell(apart + "sh " + at("lines.sh"));
  }
  std::string exporting(const std::string& options) const {
    return at("bin/sagitta") + " export " + at("board.toml") + " --to " + at("place/out") + " " + options;
  }
};

TEST_F(NoWriting, AFolderOfSomebodyElse) {
  fs::permissions(scratch / "place", fs::perms(0555));
  if (geteuid() == 0) {
    ASSERT_EQ(
        shell("setpriv --reuid=65534 --regid=65534 --clear-groups --no-new-privs " + at("bin/sagitta") + " --version")
            .code,
        0)
        << "nobody must be able to run the program, or the test shows nothing";
  }
  for (const char* to : {"place/out", "place/new/deep/out"}) {
    const Outcome refused = exported(to, "");
    EXPECT_EQ(refused.code, 3) << refused.err;
    EXPECT_NE(refused.err.find("you may not write there; name a folder of your own"), std::string::npos) << refused.err;
    EXPECT_NE(refused.err.find("place"), std::string::npos) << "it says which folder: " << refused.err;
    EXPECT_EQ(refused.out, "");
    EXPECT_EQ(listing(scratch / "place"), "");
  }
  fs::permissions(scratch / "place", fs::perms(0777));
  EXPECT_EQ(exported("place/out").code, 0) << "it was the permission, nothing else";
}

TEST_F(NoWriting, AFullFolderBelowAFolderOfSomebodyElseStays) {
  fs::permissions(scratch / "place", fs::perms(0777));
  ASSERT_EQ(exported("place/out").code, 0);
  const std::string before = listing(scratch / "place");
  fs::permissions(scratch / "place", fs::perms(0555));
  const Outcome refused = exported("place/out", "--only csv --replace");
  EXPECT_EQ(refused.code, 3) << refused.err;
  EXPECT_NE(refused.err.find("you may not write there"), std::string::npos) << refused.err;
  fs::permissions(scratch / "place", fs::perms(0755));
  EXPECT_EQ(listing(scratch / "place"), before);
}

TEST_F(NoWriting, AFullDisk) {
  const auto small =
      mounted("size=400k", exporting("--only csv") + " >/dev/null\n" + "code=0; " + exporting("--replace") +
                               " || code=$?\nfind " + at("place") + " -type f | wc -l\nls -A " + at("place") +
                               "\ntest -s " + at("place/out/frets.csv") + "\nexit $code");
  if (!small) GTEST_SKIP() << "this machine grants no mounts";
  EXPECT_EQ(small->code, 3) << small->err;
  EXPECT_NE(small->err.find((scratch / "place/out").string()), std::string::npos) << small->err;
  EXPECT_EQ(small->out, "7\nout\n")
      << "three tables as CSV and JSON and the manifest stand as they stood, nothing beside";
}

TEST_F(NoWriting, ADiskThatCanOnlyBeRead) {
  const auto locked = mounted("ro", exporting("--only csv"));
  if (!locked) GTEST_SKIP() << "this machine grants no mounts";
  EXPECT_EQ(locked->code, 3) << locked->err;
  EXPECT_NE(locked->err.find((scratch / "place/out").string()), std::string::npos) << locked->err;
}

}  // namespace
}  // namespace sagitta::test
