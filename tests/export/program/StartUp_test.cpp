#include <gtest/gtest.h>

#include "Places.hpp"
#include "export/CommandLine.hpp"

/// `sagitta` alone, and with the program beside it that makes its solids. What must hold is the file system's rule for
/// programs: `bin/` and `libexec/` below one prefix, wherever that lies (GNU coding standards, "Directory Variables").

namespace sagitta::test {
namespace {

class StartUp : public testing::Test {
 protected:
  ScratchFolder scratch;
  const fs::path built = fs::path(places::program()), solid = fs::path(places::solid_program());
  const std::string board = "'" + preset_path("reed-tenor").string() + "'";

  void copy(const fs::path& program, const fs::path& to) const {
    fs::create_directories((scratch / to).parent_path());
    fs::copy_file(program, scratch / to);
  }
  Outcome run(const std::string& arguments) const {
    return shell("'" + (scratch / "bin/sagitta").string() + "' " + arguments);
  }
  std::string target() const { return (scratch / "made").string(); }
};

TEST_F(StartUp, TablesAndChecksNeedNoOtherProgram) {
  copy(built, "bin/sagitta");
  for (const char* line : {"frets ", "check ", "compare "}) EXPECT_EQ(run(line + board).code, 0) << line;
  EXPECT_EQ(run("keys").code, 0);
}

TEST_F(StartUp, AMissingProgramIsToldAndNothingIsWritten) {
  copy(built, "bin/sagitta");
  for (const char* word : {"export ", "trial "}) {
    const Outcome outcome = run(word + board + " --to '" + target() + "'");
    EXPECT_EQ(outcome.code, 3) << word;
    EXPECT_NE(outcome.err.find("sagitta-solid"), std::string::npos) << outcome.err;
    EXPECT_FALSE(fs::exists(target()));
  }
}

TEST_F(StartUp, APrefixMayBeMoved) {
  copy(built, "bin/sagitta");
  copy(solid, fs::path("bin") / fs::relative(solid, built.parent_path()));
  fs::create_symlink(scratch / "bin/sagitta", scratch / "link");
  const Outcome outcome = shell("'" + (scratch / "link").string() + "' export " + board +
                                " --only step --stage board --to '" + target() + "'");
  EXPECT_EQ(outcome.code, 0) << outcome.err;
  EXPECT_TRUE(fs::exists(fs::path(target()) / "board.step"));
}

}  // namespace
}  // namespace sagitta::test
