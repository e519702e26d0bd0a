#include "input/Presets.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "board/Writer.hpp"
#include "export/CommandLine.hpp"
#include "export/Gmsh.hpp"
#include "folder/Digest.hpp"
#include "input/PreparedFile.hpp"
#include "mesh/Mesh.hpp"
#include "plan/Plan.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using test::bytes_of;
using test::ScratchFolder;
using test::shell;

class EveryPreset : public testing::TestWithParam<std::string> {
 protected:
  /// Exports the preset once into a folder and reads the manifest.
  static json exported(const std::string& preset, const fs::path& folder, const std::string& options = "") {
    const test::Outcome outcome =
        test::sagitta("export '" + test::preset_path(preset).string() + "' --to '" + folder.string() + "' " + options);
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    return json::parse(bytes_of(folder / "manifest.json"));
  }
};

std::string shown(const fs::path& path) { return "'" + path.string() + "'"; }

TEST_P(EveryPreset, IsSoundAtEveryStage) {
  const auto prepared = prepare(test::preset_path(GetParam()));
  ASSERT_TRUE(std::holds_alternative<PreparedBoard>(prepared)) << std::get<Problems>(prepared).front().message;
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  for (const Stage stage : stages_of(ready.board())) {
    const Shell lifted = lift(std::get<Plan>(make_plan(ready.board(), ready.layout(), ready.surface(), stage)));
    EXPECT_EQ(unsound(make_solid(lifted), genus(lifted)), "") << name(stage);
  }
}

/// An assembly's wood is that of its stage, and each of its other bodies is a piece.
void expect_assembly(const json& file, const std::map<std::string, double>& wood_at) {
  const bool flat = file["stage"] == "pieces";
  for (const json& body : file["bodies"]) {
    EXPECT_GT(body["volume"], 0) << body["name"];
    if (body["name"] != "board") {
      EXPECT_EQ(std::string(body["name"]).rfind(std::string(body["material"]) + "-", 0), 0U) << body["name"];
    }
  }
  EXPECT_EQ(file["bodies"][0]["name"] == "board", !flat) << file["file"];
  if (flat) return;
  const double wood = wood_at.at(file["stage"] == "inlaid"      ? "pocketed"
                                 : wood_at.contains("finished") ? "finished"
                                                                : "board");
  EXPECT_EQ(file["bodies"][0]["volume"], wood) << file["file"];
}

TEST_P(EveryPreset, ExportsWhatItsManifestSays) {
  const ScratchFolder scratch;
  const fs::path folder = scratch / "out";
  const json manifest = exported(GetParam(), folder);
  const BoardFile read = read_board(test::preset_path(GetParam()));
  EXPECT_EQ(manifest["board"], write_board(read.board));
  double wood = 1e300;
  std::map<std::string, double> wood_at;
  std::size_t solids = 0;
  for (const json& file : manifest["files"]) {
    const std::string bytes = bytes_of(folder / file["file"]);
    EXPECT_EQ(file["bytes"], bytes.size());
    EXPECT_EQ(file["sha256"], sha256(bytes));
    if (file["kind"] != "step" && file["kind"] != "stl") continue;
    if (!stage_named(std::string(file["stage"]))) {
      expect_assembly(file, wood_at);
      continue;
    }
    ++solids;
    EXPECT_EQ(file["bodies"].size(), 1U);
    const double volume = file["bodies"][0]["volume"];
    if (file["kind"] == "step") {
      const bool nothing_to_cut = file["stage"] == "pocketed" && read.board.inlays.empty() && read.board.cuts.empty();
      if (nothing_to_cut) {
        EXPECT_EQ(volume, wood) << "no pockets: the blank as it was";
      } else {
        EXPECT_LT(volume, wood) << file["file"] << ": each cut takes wood away";
      }
      wood = volume;
      wood_at[file["stage"]] = volume;
    } else {
      EXPECT_LE(file["deviation"], default_deviation);
      // Facets within the deviation of the surface change the volume by less than deviation times area.
      EXPECT_NEAR(volume, wood, default_deviation * double{file["bodies"][0]["area"]}) << file["file"];
    }
  }
  EXPECT_EQ(solids, 2 * stages_of(read.board).size());
}

// admesh reads the triangles as a stranger would: exact matches of edges only, and nothing that needs mending.
TEST_P(EveryPreset, WritesTrianglesThatAnotherProgramFindsClosed) {
  const ScratchFolder scratch;
  for (const json& file : exported(GetParam(), scratch / "out", "--only stl")["files"]) {
    if (file["kind"] != "stl") continue;
    const test::Outcome read =
        shell("admesh --exact --normal-directions --normal-values " + shown(scratch / "out" / file["file"]));
    ASSERT_EQ(read.code, 0) << read.err;
    const auto count = [&read](const std::string& label) {
      const std::size_t at = read.out.find(label);
      if (at == std::string::npos) return -1;
      return std::atoi(read.out.c_str() + read.out.find(':', at) + 1);
    };
    EXPECT_EQ(count("Number of facets"), file["triangles"]);
    for (const char* fault : {"Degenerate facets", "Facets removed", "Facets added", "Facets reversed",
                              "Backwards edges", "Edges fixed", "Normals fixed"})
      EXPECT_EQ(count(fault), 0) << file["file"] << ": " << fault;
    EXPECT_EQ(count("Number of parts"), static_cast<int>(file["bodies"].size()));
    EXPECT_NE(read.out.find("Total disconnected facets     :   0    "), std::string::npos) << read.out;
  }
}

