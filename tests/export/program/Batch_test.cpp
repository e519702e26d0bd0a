// Several boards, a board on standard input, answers for other programs: the board file's contract, "Command line,
// new".

#include <gtest/gtest.h>

#include <chrono>
#include <nlohmann/json.hpp>
#include <set>

#include "export/CommandLine.hpp"

namespace sagitta::test {
namespace {

using nlohmann::json;

std::string preset(const std::string& name) { return "'" + preset_path(name).string() + "'"; }

json parsed(const Outcome& outcome) {
  EXPECT_EQ(outcome.code, 0) << outcome.err;
  return json::parse(outcome.out);
}

class Batch : public testing::Test {
 protected:
  ScratchFolder scratch;
  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }
  /// A board that cannot be read.
  std::string broken() const {
    write_file(scratch / "broken.toml", "format = 1\n[scale]\n");
    return at("broken.toml");
  }
};

TEST_F(Batch, ABoardOnStandardInputIsTheFilesBoard) {
  const std::string file = preset("sandpiper-fan");
  EXPECT_EQ(shell(places::program() + " frets --json - < " + file).out, sagitta("frets --json " + file).out);
  EXPECT_EQ(shell(places::program() + " check --json - < " + file).out, sagitta("check --json " + file).out);
  ASSERT_EQ(shell("cat " + file + " | " + places::program() + " export - --only step --to " + at("piped")).code, 0);
  ASSERT_EQ(sagitta("export " + file + " --only step --to " + at("named")).code, 0);
  EXPECT_EQ(bytes_of(scratch / "piped/board.step"), bytes_of(scratch / "named/board.step"));
  EXPECT_EQ(shell("echo nonsense | " + places::program() + " check -").code, 2);
  EXPECT_EQ(shell("head -c 2000000 /dev/zero | " + places::program() + " check -").code, 2);
}

TEST_F(Batch, CheckOfSeveralBoardsGivesTheWorstCode) {
  const json both = parsed(sagitta("check --json " + preset("heron-six") + " " + preset("tern-inch-left")));
  ASSERT_EQ(both.size(), 2U);
  for (const std::size_t i : {0U, 1U}) {
    const std::string path = preset_path(i == 0 ? "heron-six" : "tern-inch-left").string();
    json alone = json::parse(sagitta("check --json '" + path + "'").out);
    alone["board"] = path;
    EXPECT_EQ(both[i], alone);
  }
  EXPECT_EQ(sagitta("check " + preset("heron-six") + " " + broken()).code, 2);
  EXPECT_EQ(sagitta("check " + broken() + " " + preset("heron-six")).code, 2);
  EXPECT_EQ(sagitta("check --before slots " + preset("heron-six") + " " + preset("dunlin-bass")).code, 2);
}

TEST_F(Batch, SeveralBoardsGetAFolderEachWithTheBytesOfTheirOwnExport) {
  const std::vector<std::string> names{"heron-six", "dunlin-bass", "sandpiper-fan"};
  std::string boards;
  for (const std::string& name : names) boards += preset(name) + " ";
  const json made = parsed(sagitta("export --json --only step,csv " + boards + "--to " + at("all")));
  ASSERT_EQ(made.size(), names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    const fs::path folder = scratch / ("all/" + names[i]), alone = scratch / ("alone/" + names[i]);
    EXPECT_EQ(made[i]["board"], preset_path(names[i]).string());
    EXPECT_EQ(made[i]["folder"], folder.string());
    ASSERT_EQ(sagitta("export --only step,csv " + preset(names[i]) + " --to '" + alone.string() + "'").code, 0);
    EXPECT_EQ(shell("diff -r '" + folder.string() + "' '" + alone.string() + "'").code, 0) << names[i];
    std::size_t files = 0;
    std::uintmax_t bytes = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
      if (entry.is_regular_file()) ++files, bytes += entry.file_size();
    EXPECT_EQ(made[i]["files"], files);
    EXPECT_EQ(made[i]["bytes"], bytes);
  }
}

TEST_F(Batch, ABoardThatFailsDoesNotKeepTheOthersFromTheirFolders) {
  const Outcome made = sagitta("export --only csv " + broken() + " " + preset("heron-six") + " --to " + at("some"));
  EXPECT_EQ(made.code, 2);
  EXPECT_TRUE(fs::exists(scratch / "some/heron-six/manifest.json"));
  EXPECT_FALSE(fs::exists(scratch / "some/broken"));
  EXPECT_NE(made.err.find("broken.toml"), std::string::npos);
}

TEST_F(Batch, TwoBoardsOfOneNameAreRefusedBeforeAnythingIsMade) {
  fs::create_directory(scratch / "other");
  fs::copy_file(preset_path("heron-six"), scratch / "other/heron-six.toml");
  EXPECT_EQ(sagitta("export " + preset("heron-six") + " " + at("other/heron-six.toml") + " --to " + at("two")).code, 2);
  EXPECT_FALSE(fs::exists(scratch / "two"));
}

TEST_F(Batch, AFolderThatHoldsTheSameIsLeftAlone) {
  const std::string board = at("board.toml"),
                    order = "export " + board + " --if-changed --replace --only csv,dxf --to " + at("out");
  write_file(scratch / "board.toml", bytes_of(preset_path("heron-six")));
  EXPECT_FALSE(bool(parsed(sagitta(order + " --json"))["unchanged"]));
  const auto written = fs::last_write_time(scratch / "out/manifest.json");
  EXPECT_TRUE(bool(parsed(sagitta(order + " --json"))["unchanged"]));
  EXPECT_EQ(fs::last_write_time(scratch / "out/manifest.json"), written);
  EXPECT_FALSE(bool(parsed(sagitta(order + " --dowels --json"))["unchanged"]));
  std::string text = bytes_of(scratch / "board.toml");
  text.replace(text.find("648"), 3, "650");
  write_file(scratch / "board.toml", text);
  EXPECT_FALSE(bool(parsed(sagitta(order + " --json"))["unchanged"]));
  write_file(scratch / "out/frets.csv", "changed by hand\n");
  EXPECT_EQ(sagitta(order).code, 3);  // and what is not ours any more is not replaced
  EXPECT_EQ(bytes_of(scratch / "out/frets.csv"), "changed by hand\n");
}

TEST_F(Batch, ADrawingThatChangedMakesTheFolderAnew) {
  copy_drawings(scratch.path());
  fs::copy_file(preset_path("egret-figure"), scratch / "egret-figure.toml");
  const std::string order =
      "export " + at("egret-figure.toml") + " --if-changed --replace --only csv --json --to " + at("out");
  EXPECT_FALSE(bool(parsed(sagitta(order))["unchanged"]));
  EXPECT_TRUE(bool(parsed(sagitta(order))["unchanged"]));
  std::string drawing = bytes_of(scratch / "egret-figure.svg");
  drawing.insert(drawing.rfind("</svg>"), "<!-- again -->");
  write_file(scratch / "egret-figure.svg", drawing);
  EXPECT_FALSE(bool(parsed(sagitta(order))["unchanged"]));
}

TEST_F(Batch, QuietSaysNothingAndVerboseTellsEveryFilesTime) {
  const Outcome quiet = sagitta("export --quiet --only csv " + preset("heron-six") + " --to " + at("quiet"));
  EXPECT_EQ(quiet.code, 0);
  EXPECT_EQ(quiet.out + quiet.err, "");
  const Outcome verbose =
      sagitta("export --verbose --only step --stage board " + preset("heron-six") + " --to " + at("verbose"));
  EXPECT_EQ(verbose.code, 0);
  EXPECT_GT(std::stod(verbose.err), 0);
}

/// `script` (util-linux) runs the command on a terminal of its own.
TEST_F(Batch, ColoursAreForTerminalsThatWantThem) {
  const std::string check = places::program() + " check " + preset("heron-six");
  const auto on_terminal = [&](const std::string& settings) {
    return shell("script -qec \"" + settings + " " + check + "\" /dev/null").out;
  };
  EXPECT_NE(on_terminal("env -u NO_COLOR TERM=xterm").find("\x1b[2mnote"), std::string::npos);
  EXPECT_EQ(on_terminal("env NO_COLOR=1 TERM=xterm").find('\x1b'), std::string::npos);
  EXPECT_EQ(on_terminal("env -u NO_COLOR TERM=dumb").find('\x1b'), std::string::npos);
  EXPECT_EQ(shell(check).out.find('\x1b'), std::string::npos);
}

TEST_F(Batch, SetUpsNamedAreAllThatIsWritten) {
  write_file(scratch / "two.toml", bytes_of(preset_path("heron-six")) +
                                       "\n[[setups]]\nname = \"top, first\"\noperations = [\"pockets\", \"radius\"]\n"
                                       "\n[[setups]]\nname = \"rest\"\noperations = [\"slots\", \"outline\"]\n");
  ASSERT_EQ(sagitta("export " + at("two.toml") + " --setups 'top, first' --to " + at("one")).code, 0);
  std::set<std::string> folders;
  for (const auto& entry : fs::recursive_directory_iterator(scratch / "one"))
    if (entry.is_regular_file())
      folders.insert(entry.path().parent_path().lexically_relative(scratch / "one").string());
  EXPECT_EQ(folders.size(), 2U);  // the set-up's, and the manifest beside it
  EXPECT_TRUE(fs::exists(scratch / "one/setups/top__first-01/setup.dxf"));
  ASSERT_EQ(sagitta("export " + at("two.toml") + " --setups 'top, first,rest' --to " + at("both")).code, 0);
  EXPECT_TRUE(fs::exists(scratch / "both/setups/top__first-01/setup.pdf"));
  EXPECT_TRUE(fs::exists(scratch / "both/setups/rest-02/setup.pdf"));
  EXPECT_EQ(sagitta("export " + at("two.toml") + " --setups 'top' --to " + at("none")).code, 2);
}

TEST_F(Batch, AWordThatIsNoneGivesTheNearestOne) {
  for (const auto& [line, nearest] : {std::pair{"chek", "check"},
                                      {"chek --help", "check"},
                                      {"new heron-si", "heron-six"},
                                      {"keys deph", "depth"},
                                      {"findings thin-edg", "thin-edge"}}) {
    const Outcome outcome = sagitta(line);
    EXPECT_EQ(outcome.code, 2) << line;
    EXPECT_EQ(outcome.out, "") << line;
    EXPECT_NE(outcome.err.find(nearest), std::string::npos) << line;
  }
}

TEST_F(Batch, ReferencesAreFilteredAndAnswerInJson) {
  const json all = parsed(sagitta("keys --json")), slots = parsed(sagitta("keys slots --json")),
             depth = parsed(sagitta("keys depth --json")), one = parsed(sagitta("keys slots.depth --json"));
  EXPECT_GT(all.size(), 150U);
  for (const json& key : slots) EXPECT_EQ(key["table"], "slots");
  std::size_t depths = 0;
  for (const json& key : all) depths += std::string(key["key"]).ends_with(".depth");
  EXPECT_EQ(depth.size(), depths);
  ASSERT_EQ(one.size(), 1U);
  EXPECT_EQ(one[0]["key"], "slots.depth");
  const json edge = parsed(sagitta("findings thin-edge --json"));
  ASSERT_EQ(edge.size(), 1U);
  EXPECT_EQ(edge[0]["limit"], 2.5);
  EXPECT_EQ(edge[0]["bar"], "at-least");
  const json boards = parsed(sagitta("presets --json"));
  for (const json& board : boards)
    for (const json& file : board["files"])
      EXPECT_TRUE(fs::exists(fs::path(places::source()) / "presets" / std::string(file))) << file;
}

}  // namespace
}  // namespace sagitta::test
