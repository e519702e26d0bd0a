#include "cad/StepFile.hpp"

#include <gtest/gtest.h>

#include <BRepAdaptor_Curve.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "cad/StepFileLines.hpp"
#include "export/CommandLine.hpp"
#include "export/StepReading.hpp"
#include "input/PreparedFile.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

using test::read_step;
using test::ReadStep;

PreparedBoard ready(const std::string& preset) {
  return std::get<PreparedBoard>(prepare(test::preset_path(preset).string()));
}

StepModel model_of(const std::string& preset, Stage stage) {
  const PreparedBoard board = ready(preset);
  const TopoDS_Solid solid = make_solid(lift(board.plan(stage)));
  StepModel model{preset, {{preset, "board", "#2b221e", solid, mass_properties(solid)}}, {}};
  model.lines = step_lines(board.surface(), guide_lines(board, stage));
  return model;
}

/// A block of 10 x 20 x 30 and a rod of radius 2 and length 5: volume, area and centroid by hand.
StepModel block_and_rod() {
  const TopoDS_Solid block = BRepPrimAPI_MakeBox(10, 20, 30).Solid();
  const TopoDS_Solid rod = TopoDS::Solid(BRepPrimAPI_MakeCylinder(2, 5).Solid());
  return {"pair",
          {{"block", "wood", "#806040", block, mass_properties(block)},
           {"rod", "metal", "#c0c0d0", rod, mass_properties(rod)}},
          {}};
}

TEST(StepFile, ReadsBackAsItWasWritten) {
  const StepModel model = model_of("heron-six", Stage::board);
  const ReadStep found = read_step(step_text(model));
  EXPECT_EQ(found.roots, (std::vector<std::string>{"heron-six", "heron-six lines"}));
  EXPECT_EQ(found.unit, "millimetre");
  ASSERT_EQ(found.solids().size(), 1U);
  // The file carries 15 digits of each number.
  EXPECT_NEAR(mass_properties(found.solids()[0]).volume / mass_properties(model.bodies[0].solid).volume, 1, 1e-9);
  EXPECT_EQ(unsound(found.solids()[0]), "");
  EXPECT_EQ(found.part("heron-six").colour, "#2B221E");
  EXPECT_EQ(found.part("heron-six").layer, "board");
}

TEST(StepFile, HoldsAnAssemblyWithNamesColoursAndLayers) {
  for (const StepSchema schema : {StepSchema::ap214, StepSchema::ap242}) {
    const ReadStep found = read_step(step_text(block_and_rod(), {schema, Units::mm}));
    EXPECT_EQ(found.roots, std::vector<std::string>{"pair"});
    ASSERT_EQ(found.parts.size(), 2U);
    EXPECT_EQ(found.part("block").group, "pair");
    EXPECT_EQ(found.part("block").colour, "#806040");
    EXPECT_EQ(found.part("rod").colour, "#C0C0D0");
    EXPECT_EQ(found.part("block").layer, "wood");
    EXPECT_EQ(found.part("rod").layer, "metal");
    double sum = 0;
    for (const TopoDS_Solid& solid : found.solids()) sum += mass_properties(solid).volume;
    EXPECT_NEAR(sum, 6000 + 20 * M_PI, 1e-6);
  }
}

// CAx-IF, "Geometric and Assembly Validation Properties", Rel. 4.4: volume, area and centroid of each solid, so that
// the receiver can compute them again.
TEST(StepFile, CarriesValidationProperties) {
  const ReadStep found = read_step(step_text(block_and_rod()));
  EXPECT_NEAR(found.part("block").volume, 6000, 1e-6);
  EXPECT_NEAR(found.part("block").area, 2 * (200 + 300 + 600), 1e-6);
  EXPECT_NEAR(found.part("block").centroid[2], 15, 1e-9);
  EXPECT_NEAR(found.part("rod").volume, 20 * M_PI, 1e-9);
  EXPECT_NEAR(found.part("rod").area, 2 * M_PI * 2 * (2 + 5), 1e-9);
  EXPECT_NEAR(found.part("rod").centroid[2], 2.5, 1e-9);
}

TEST(StepFile, SpeaksInches) {
  const std::string text = step_text(block_and_rod(), {StepSchema::ap214, Units::inch});
  const ReadStep found = read_step(text);
  EXPECT_EQ(found.unit, "INCH");
  double sum = 0;
  for (const TopoDS_Solid& solid : found.solids()) sum += mass_properties(solid).volume;
  EXPECT_NEAR(sum, 6000 + 20 * M_PI, 1e-6) << "the reader turns them into mm";
  // The block's far corner lies at 10 mm: 0.393700787 in.
  EXPECT_NE(text.find("0.39370078740"), std::string::npos);
  EXPECT_EQ(text.find("(10.,20.,30.)"), std::string::npos);
}

// ISO 10303-214:2001 and ISO 10303-242:2014, Annex E: the schema's name with the object identifier of its edition.
TEST(StepFile, NamesItsSchema) {
  const StepModel model = block_and_rod();
  EXPECT_NE(step_text(model).find("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));"), std::string::npos);
  EXPECT_NE(step_text(model, {StepSchema::ap242, Units::mm})
                .find("FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }'));"),
            std::string::npos);
}

