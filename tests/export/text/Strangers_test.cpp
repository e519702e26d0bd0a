#include <gtest/gtest.h>
#include <sys/stat.h>

#include <functional>
#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "export/CommandLine.hpp"

/// Folders that come from strangers: every word of their manifest may be made up, and their files may be none.

namespace sagitta::test {
namespace {

using nlohmann::json;

class Strangers : public testing::Test {
 protected:
  ScratchFolder scratch;
  json manifest;

  /// Exports a board with one drawing; only the manifest and the copy of the drawing are looked at.
  void SetUp() override {
    fs::create_directory(scratch / "shop");
    write_file(scratch / "shop/reeds.svg",
               "<svg xmlns='http://www.w3.org/2000/svg' width='12mm' height='12mm' viewBox='0 0 12 12'>"
               "<rect width='12' height='12'/></svg>");
    write_file(scratch / "shop/board.toml", bytes_of(preset_path("reed-tenor")) +
                                                "\n[[inlays]]\nshape = \"artwork\"\nfile = \"reeds.svg\"\n"
                                                "frets = [4]\nalong = 8\ndepth = 1.2\n");
    const Outcome made = sagitta("export " + at("shop/board.toml") + " --only csv --to " + at("first"));
    ASSERT_EQ(made.code, 0) << made.err;
    manifest = json::parse(bytes_of(scratch / "first/manifest.json"));
  }

  std::string at(const std::string& name) const { return "'" + (scratch / name).string() + "'"; }

