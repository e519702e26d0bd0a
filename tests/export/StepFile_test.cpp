#include "export/StepFile.hpp"

#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <Interface_Static.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include "CommandLine.hpp"
#include "export/ReadyBoard.hpp"
#include "plan/Plan.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

TopoDS_Solid solid_of(const std::string& preset, Stage stage) {
  const auto prepared = prepare(test::preset_path(preset));
  const ReadyBoard& ready = std::get<ReadyBoard>(prepared);
  return make_solid(lift(std::get<Plan>(make_plan(ready.file.board, ready.layout, ready.surface, stage))));
}

/// What a reader finds in a STEP file.
struct Found {
  std::string name, unit;
  Quantity_Color colour;
  TopoDS_Solid solid;
  int solids = 0;
};

Found read_back(const std::string& text) {
  const test::ScratchFolder folder;
  test::write_file(folder / "a.step", text);
  STEPCAFControl_Reader reader;
  if (reader.ReadFile((folder / "a.step").c_str()) != IFSelect_RetDone) throw std::runtime_error("not a STEP file");
  TColStd_SequenceOfAsciiString lengths, angles, solid_angles;
  reader.ChangeReader().FileUnits(lengths, angles, solid_angles);
  Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  if (!reader.Transfer(document)) throw std::runtime_error("nothing in the STEP file");
  TDF_LabelSequence labels;
  XCAFDoc_DocumentTool::ShapeTool(document->Main())->GetFreeShapes(labels);
  Found found;
  Handle(TDataStd_Name) name;
  if (labels.Value(1).FindAttribute(TDataStd_Name::GetID(), name))
    found.name = TCollection_AsciiString(name->Get()).ToCString();
  if (lengths.Length() > 0) found.unit = lengths.Value(1).ToCString();
  const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(labels.Value(1));
  for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next(), ++found.solids)
    found.solid = TopoDS::Solid(at.Current());
  XCAFDoc_DocumentTool::ColorTool(document->Main())->GetColor(found.solid, XCAFDoc_ColorSurf, found.colour);
  return found;
}

TEST(StepFile, ReadsBackAsItWasWritten) {
  const TopoDS_Solid solid = solid_of("heron-six", Stage::board);
  const Found found = read_back(step_text(solid, {"heron-six board", "#2b221e"}));
  EXPECT_EQ(found.name, "heron-six board");
  EXPECT_EQ(found.unit, "millimetre");
  ASSERT_EQ(found.solids, 1);
  // The file carries 15 digits of each number.
  EXPECT_NEAR(figures(found.solid).volume / figures(solid).volume, 1, 1e-9);
  EXPECT_EQ(unsound(found.solid), "");
  EXPECT_EQ(Quantity_Color::ColorToHex(found.colour).ToCString(), std::string("#2B221E"));
}

TEST(StepFile, KeepsANameInAnyLanguage) {
  const std::string name = "R\xc3\xb6hricht \"7\" 'fan' \xe6\x9d\xbf board";
  EXPECT_EQ(read_back(step_text(solid_of("reed-tenor", Stage::blank), {name, "#808080"})).name, name);
}

TEST(StepFile, GivesTheSameBytesEveryTime) {
  const TopoDS_Solid solid = solid_of("reed-tenor", Stage::board);
  const std::string first = step_text(solid, {"a", "#102030"});
  EXPECT_EQ(first, step_text(solid, {"a", "#102030"}));
  EXPECT_EQ(first, step_text(solid_of("reed-tenor", Stage::board), {"a", "#102030"}));
  EXPECT_NE(first, step_text(solid, {"a", "#102031"}));
}

TEST(StepFile, TellsNothingOfTheHourOrTheMachine) {
  const std::string text = step_text(solid_of("reed-tenor", Stage::blank), {"a", "#102030"});
  EXPECT_NE(text.find("FILE_NAME('a','2000-01-01T00:00:00',(''),(''),"), std::string::npos) << text.substr(0, 400);
  EXPECT_NE(text.find("FILE_SCHEMA(('AUTOMOTIVE_DESIGN"), std::string::npos) << "AP214 by its schema's name";
}

TEST(StepFile, RefusesWhatIsNoColour) {
  EXPECT_THROW(step_text(solid_of("reed-tenor", Stage::blank), {"a", "ebony"}), std::runtime_error);
}

}  // namespace
}  // namespace sagitta