TEST(StepFile, NamesProductsAndSolids) {
  for (const StepSchema schema : {StepSchema::ap214, StepSchema::ap242}) {
    const std::string text = step_text(block_and_rod(), {schema, Units::mm});
    for (const std::string name : {"block", "rod"}) {
      EXPECT_NE(text.find("= PRODUCT('" + name + "'"), std::string::npos);
      EXPECT_NE(text.find("= MANIFOLD_SOLID_BREP('" + name + "'"), std::string::npos);
    }
  }
}

/// The ends of a wire read back: lowest and highest y of its edges, and how many there are.
struct Ends {
  gp_Pnt low{0, 1e9, 0}, high{0, -1e9, 0};
  int edges = 0;
};

Ends ends_of(const TopoDS_Shape& shape) {
  Ends ends;
  for (TopExp_Explorer at(shape, TopAbs_EDGE); at.More(); at.Next(), ++ends.edges) {
    const BRepAdaptor_Curve curve(TopoDS::Edge(at.Current()));
    for (const double t : {curve.FirstParameter(), curve.LastParameter()}) {
      const gp_Pnt p = curve.Value(t);
      if (p.Y() < ends.low.Y()) ends.low = p;
      if (p.Y() > ends.high.Y()) ends.high = p;
    }
  }
  return ends;
}

// The middle line of a slot's floor lies at d(n) = L (1 - 2^(-n/12)) and, at the edges, as deep below the crown as the
// arc drops there and the slot is deep. h = r - 1/2 sqrt(4 r^2 - c^2): Machinery's Handbook, 31st ed., p. 79.
TEST(StepFile, CarriesTheSlotsMiddleLines) {
  const PreparedBoard board = ready("heron-six");
  const ReadStep found = read_step(step_text(model_of("heron-six", Stage::board)));
  int slots = 0;
  for (const test::ReadPart& part : found.parts) slots += part.layer == "slot middle lines";
  EXPECT_EQ(slots, 22);
  for (const int fret : {1, 12, 22}) {
    const test::ReadPart& line = found.part("fret " + std::to_string(fret) + " slot");
    EXPECT_EQ(line.group, "heron-six lines");
    EXPECT_EQ(line.colour, "#C8102E");
    const Ends ends = ends_of(line.shape);
    EXPECT_EQ(ends.edges, 1);
    const double x = 648 * (1 - std::exp2(-fret / 12.0));
    EXPECT_NEAR(ends.low.X(), x, 1e-9);
    EXPECT_NEAR(ends.high.X(), x, 1e-9);
    // Width: outer strings 35.5 to 52 over the scale, and 3.5 mm beside each; radius 254 to 406 at the heel's end.
    const double half = (35.5 + (52 - 35.5) * x / 648) / 2 + 3.5;
    const double heel = 648 * (1 - std::exp2(-22 / 12.0)) + 10;
    const double r = 254 + (406 - 254) * x / heel, drop = r - 0.5 * std::sqrt(4 * r * r - 4 * half * half);
    EXPECT_NEAR(ends.low.Y(), -half, 1e-9);
    EXPECT_NEAR(ends.low.Z(), 6.3 - drop - (1.7 + 0.35), 1e-9);
  }
}

TEST(StepFile, CarriesPocketsAndOutlineAsClosedLines) {
  const ReadStep found = read_step(step_text(model_of("heron-six", Stage::board)));
  int pockets = 0;
  for (const test::ReadPart& part : found.parts) {
    if (part.layer != "pockets") continue;
    ++pockets;
    double length = 0;
    for (TopExp_Explorer at(part.shape, TopAbs_EDGE); at.More(); at.Next()) {
      const BRepAdaptor_Curve curve(TopoDS::Edge(at.Current()));
      EXPECT_EQ(curve.GetType(), GeomAbs_Circle);
      length += curve.Circle().Radius() * (curve.LastParameter() - curve.FirstParameter());
      EXPECT_NEAR(curve.Value(curve.FirstParameter()).Z(), 6.3 - 1.5, 1e-9);
    }
    EXPECT_NEAR(length, M_PI * (6 + 2 * 0.05), 1e-9) << part.name;
  }
  EXPECT_EQ(pockets, 10);
  EXPECT_EQ(found.part("board outline").layer, "outline");
  EXPECT_EQ(ends_of(found.part("board outline").shape).edges, 4);
}

TEST(StepFile, KeepsANameInAnyLanguage) {
  const std::string name = "R\xc3\xb6hricht \"7\" 'fan' \xe6\x9d\xbf board";
  StepModel model = block_and_rod();
  model.bodies[1].name = name;
  EXPECT_EQ(read_step(step_text(model)).parts.at(1).name, name);
}

TEST(StepFile, GivesTheSameBytesEveryTime) {
  StepModel model = model_of("reed-tenor", Stage::board);
  const std::string first = step_text(model);
  EXPECT_TRUE(first == step_text(model));
  EXPECT_TRUE(first == step_text(model_of("reed-tenor", Stage::board)));
  model.bodies[0].colour = "#102031";
  EXPECT_FALSE(first == step_text(model));
}

TEST(StepFile, TellsNothingOfTheHourOrTheMachine) {
  const std::string text = step_text(block_and_rod());
  EXPECT_NE(text.find("FILE_NAME('pair','2000-01-01T00:00:00',(''),(''),"), std::string::npos) << text.substr(0, 400);
}

TEST(StepFile, RefusesWhatIsNoColour) {
  StepModel model = block_and_rod();
  model.bodies[0].colour = "ebony";
  EXPECT_THROW(step_text(model), std::runtime_error);
}

}  // namespace
}  // namespace sagitta