// gmsh is a second reader on the same kernel: it finds the unit, the name and the volume on its own path.
TEST_P(EveryPreset, WritesStepThatAnotherProgramReads) {
  const ScratchFolder scratch;
  for (const json& file : exported(GetParam(), scratch / "out", "--only step")["files"]) {
    if (file["kind"] != "step") continue;
    const test::GmshReading read = test::read_by_gmsh(scratch / "out" / file["file"]);
    EXPECT_EQ(read.bodies, file["bodies"].size());
    double wanted = 0;
    for (const json& body : file["bodies"]) wanted += double{body["volume"]};
    EXPECT_NEAR(read.volume / wanted, 1, 1e-8) << file["file"];
    EXPECT_NE(read.said.find(GetParam() + " " + std::string(file["stage"])), std::string::npos) << read.said;
  }
}

// d(n) = L (1 - 2^(-n/12)): "Building Electric Guitars" (2001) and any acoustics handbook.
TEST_P(EveryPreset, PutsItsSlotsWhereTheFormulaDoes) {
  const BoardFile read = read_board(test::preset_path(GetParam()));
  const Scale& scale = read.board.scale;
  const test::Outcome table = test::sagitta("frets --json '" + test::preset_path(GetParam()).string() + "'");
  ASSERT_EQ(table.code, 0) << table.err;
  const json rows = json::parse(table.out);
  const int frets = scale.frets + (read.board.tongue ? read.board.tongue->frets : 0);
  ASSERT_EQ(rows.size(), static_cast<std::size_t>(frets) + 1);
  const double steps = scale.steps_per_octave.value_or(12);
  for (int n = 0; n <= frets; ++n) {
    const double part = 1 - std::exp2(-n / steps);
    const json& from_nut = rows[n]["from_nut"];
    constexpr double tolerance = 0.0005;
    if (scale.length) {
      EXPECT_NEAR(from_nut, *scale.length * part, tolerance) << "fret " << n;
      EXPECT_NEAR(rows[n]["bass"][0], *scale.length * part, tolerance) << "fret " << n;
    } else {
      EXPECT_NEAR(from_nut["bass"], *scale.bass * part, tolerance) << "fret " << n;
      EXPECT_NEAR(from_nut["treble"], *scale.treble * part, tolerance) << "fret " << n;
    }
  }
}

TEST_P(EveryPreset, ComesOutOfTheProgramAsItStandsInItsFile) {
  const test::Outcome printed = test::sagitta("new " + GetParam());
  EXPECT_EQ(printed.code, 0);
  EXPECT_EQ(printed.out, bytes_of(test::preset_path(GetParam())));
  EXPECT_FALSE(summary(*preset_named(GetParam())).empty());
}

TEST_P(EveryPreset, IsWrittenWithItsDrawingsWhereNothingIsInTheWay) {
  const ScratchFolder scratch;
  const std::string to = "new " + GetParam() + " --to " + shown(scratch / "mine");
  ASSERT_EQ(test::sagitta(to).code, 0);
  EXPECT_EQ(bytes_of(scratch / "mine" / (GetParam() + ".toml")), bytes_of(test::preset_path(GetParam())));
  for (const Inlay& inlay : read_board(test::preset_path(GetParam())).board.inlays)
    if (!inlay.file.empty()) {
      EXPECT_EQ(bytes_of(scratch / "mine" / inlay.file), bytes_of(fs::path(places::source()) / "presets" / inlay.file));
    }
  const test::Outcome again = test::sagitta(to);
  EXPECT_EQ(again.code, 3);
  EXPECT_NE(again.err.find("is there already; nothing was written"), std::string::npos) << again.err;
}

std::vector<std::string> names() {
  std::vector<std::string> all;
  for (const Preset& preset : presets()) all.emplace_back(preset.name);
  return all;
}

std::string as_test_name(const testing::TestParamInfo<std::string>& info) {
  std::string text = info.param;
  for (char& c : text)
    if (c == '-') c = '_';
  return text;
}

INSTANTIATE_TEST_SUITE_P(Presets, EveryPreset, testing::ValuesIn(names()), as_test_name);

TEST(Presets, AreThoseOfTheFolder) {
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(fs::path(places::source()) / "presets"))
    files += entry.path().extension() == ".toml";
  EXPECT_GE(files, 4U);
  EXPECT_EQ(presets().size(), files);
  EXPECT_FALSE(preset_named("no-such-board").has_value());
}

}  // namespace
}  // namespace sagitta
