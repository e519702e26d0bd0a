#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "export/CommandLine.hpp"

/// A folder of a board with drawings holds what it was made from, so that its manifest alone makes it again.

namespace sagitta::test {
namespace {

using nlohmann::json;

class Sources : public testing::Test {
 protected:
  ScratchFolder scratch;

  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }

  /// Exports a board with one drawing; where the drawing and the board lay is gone then.
  Outcome exported(const std::string& drawing, const std::string& options) {
    fs::create_directories((scratch / "shop/drafts" / drawing).parent_path());
    write_file(scratch / "shop/drafts" / drawing,
               "<svg xmlns='http://www.w3.org/2000/svg' width='12mm' height='12mm' viewBox='0 0 12 12'>"
               "<rect width='12' height='12' fill='#c02020'/><circle cx='6' cy='6' r='3' fill='#2020c0'/></svg>");
    write_file(scratch / "shop/drafts/board.toml",
               bytes_of(preset_path("reed-tenor")) + "\n[[inlays]]\nshape = \"artwork\"\nfile = \"" + drawing +
                   "\"\nfrets = [4]\nalong = 8\ndepth = 1.2\n"
                   "colours = { \"#c02020\" = \"bone\", \"#2020c0\" = \"shell\" }\n");
    const Outcome made = sagitta("export " + at("shop/drafts/board.toml") + " --to " + at("first") + " " + options);
    fs::remove_all(scratch / "shop");
    return made;
  }

  void expect_the_same_again() {
    const Outcome again = sagitta("export " + at("first/manifest.json") + " --to " + at("second"));
    ASSERT_EQ(again.code, 0) << again.err;
    EXPECT_EQ(shell("diff -r " + at("first") + " " + at("second")).out, "");
    fs::rename(scratch / "first", scratch / "elsewhere");
    EXPECT_EQ(sagitta("export " + at("second/manifest.json") + " --to " + at("third")).code, 0);
    EXPECT_EQ(shell("diff -r " + at("elsewhere") + " " + at("third")).code, 0);
  }
};

TEST_F(Sources, OfTheWholeFolderMakeItAgain) {
  ASSERT_EQ(exported("knot.svg", "").code, 0);
  EXPECT_TRUE(fs::exists(scratch / "first/sources/knot.svg"));
  expect_the_same_again();
}

TEST_F(Sources, KeepTheirFoldersAndMayBeCalledAsExportsAre) {
  for (const char* name : {"art/knot.svg", "board.svg", "./art/../knot.svg"}) {
    SCOPED_TRACE(name);
    const Outcome made = exported(name, "--only svg,csv");
    ASSERT_EQ(made.code, 0) << made.err;
    expect_the_same_again();
    for (const char* folder : {"elsewhere", "second", "third"}) fs::remove_all(scratch / folder);
  }
}

TEST_F(Sources, FromElsewhereAreInTheFolderToo) {
  ASSERT_EQ(exported("../knot.svg", "--only dxf,csv").code, 2);
  EXPECT_FALSE(fs::exists(scratch / "first"));
  ASSERT_EQ(exported("../knot.svg", "--only dxf,csv --allow-outside").code, 0);
  EXPECT_TRUE(fs::exists(scratch / "first/sources/outside/knot.svg"));
  expect_the_same_again();
}

TEST_F(Sources, ThatAreGoneOrChangedAreNamed) {
  ASSERT_EQ(exported("knot.svg", "--only csv").code, 0);
  const auto refused = [&] {
    const Outcome made = sagitta("export " + at("first/manifest.json") + " --to " + at("second"));
    EXPECT_EQ(made.code, 2);
    EXPECT_FALSE(fs::exists(scratch / "second"));
    return made.err;
  };
  write_file(scratch / "first/sources/knot.svg", bytes_of(scratch / "first/sources/knot.svg") + "<!-- -->");
  EXPECT_NE(refused().find("sources/knot.svg, was changed"), std::string::npos);
  fs::remove(scratch / "first/sources/knot.svg");
  EXPECT_NE(refused().find("sources/knot.svg, is missing"), std::string::npos);
}

TEST_F(Sources, AreListedWithTheirChecksum) {
  ASSERT_EQ(exported("knot.svg", "--only csv").code, 0);
  const json manifest = json::parse(bytes_of(scratch / "first/manifest.json"));
  const json& last = manifest["files"].back();
  EXPECT_EQ(last["file"], "sources/knot.svg");
  EXPECT_EQ(last["kind"], "source");
  EXPECT_EQ(last["sha256"], shell("sha256sum " + at("first/sources/knot.svg")).out.substr(0, 64));
}

// A neck's file is what findings come from, and findings stand in the job sheet.
TEST_F(Sources, HoldTheNecksFile) {
  ASSERT_EQ(
      sagitta("export '" + preset_path("heron-six").string() + "' --only step --stage board --to " + at("neck")).code,
      0);
  fs::create_directory(scratch / "shop");
  fs::copy_file(scratch / "neck/board.step", scratch / "shop/neck.step");
  write_file(scratch / "shop/board.toml", bytes_of(preset_path("heron-six")) +
                                              "\n[neck]\nnut_width = 42\nbody_width = 56\nbody_at = 400\n"
                                              "file = \"neck.step\"\n");
  const Outcome made = sagitta("export " + at("shop/board.toml") + " --only html --to " + at("first"));
  ASSERT_EQ(made.code, 0) << made.err;
  EXPECT_EQ(bytes_of(scratch / "first/sources/neck.step"), bytes_of(scratch / "neck/board.step"));
  fs::remove_all(scratch / "shop");
  expect_the_same_again();
}

TEST_F(Sources, AreNotWhatIsNoNeck) {
  write_file(scratch / "text.step", "no STEP file");
  write_file(scratch / "board.toml", bytes_of(preset_path("heron-six")) +
                                         "\n[neck]\nnut_width = 42\nbody_width = 56\n"
                                         "body_at = 400\nfile = \"text.step\"\n");
  ASSERT_EQ(sagitta("export " + at("board.toml") + " --only html --to " + at("first")).code, 0);
  EXPECT_FALSE(fs::exists(scratch / "first/sources")) << "what is no neck is not copied";
}

}  // namespace
}  // namespace sagitta::test
