#include <gtest/gtest.h>

#include <TopoDS.hxx>
#include <nlohmann/json.hpp>
#include <numbers>

#include "board/BoardFile.hpp"
#include "export/CommandLine.hpp"
#include "export/StepReading.hpp"
#include "solid/Solid.hpp"

/// Pieces of inlay in the hand-off folder, read back by the kernel's reader: the same names everywhere (BOARD-FILE).

namespace sagitta::test {
namespace {

using nlohmann::json;

class Pieces : public testing::Test {
 protected:
  ScratchFolder scratch;

  void make(const std::string& preset, const std::string& extra = "") {
    write_file(scratch / "board.toml", bytes_of(preset_path(preset)) + extra);
    write_file(scratch / "pair.svg",
               "<svg xmlns='http://www.w3.org/2000/svg' width='30mm' height='8mm' viewBox='0 0 30 8'>"
               "<rect width='10' height='8' fill='#c02020'/><rect x='20' width='10' height='8' fill='#2020c0'/></svg>");
    const Outcome made = sagitta("export '" + (scratch / "board.toml").string() +
                                 "' --only step,stl,3mf,csv,dxf --to '" + (scratch / "out").string() + "'");
    ASSERT_EQ(made.code, 0) << made.err;
  }
  ReadStep step(const std::string& name) const { return read_step(bytes_of(scratch / ("out/" + name + ".step"))); }
  json manifest() const { return json::parse(bytes_of(scratch / "out/manifest.json")); }
};

const char* pair_of_blocks =
    "\n[[inlays]]\nshape = \"artwork\"\nfile = \"pair.svg\"\nfrets = [4]\nalong = 30\ndepth = 1.2\npiece_thickness = "
    "1.5\n"
    "colours = { \"#c02020\" = \"bone\", \"#2020c0\" = \"brass\" }\n";

// Two blocks of 10 x 8 mm, their pockets across the slots; no cutter is named, so that their corners stay sharp.
TEST_F(Pieces, HaveTheirNamesMaterialsAndVolumesInEveryFile) {
  make("reed-tenor", pair_of_blocks);
  const ReadStep flat = step("pieces"), inlaid = step("inlaid"), job = step("job");
  for (const char* name : {"bone-01", "brass-01"}) {
    EXPECT_NEAR(mass_properties(TopoDS::Solid(flat.part(name).shape)).volume, 10 * 8 * 1.5, 0.02)
        << name;  // refit: 0.0012 mm
    EXPECT_NEAR(mass_properties(TopoDS::Solid(inlaid.part(name).shape)).volume, 10 * 8 * 1.5, 0.02) << name;
    EXPECT_EQ(unsound(TopoDS::Solid(flat.part(name).shape)), "");
    EXPECT_EQ(flat.part(name).colour, inlaid.part(name).colour);
    EXPECT_NE(bytes_of(scratch / "out/pieces.csv").find(name), std::string::npos);
    EXPECT_NE(bytes_of(scratch / "out/board.dxf").find("piece-" + std::string(name).substr(0, 5 - (name[1] == 'o'))),
              std::string::npos);
  }
  EXPECT_NE(flat.part("bone-01").colour, flat.part("brass-01").colour);
  EXPECT_EQ(flat.part("bone-01").layer, "pieces of bone");
  EXPECT_EQ(inlaid.part("board").layer, "board");
  EXPECT_EQ(inlaid.roots.size(), 1U);
  for (const TopoDS_Solid& solid : job.solids()) EXPECT_EQ(unsound(solid), "");
}

// The preset's ten dots: pockets of pi (d/2 + clearance)^2 down from the blank's top, pieces of pi (d/2)^2 as thick as
// the file says.
TEST_F(Pieces, FillTheirPocketsButForTheClearance) {
  make("heron-six");
  const Board board = read_board((scratch / "board.toml").string()).board;
  const Inlay& dot = board.inlays.at(0);
  double blank = 0, top = 0, wood = 0, pieces = 0;
  const json listed = manifest();
  for (const json& file : listed["files"])
    if (file["file"] == "blank.step") blank = file["bodies"][0]["volume"], top = file["bodies"][0]["bbox"][1][2];
  std::size_t count = 0;
  for (const ReadPart& part : step("inlaid").parts) {
    if (part.group != "heron-six inlaid") continue;
    (part.name == "board" ? wood : pieces) += mass_properties(TopoDS::Solid(part.shape)).volume;
    count += part.name != "board";
  }
  const double r = dot.diameter / 2, pi = std::numbers::pi, deep = top - (board.board.thickness - dot.depth);
  ASSERT_EQ(count, 10U);
  EXPECT_NEAR(pieces, 10 * pi * r * r * (dot.depth + 0.2), 1e-4);
  EXPECT_NEAR(blank - wood, 10 * pi * (r + dot.clearance) * (r + dot.clearance) * deep, 1e-4);
}

TEST_F(Pieces, OneAssemblyCanBeAskedFor) {
  write_file(scratch / "board.toml", bytes_of(preset_path("heron-six")));
  const std::string board = "'" + (scratch / "board.toml").string() + "'",
                    to = " --to '" + (scratch / "one").string() + "'";
  ASSERT_EQ(sagitta("export " + board + " --only step --stage inlaid" + to).code, 0);
  EXPECT_EQ(listing(scratch / "one"), "inlaid.step\nmanifest.json\n");
  ASSERT_EQ(
      sagitta("export '" + (scratch / "one/manifest.json").string() + "' --to '" + (scratch / "two").string() + "'")
          .code,
      0);
  EXPECT_EQ(bytes_of(scratch / "one/inlaid.step"), bytes_of(scratch / "two/inlaid.step"));
}

}  // namespace
}  // namespace sagitta::test
