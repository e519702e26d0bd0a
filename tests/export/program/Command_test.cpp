#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "export/CommandLine.hpp"

/// The command line as BOARD-FILE's readers meet it: exit codes, messages, and what is left on the disk.

namespace sagitta::test {
namespace {

using nlohmann::json;

class CommandLine : public testing::Test {
 protected:
  ScratchFolder scratch;

  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }
  /// A preset's board file with one line changed.
  std::string board(const std::string& preset, const std::string& from = "", const std::string& to = "") const {
    std::string text = bytes_of(preset_path(preset));
    if (!from.empty()) text.replace(text.find(from), from.size(), to);
    write_file(scratch / "board.toml", text);
    return at("board.toml");
  }
};

TEST_F(CommandLine, HelpNamesEveryCommandAndExitsWell) {
  const Outcome help = sagitta("--help");
  EXPECT_EQ(help.code, 0);
  for (const char* command : {"check", "frets", "export", "presets", "new", "keys", "findings"}) {
    EXPECT_NE(help.out.find(command), std::string::npos) << command;
    EXPECT_EQ(sagitta(std::string(command) + " --help").code, 0) << command;
  }
  EXPECT_EQ(sagitta("--version").out.rfind("sagitta ", 0), 0U);
}

TEST_F(CommandLine, WrongUsageExitsWithTwoAndSaysWhat) {
  const std::string good = board("reed-tenor");
  for (const std::string& line :
       {std::string(), std::string("carve"), std::string("check"), "export " + good, "frets --csv --json " + good,
        "export " + good + " --to " + at("out") + " --only step,obj",
        "export " + good + " --to " + at("out") + " --stage carved",
        "export " + good + " --to " + at("out") + " --stage finished",
        "export " + good + " --to " + at("out") + " --deviation 0",
        "export " + good + " --to " + at("out") + " --deviation fine", std::string("new no-such-board")}) {
    const Outcome outcome = sagitta(line);
    EXPECT_EQ(outcome.code, 2) << line;
    EXPECT_EQ(outcome.out, "") << line;
    EXPECT_NE(outcome.err, "") << line;
  }
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
}

TEST_F(CommandLine, ExportWritesWhatIsAskedFor) {
  const std::string good = board("reed-tenor");
  ASSERT_EQ(sagitta("export " + good + " --to " + at("all")).code, 0);
  EXPECT_EQ(listing(scratch / "all"),
            "blank.3mf\nblank.png\nblank.step\nblank.stl\nboard-r12.dxf\nboard.3mf\nboard.dxf\nboard.png\n"
            "board.step\nboard.stl\nboard.svg\nfrets.csv\nfrets.json\ninlaid.3mf\ninlaid.png\ninlaid.step\n"
            "inlay-drawing.pdf\njob-sheet.html\njob-sheet.pdf\njob.3mf\njob.png\njob.step\nmanifest.json\npieces.3mf\n"
            "pieces.csv\npieces.json\npieces.png\npieces.step\npieces.stl\npocketed.3mf\npocketed.png\n"
            "pocketed.step\npocketed.stl\nradiused.3mf\nradiused.png\nradiused.step\nradiused.stl\nsetups\n"
            "setups/whole-job-01\nsetups/whole-job-01/setup-r12.dxf\nsetups/whole-job-01/setup.dxf\n"
            "setups/whole-job-01/setup.pdf\nsetups/whole-job-01/setup.svg\nshop-drawing.pdf\nslotted.3mf\n"
            "slotted.png\nslotted.step\nslotted.stl\ntemplate.pdf\nwire.csv\nwire.json\n");
  ASSERT_EQ(sagitta("export " + good + " --to " + at("one") + " --only stl --stage board --deviation 0.05").code, 0);
  EXPECT_EQ(listing(scratch / "one"), "board.stl\nmanifest.json\n");
}

TEST_F(CommandLine, AFinerDeviationIsMet) {
  const std::string good = board("heron-six");
  const auto figures = [&](const std::string& deviation) {
    EXPECT_EQ(
        sagitta("export " + good + " --to " + at(deviation) + " --only stl --stage board --deviation " + deviation)
            .code,
        0);
    return json::parse(bytes_of(scratch / (deviation + "/manifest.json")))["files"][0];
  };
  const json coarse = figures("0.05"), fine = figures("0.001");
  EXPECT_LE(coarse["deviation"], 0.05);
  EXPECT_LE(fine["deviation"], 0.001);
  EXPECT_GT(fine["triangles"], coarse["triangles"]);
}

TEST_F(CommandLine, TheSameBoardGivesTheSameBytes) {
  const std::string good = board("curlew-seven-fan");
  ASSERT_EQ(sagitta("export " + good + " --to " + at("a")).code, 0);
  ASSERT_EQ(sagitta("export " + good + " --to " + at("b")).code, 0);
  EXPECT_EQ(shell("diff -r " + at("a") + " " + at("b")).code, 0);
}

// BOARD-FILE: {format, program, version, board, files: [{file, stage, kind, bytes, sha256, bodies: [{name, material,
// volume, area, bbox: [[x,y,z],[x,y,z]]}], deviation, triangles}]}.
TEST_F(CommandLine, TheManifestHasExactlyItsKeys) {
  ASSERT_EQ(sagitta("export " + board("reed-tenor") + " --to " + at("out") + " --stage board").code, 0);
  const json manifest = json::parse(bytes_of(scratch / "out/manifest.json"));
  const auto keys = [](const json& object) {
    std::string text;
    for (const auto& [key, value] : object.items()) text += key + " ";
    return text;
  };
  EXPECT_EQ(keys(manifest), "board files findings format options program version ");
  EXPECT_EQ(keys(manifest["files"][0]), "bodies bytes deviation file kind sha256 stage triangles ");
  EXPECT_EQ(keys(manifest["files"][0]["bodies"][0]), "area bbox material name volume ");
  EXPECT_EQ(manifest["format"], 1);
  EXPECT_EQ(manifest["program"], "sagitta");
  EXPECT_EQ(manifest["files"][0]["bodies"][0]["name"], "board");
  EXPECT_EQ(manifest["files"][0]["bodies"][0]["material"], "ebony");
  // The preset: no seat, so nothing behind the nut; 18 frets of 432 mm and 8 mm more; 4.5 mm thick.
  const double length = 432 * (1 - std::exp2(-18.0 / 12)) + 8;
  const json& box = manifest["files"][0]["bodies"][0]["bbox"];
  EXPECT_NEAR(box[0][0], 0, 1e-6);
  EXPECT_NEAR(box[1][0], length, 1e-6);
  EXPECT_NEAR(box[0][2], 0, 1e-6);
  EXPECT_NEAR(box[1][2], 4.5, 1e-6);
}

TEST_F(CommandLine, AFolderCanBeMadeAgainFromItsManifest) {
  ASSERT_EQ(sagitta("export " + board("tern-inch-left") + " --to " + at("first")).code, 0);
  write_file(scratch / "again.toml", json::parse(bytes_of(scratch / "first/manifest.json"))["board"]);
  ASSERT_EQ(sagitta("export " + at("again.toml") + " --to " + at("second")).code, 0);
  EXPECT_EQ(shell("diff -r " + at("first") + " " + at("second")).code, 0);
}

TEST_F(CommandLine, BadInputWritesNothingAndTellsThePlace) {
  const std::string bad = board("heron-six", "frets = 22", "frets = 0");
  const Outcome exported = sagitta("export " + bad + " --to " + at("out"));
  EXPECT_EQ(exported.code, 2);
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
  EXPECT_NE(exported.err.find("board.toml:10:9: scale.frets: "), std::string::npos) << exported.err;
  const Outcome frets = sagitta("frets " + bad);
  EXPECT_EQ(frets.code, 2);
  EXPECT_EQ(frets.out, "");
  EXPECT_EQ(frets.err, exported.err);
}

TEST_F(CommandLine, CheckListsProblemsAsTextAndAsJson) {
  const std::string bad = board("heron-six", "frets = 22", "frets = 97");
  const Outcome text = sagitta("check " + bad);
  EXPECT_EQ(text.code, 2);
  EXPECT_NE(text.out.find("board.toml:10:9: scale.frets: "), std::string::npos) << text.out;
  const Outcome list = sagitta("check --json " + bad);
  EXPECT_EQ(list.code, 2);
  const json found = json::parse(list.out);
  ASSERT_EQ(found["problems"].size(), 1U);
  EXPECT_EQ(found["problems"][0]["line"], 10);
  EXPECT_EQ(found["problems"][0]["column"], 9);
  EXPECT_EQ(found["problems"][0]["key"], "scale.frets");
  EXPECT_TRUE(found["problems"][0].contains("message") && found["problems"][0].contains("hint"));
  EXPECT_EQ(found["findings"], json::array());
}

TEST_F(CommandLine, CheckIsContentWithASoundBoard) {
  const std::string good = board("heron-six");
  EXPECT_EQ(sagitta("check " + good).code, 0);
  const Outcome list = sagitta("check --json " + good);
  EXPECT_EQ(list.code, 0);
  const json found = json::parse(list.out);
  EXPECT_EQ(found["problems"], json::array());
  for (const json& finding : found["findings"]) EXPECT_EQ(finding["severity"], "note") << finding.dump();
  EXPECT_NE(sagitta("check " + good).out.find("no problems, nothing to look at"), std::string::npos);
}

// Slots 2 mm deep for a tang of 2.2 mm leave the frets 0.2 mm too high.
TEST_F(CommandLine, CheckStopsForAFretThatWillNotSitDown) {
  const std::string bad = board("heron-six", "width = 0.584", "width = 0.584\ndepth = 2");
  const std::string text = bytes_of(scratch / "board.toml");
  write_file(scratch / "board.toml", std::string(text).replace(text.find("tang_depth = 1.7"), 16, "tang_depth = 2.2"));
  const Outcome read = sagitta("check " + bad);
  EXPECT_EQ(read.code, 1);
  EXPECT_NE(read.out.find("stop: slot-too-shallow: "), std::string::npos) << read.out;
  const Outcome list = sagitta("check --json " + bad);
  EXPECT_EQ(list.code, 1);
  const json found = json::parse(list.out);
  EXPECT_EQ(found["problems"], json::array());
  ASSERT_FALSE(found["findings"].empty());
  const json& finding = found["findings"][0];
  EXPECT_EQ(finding["name"], "slot-too-shallow");
  EXPECT_EQ(finding["severity"], "stop");
  EXPECT_NEAR(finding["value"], -0.2, 1e-9);
  EXPECT_EQ(finding["limit"], 0);
  EXPECT_EQ(finding["unit"], "mm");
  EXPECT_EQ(finding["at"].size(), 3U);
  EXPECT_EQ(finding["fix"], json::parse(R"({"key": "slots.depth", "value": 2.2})"));
  for (const char* key : {"feature", "message", "suggestion", "cost", "source"}) EXPECT_NE(finding[key], "") << key;
}

// The case's own comment tells which cuts meet in one point; BOARD-FILE calls them notes, named touching.
TEST_F(CommandLine, CheckNotesCutsThatOnlyTouch) {
  const json found = json::parse(sagitta("check --json '" + places::source() + "/tests/cases/c01-touching.toml'").out);
  std::map<std::pair<int, int>, int> touching;  // inlay from 0, fret -> notes
  for (const json& finding : found["findings"])
    if (finding["code"] == "touching") {
      EXPECT_EQ(finding["severity"], "note");
      EXPECT_EQ(finding["where"]["table"], "inlays");
      ++touching[{finding["where"]["index"], finding["where"]["fret"]}];
    }
  EXPECT_EQ((touching[{0, 4}]), 2);  // the slots of frets 3 and 4
  EXPECT_EQ((touching[{3, 5}]), 2);  // the slots of frets 4 and 5
  EXPECT_EQ((touching[{1, 3}]), 1);  // the other of its pair
  EXPECT_EQ((touching[{2, 2}]), 2);  // both of the pair the outline: seven places in all
  const json sound = json::parse(sagitta("check --json " + board("heron-six")).out);
  for (const json& finding : sound["findings"]) EXPECT_NE(finding["name"], "touching");
}

TEST_F(CommandLine, CheckFindsWhatOnlyTheGeometryShows) {
  const Outcome round = sagitta("check " + board("heron-six", "radius_at_nut = 254", "radius_at_nut = 21"));
  EXPECT_EQ(round.code, 2) << round.out;
  EXPECT_NE(round.out.find("surface.radius_at_nut"), std::string::npos) << round.out;
  const Outcome deep = sagitta("check " + board("heron-six", "depth = 1.5", "depth = 6.1"));
  EXPECT_EQ(deep.code, 2) << deep.out;
  EXPECT_NE(deep.out.find("inlays"), std::string::npos) << deep.out;
}

TEST_F(CommandLine, UnreadableFilesAreAnErrorNotACrash) {
  write_file(scratch / "junk.toml", std::string("\x00\xff\xfe junk [[[", 12));
  for (const std::string& path :
       {at("absent.toml"), at("junk.toml"), "'" + scratch.path().string() + "'", std::string("/dev/null")})
    for (const std::string& command :
         {std::string("check "), std::string("frets "), "export --to " + at("out") + " "}) {
      const Outcome outcome = sagitta(command + path);
      EXPECT_EQ(outcome.code, 2) << command << path;
      EXPECT_NE(outcome.out + outcome.err, "");
    }
  EXPECT_FALSE(std::filesystem::exists(scratch / "out"));
}

TEST_F(CommandLine, AFullFolderNeedsReplace) {
  const std::string good = board("reed-tenor");
  const std::string line = "export " + good + " --only step,stl --stage board --to " + at("out");
  ASSERT_EQ(sagitta(line).code, 0);
  const Outcome refused = sagitta(line);
  EXPECT_EQ(refused.code, 3);
  EXPECT_NE(refused.err.find("--replace"), std::string::npos) << refused.err;
  EXPECT_EQ(refused.out, "");
  EXPECT_EQ(sagitta(line + " --replace").code, 0);
  EXPECT_EQ(listing(scratch.path()), "board.toml\nout\nout/board.step\nout/board.stl\nout/manifest.json\n");
  write_file(scratch / "out/notes.txt", "mine");
  const Outcome foreign = sagitta(line + " --replace");
  EXPECT_EQ(foreign.code, 3);
  EXPECT_NE(foreign.err.find("notes.txt"), std::string::npos) << foreign.err;
  EXPECT_EQ(listing(scratch / "out"), "board.step\nboard.stl\nmanifest.json\nnotes.txt\n");
}

// The board's own base, drawing and neck lie in the folder under names that its manifest lists.
TEST_F(CommandLine, AFolderThatHoldsAnInputIsNotReplaced) {
  write_file(scratch / "knot.svg",
             "<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm' viewBox='0 0 9 9'><circle cx='4' cy='4' "
             "r='4'/></svg>");
  const std::string artwork = "\n[[inlays]]\nshape = \"artwork\"\nfrets = [4]\nalong = 8\ndepth = 1.2\nfile = ";
  write_file(scratch / "board.toml", bytes_of(preset_path("reed-tenor")) + artwork + "\"knot.svg\"\n");
  ASSERT_EQ(sagitta("export " + at("board.toml") + " --only csv --to " + at("out")).code, 0);
  const std::string before = listing(scratch / "out");
  write_file(scratch / "second.toml", bytes_of(preset_path("reed-tenor")) + artwork + "\"out/sources/knot.svg\"\n");
  const Outcome drawing = sagitta("export " + at("second.toml") + " --only csv --replace --to " + at("out"));
  EXPECT_EQ(drawing.code, 3);
  EXPECT_NE(drawing.err.find("sources/knot.svg"), std::string::npos) << drawing.err;
  EXPECT_EQ(sagitta("export " + at("out/manifest.json") + " --replace --to " + at("out")).code, 3);
  EXPECT_EQ(listing(scratch / "out"), before);
  // A base of a base, in a folder that holds nothing else.
  fs::create_directory(scratch / "bases");
  write_file(scratch / "bases/deep.toml", bytes_of(preset_path("reed-tenor")));
  write_file(scratch / "middle.toml", "format = 1\nbase = \"bases/deep.toml\"\n");
  write_file(scratch / "top.toml", "format = 1\nbase = \"middle.toml\"\n");
  const Outcome base = sagitta("export " + at("top.toml") + " --only csv --replace --to " + at("bases"));
  EXPECT_EQ(base.code, 3);
  EXPECT_NE(base.err.find("deep.toml"), std::string::npos) << base.err;
  EXPECT_EQ(listing(scratch / "bases"), "deep.toml\n");
}

// BOARD-FILE: export prints the folder, its files' count and the stops and looks; --refuse-stops exits 1 and writes
// nothing. Slots 2 mm deep for a tang of 2.2 mm are slot-too-shallow, a stop.
TEST_F(CommandLine, ExportTellsWhatItWroteAndTheStops) {
  const std::string good = board("heron-six");
  const std::string ask = " --only csv --to ";
  const Outcome made = sagitta("export " + good + ask + at("good") + " --refuse-stops");
  EXPECT_EQ(made.code, 0) << made.err;
  EXPECT_NE(made.out.find((scratch / "good").string()), std::string::npos) << made.out;
  EXPECT_NE(made.out.find(" 7 files"), std::string::npos) << made.out;
  EXPECT_NE(made.out.find(" 0 stops"), std::string::npos) << made.out;
  EXPECT_EQ(made.err.find("stop: "), std::string::npos) << made.err;
  std::string text = bytes_of(scratch / "board.toml");
  text.replace(text.find("width = 0.584"), 13, "width = 0.584\ndepth = 2");
  text.replace(text.find("tang_depth = 1.7"), 16, "tang_depth = 2.2");
  write_file(scratch / "board.toml", text);
  const Outcome refused = sagitta("export " + good + ask + at("bad") + " --refuse-stops");
  EXPECT_EQ(refused.code, 1);
  EXPECT_EQ(refused.out, "");
  EXPECT_NE(refused.err.find("stop: slot-too-shallow"), std::string::npos) << refused.err;
  EXPECT_EQ(listing(scratch.path()).find("bad"), std::string::npos);
  const Outcome told = sagitta("export " + good + ask + at("bad"));
  EXPECT_EQ(told.code, 0);
  EXPECT_EQ(told.out.find(" 0 stops"), std::string::npos) << told.out;
  EXPECT_NE(told.err.find("stop: slot-too-shallow"), std::string::npos) << told.err;
  EXPECT_EQ(json::parse(bytes_of(scratch / "bad/manifest.json"))["findings"],
            json::parse(sagitta("check --json " + good).out)["findings"]);
}

TEST_F(CommandLine, NothingToWriteIsWrongUsage) {
  const Outcome nothing = sagitta("export " + board("reed-tenor") + " --only stl --stage inlaid --to " + at("out"));
  EXPECT_EQ(nothing.code, 2);
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
}

// A limit on the size of files stands in for a full disk: both make the system refuse to write on.
TEST_F(CommandLine, AFailedWriteLeavesNothing) {
  const std::string good = board("reed-tenor");
  const Outcome outcome = shell("ulimit -f 8; " + places::program() + " export " + good + " --to " + at("out"));
  EXPECT_EQ(outcome.code, 3) << outcome.err;
  EXPECT_NE(outcome.err.find("cannot write the folder"), std::string::npos) << outcome.err;
  EXPECT_EQ(listing(scratch.path()), "board.toml\n");
  EXPECT_EQ(sagitta("export " + good + " --to " + at("board.toml")).code, 3);
  EXPECT_EQ(shell(places::program() + " keys > /dev/full").code, 3);
}

TEST_F(CommandLine, AnInterruptLeavesNothing) {
  const std::string good = board("curlew-seven-fan");
  for (const std::string signal : {"INT", "TERM", "HUP"}) {
    // A fine mesh takes seconds; the signal comes as soon as the temporary folder is there.
    const Outcome outcome =
        shell(places::program() + " export " + good + " --to " + at("out") + " --deviation 0.0001 & pid=$!\n" +
              "for i in $(seq 500); do ls -A " + at("") + " | grep -q '^[.]out' && break; sleep 0.01; done\n" +
              "kill -" + signal + " $pid; wait $pid");
    EXPECT_EQ(outcome.code, 3) << signal << outcome.err;
    EXPECT_NE(outcome.err.find("nothing was written"), std::string::npos) << outcome.err;
    EXPECT_EQ(listing(scratch.path()), "board.toml\n") << signal;
  }
}

// The columns of `frets --json` are BOARD-FILE's; the numbers are "Building Electric Guitars" (2001), 25.5 in, in mm.
TEST_F(CommandLine, FretTableHasItsColumns) {
  const Outcome table = sagitta("frets --json " + board("heron-six", "length = 648 ", "length = 647.7 "));
  ASSERT_EQ(table.code, 0) << table.err;
  const json rows = json::parse(table.out);
  ASSERT_EQ(rows.size(), 23U);
  EXPECT_EQ(rows[0]["fret"], 0);
  EXPECT_EQ(rows[0]["from_nut"], 0.0);
  EXPECT_NEAR(rows[12]["cents"], 1200, 1e-9);
  EXPECT_NEAR(rows[12]["from_nut"], 12.7500 * 25.4, 0.00005 * 25.4);
  EXPECT_NEAR(rows[1]["from_nut"], 1.4312 * 25.4, 0.00005 * 25.4);
  EXPECT_NEAR(rows[0]["to_next"], 1.4312 * 25.4, 0.00005 * 25.4);
  EXPECT_NEAR(rows[22]["from_nut"], 465.945, 0.0005) << "last fret of 22 at 25.5 in";
  EXPECT_TRUE(rows[22]["to_next"].is_null());
  EXPECT_NEAR(double(rows[5]["from_nut"]) + double(rows[5]["to_saddle"]), 647.7, 1e-9);
  EXPECT_LT(rows[3]["bass"][1], 0.0) << "bass at negative y";
  EXPECT_NEAR(rows[0]["treble"][1], 35.5 / 2, 1e-9);
}

TEST_F(CommandLine, FretTableOfTwoScalesHasTwoDistances) {
  const json rows = json::parse(sagitta("frets --json " + board("curlew-seven-fan")).out);
  EXPECT_NEAR(rows[12]["from_nut"]["bass"], 343, 1e-9);
  EXPECT_NEAR(rows[12]["from_nut"]["treble"], 324, 1e-9);
  EXPECT_NEAR(rows[7]["bass"][0], double(rows[7]["treble"][0]), 1e-9) << "fret 7 stands square";
}

TEST_F(CommandLine, FretTableSpeaksTheBoardsUnits) {
  const std::string inches = sagitta("frets " + board("tern-inch-left")).out;
  EXPECT_NE(inches.find("all lengths in inches"), std::string::npos);
  EXPECT_NE(inches.find("12.3750"), std::string::npos) << "half of 24 3/4";
  const std::string csv = sagitta("frets --csv " + board("tern-inch-left")).out;
  EXPECT_EQ(csv.rfind("fret,cents,from_nut_mm,", 0), 0U) << csv;
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 24);
  EXPECT_NE(csv.find("\n12,1200.0000,314.3250,"), std::string::npos) << csv;
}

TEST_F(CommandLine, PresetsAndKeysAreListed) {
  const Outcome presets = sagitta("presets");
  for (const char* preset : {"heron-six", "curlew-seven-fan", "reed-tenor", "tern-inch-left"})
    EXPECT_NE(presets.out.find(preset), std::string::npos);
  const Outcome keys = sagitta("keys");
  EXPECT_EQ(keys.code, 0);
  for (const char* key : {"past_last_fret", "radius_at_nut", "tang_depth", "[[inlays]]", "[materials.NAME]"})
    EXPECT_NE(keys.out.find(key), std::string::npos) << key;
}

}  // namespace
}  // namespace sagitta::test
