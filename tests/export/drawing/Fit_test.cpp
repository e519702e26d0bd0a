#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "Places.hpp"
#include "export/CommandLine.hpp"
#include "export/DrawingCopy.hpp"

/// How pieces and pockets fit, looked at by another library on the drawings that leave the program (check_fit.py).

namespace sagitta::test {
namespace {

using nlohmann::json;

constexpr double microns_3 = 0.003;  // the promise: clearance within 3 um everywhere
constexpr double at_rest = 0.001;    // mm2

/// A board's folder with its drawings, exported; what shapely says of board.dxf.
json fit_of(const std::string& text, const ScratchFolder& scratch, double radius, double clearance) {
  write_file(scratch / "board.toml", text);
  const Outcome outcome = sagitta("export '" + (scratch / "board.toml").string() + "' --only dxf --to '" +
                                  (scratch / "out").string() + "'");
  if (outcome.code != 0) throw std::runtime_error(outcome.err);
  const Outcome looked =
      shell("/usr/bin/python3 '" + places::tests() + "/export/check_fit.py' '" + (scratch / "out/board.dxf").string() +
            "' " + std::to_string(radius) + " " + std::to_string(clearance));
  if (looked.code != 0) throw std::runtime_error(looked.err);
  return json::parse(looked.out);
}

void expect_fit(const json& seen, double clearance) {
  EXPECT_GT(seen["nearest"], clearance - microns_3);
  EXPECT_LT(seen["unreached"], at_rest);
  EXPECT_LT(seen["pocket_unreached"], at_rest);
  EXPECT_LT(seen["off"], microns_3);
}

TEST(FitOnPaper, HoldsForThePresetsWithDrawings) {
  const struct {
    const char* name;
    double radius;
  } boards[] = {{"wave-border", 0.3}, {"egret-figure", 0.4}, {"numerals", 0.3}};
  for (const auto& [name, radius] : boards) {
    SCOPED_TRACE(name);
    const ScratchFolder scratch;
    copy_drawings(scratch.path());
    expect_fit(fit_of(bytes_of(preset_path(name)), scratch, radius, 0.05), 0.05);
  }
}

/// Reeds and a pond: two materials that touch, islands of one material a little apart, and a vein.
constexpr const char* pond =
    "<svg xmlns='http://www.w3.org/2000/svg' width='24mm' height='16mm' viewBox='0 0 24 16'>"
    "<path fill='#204080' d='M0 16V12C4 9 8 15 12 12S20 9 24 12V16Z'/>"
    "<path fill='#408020' d='M2 11.3C2 7 4 4 5 0C6 4 7 8 6 11.9C5 12 3 11.6 2 11.3Z M7.02 3H9.5V8H6.9Z M9.56 "
    "3H12V8H9.51Z'/>"
    "<path fill='#c0a040' d='M14 1A4 4 0 0 1 22 1A4 4 0 0 1 14 1Z'/></svg>";

TEST(FitOnPaper, HoldsBetweenMaterialsAndBetweenIslandsOfOne) {
  for (const double clearance : {0.02, 0.05, 0.15}) {
    SCOPED_TRACE(clearance);
    const ScratchFolder scratch;
    write_file(scratch / "pond.svg", pond);
    std::string text = bytes_of(preset_path("wave-border"));
    const std::size_t from = text.find("[[inlays]]"), to = text.find("[[cutters]]");
    std::ostringstream inlay;
    inlay << "[[inlays]]\nshape = \"artwork\"\nfile = \"pond.svg\"\nfrets = [3]\nalong = 24\ndepth = 1.5\nclearance = "
          << clearance
          << "\ncolours = { \"#204080\" = \"shell\", \"#408020\" = \"bone\", \"#c0a040\" = \"brass\" }\n\n";
    text.replace(from, to - from, inlay.str());
    for (const char* material : {"bone", "brass"})
      text += std::string("\n[[sheets]]\nmaterial = \"") + material +
              "\"\nlength = 60\nwidth = 40\nthickness = 1.8\nmargin = 1\nclamp = 1\n";
    const json seen = fit_of(text, scratch, 0.3, clearance);
    EXPECT_GT(seen["nearest"], clearance - microns_3);
    EXPECT_LT(seen["nearest"], clearance + microns_3);
    EXPECT_LT(seen["unreached"], at_rest);
    EXPECT_LT(seen["pocket_unreached"], at_rest);
    EXPECT_EQ(seen["pieces"], 5);
  }
}

}  // namespace
}  // namespace sagitta::test