  /// What the program makes of the folder; it may take ten seconds.
  Outcome made_again(const std::string& options = "") const {
    return shell("timeout 10 " + places::program() + " export " + at("first/manifest.json") + " --to " + at("again") +
                 " " + options);
  }
  void expect_refused(const json& changed, const std::string& what) const {
    write_file(scratch / "first/manifest.json", changed.dump());
    const Outcome outcome = made_again();
    EXPECT_EQ(outcome.code, 2) << what << ": " << outcome.err;
    EXPECT_NE(outcome.err, "") << what;
    EXPECT_FALSE(fs::exists(scratch / "again")) << what;
    fs::remove_all(scratch / "again");
  }
  json& source() { return manifest["files"].back(); }
};

TEST_F(Strangers, FolderAsItWasIsMadeAgain) { EXPECT_EQ(made_again().code, 0); }

TEST_F(Strangers, NumbersAreHeldToTheRangesOfTheOptions) {
  for (const json& deviation : {json(0), json(1e-12), json(-1), json(1.5), json(1e300), json(nullptr), json("0.01")}) {
    json changed = manifest;
    changed["options"]["deviation"] = deviation;
    changed["options"]["only"] = {"stl"};
    expect_refused(changed, "deviation " + deviation.dump());
  }
  const json pieces = json::parse(bytes_of(scratch / "first/pieces.json"));
  const auto with_clearance = [&](double clearance) {
    json changed = manifest;
    changed["options"]["part"] = {
        {"frets", ""}, {"pieces", json::array({pieces[0]["piece"]})}, {"operation", ""}, {"clearance", clearance}};
    return changed;
  };
  for (const double clearance : {-5.0, -1e-9, 1.001, 1e300})
    expect_refused(with_clearance(clearance), "clearance " + std::to_string(clearance));
  write_file(scratch / "first/manifest.json", with_clearance(0.05).dump());
  EXPECT_EQ(made_again().code, 0) << "a sane one is not refused";
}

TEST_F(Strangers, WordsAreThoseThatTheProgramKnowsAndTheBoardHas) {
  const std::pair<const char*, json> wrong[] = {
      {"stages", {"carved"}},
      {"stages", {"finished"}},
      {"stages", {7}},
      {"stages", "board"},
      {"setups", {"no-such-01"}},
      {"only", {"exe"}},
      {"paper", "A0"},
      {"step", "ap203"},
      {"step_units", "ell"},
      {"dowels", "perhaps"},
      {"part", {{"frets", "90"}, {"pieces", json::array()}, {"operation", ""}}},
      {"part", {{"frets", ""}, {"pieces", {"gold-99"}}, {"operation", ""}}},
      {"part", {{"frets", ""}, {"pieces", json::array()}, {"operation", "carving"}}}};
  for (const auto& [key, value] : wrong) {
    json changed = manifest;
    changed["options"][key] = value;
    expect_refused(changed, key + value.dump());
  }
}

TEST_F(Strangers, FormatIsOneThatTheProgramReads) {
  for (const json& format : {json(999), json(0), json(-1), json(1.5), json("1"), json(nullptr)}) {
    json changed = manifest;
    changed["format"] = format;
    expect_refused(changed, "format " + format.dump());
  }
  for (const char* key : {"format", "board", "options", "files"}) {
    json changed = manifest;
    changed.erase(key);
    expect_refused(changed, std::string("no ") + key);
  }
  expect_refused(json::array(), "a list");
  expect_refused(json("manifest"), "a text");
}

TEST_F(Strangers, SourcesLieInTheirFolder) {
  write_file(scratch / "secret", "x");
  const std::string checksum = shell("sha256sum " + at("secret")).out.substr(0, 64);
  for (const std::string& name :
       {std::string("../secret"), std::string("sources/../../secret"), (scratch / "secret").string(),
        std::string("sources/link"), std::string("table.csv")}) {
    fs::remove(scratch / "first/sources/link");
    fs::create_symlink("../../secret", scratch / "first/sources/link");
    json changed = manifest;
    changed["files"].push_back(source());
    changed["files"].back()["file"] = name;
    changed["files"].back()["sha256"] = checksum;
    expect_refused(changed, name);
  }
  json twice = manifest;
  twice["files"].push_back(source());
  expect_refused(twice, "listed twice");
  json outside = manifest;
  outside["board"] = std::string(outside["board"]) + "\n[neck]\nfile = \"../../secret\"\n";
  expect_refused(outside, "a neck elsewhere");
}

TEST_F(Strangers, SourcesAreFiles) {
  const fs::path copy = scratch / "first/sources/reeds.svg";
  fs::remove(copy);
  ASSERT_EQ(::mkfifo(copy.c_str(), 0600), 0);
  expect_refused(manifest, "a pipe");
  fs::remove(copy);
  fs::create_symlink("/dev/zero", copy);
  expect_refused(manifest, "a device");
  write_file(scratch / "first/manifest.json", manifest.dump());
  EXPECT_EQ(made_again("--allow-outside").code, 2) << "a device is no file wherever it lies";
}

TEST_F(Strangers, ManifestIsAFile) {
  const fs::path path = scratch / "first/manifest.json";
  fs::remove(path);
  ASSERT_EQ(::mkfifo(path.c_str(), 0600), 0);
  EXPECT_EQ(made_again().code, 2);
  EXPECT_EQ(
      shell("timeout 10 " + places::program() + " compare " + at("first/manifest.json") + " " + at("shop/board.toml"))
          .code,
      2);
  fs::remove(path);
  fs::create_symlink("/dev/zero", path);
  EXPECT_EQ(made_again().code, 2);
  fs::remove(path);
  write_file(path, std::string(200'000, '['));
  EXPECT_EQ(made_again().code, 2);
}

TEST_F(Strangers, EveryInputOfABoardIsAFileInItsFolder) {
  ASSERT_EQ(::mkfifo((scratch / "shop/pipe").c_str(), 0600), 0);
  const std::string preset = bytes_of(preset_path("reed-tenor"));
  write_file(scratch / "base.toml", preset);
  const std::string neck = "\n[neck]\nnut_width = 42\nbody_width = 56\nbody_at = 400\nfile = ";
  const std::pair<std::string, int> boards[] = {{"format = 1\nbase = \"pipe\"\n", 2},
                                                {"format = 1\nbase = \"/dev/zero\"\n", 2},
                                                {"format = 1\nbase = \"../base.toml\"\n", 2},
                                                {preset + neck + "\"/dev/zero\"\n", 2},
                                                {preset + neck + "\"../base.toml\"\n", 2}};
  for (const auto& [text, code] : boards) {
    write_file(scratch / "shop/own.toml", text);
    EXPECT_EQ(shell("timeout 10 " + places::program() + " check " + at("shop/own.toml")).code, code) << text;
  }
  write_file(scratch / "shop/own.toml", "format = 1\nbase = \"../base.toml\"\n");
  for (const char* command : {"check", "frets"})
    EXPECT_LT(sagitta(std::string(command) + " --allow-outside " + at("shop/own.toml")).code, 2) << command;
  write_file(scratch / "shop/own.toml", preset + neck + "\"pipe\"\n");
  EXPECT_LT(shell("timeout 10 " + places::program() + " check " + at("shop/own.toml")).code, 2)
      << "a neck that cannot be read is a finding";
}

}  // namespace
}  // namespace sagitta::test
