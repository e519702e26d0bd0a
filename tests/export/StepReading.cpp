#include "StepReading.hpp"

#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TColStd_HSequenceOfExtendedString.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <XCAFDoc_Area.hxx>
#include <XCAFDoc_Centroid.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_LayerTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XCAFDoc_Volume.hxx>
#include <stdexcept>

#include "CommandLine.hpp"

namespace sagitta::test {
namespace {

std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return "";
  return TCollection_AsciiString(name->Get()).ToCString();
}

class Walk {
 public:
  Walk(const Handle(TDocStd_Document) & document, ReadStep& found) : found_(found) {
    colours_ = XCAFDoc_DocumentTool::ColorTool(document->Main());
    layers_ = XCAFDoc_DocumentTool::LayerTool(document->Main());
  }

  void into(const TDF_Label& label, const std::string& group) {
    if (!XCAFDoc_ShapeTool::IsAssembly(label)) return add(label, group);
    TDF_LabelSequence components;
    XCAFDoc_ShapeTool::GetComponents(label, components);
    for (int i = 1; i <= components.Length(); ++i) {
      TDF_Label part;
      if (XCAFDoc_ShapeTool::GetReferredShape(components.Value(i), part)) into(part, name_of(label));
    }
  }

 private:
  void add(const TDF_Label& label, const std::string& group) {
    ReadPart part;
    part.name = name_of(label);
    part.group = group;
    part.shape = XCAFDoc_ShapeTool::GetShape(label);
    dress(label, part.shape, part);
    for (TopExp_Explorer at(part.shape, TopAbs_EDGE); part.colour.empty() && at.More(); at.Next())
      dress({}, at.Current(), part);
    Handle(XCAFDoc_Volume) volume;
    if (label.FindAttribute(XCAFDoc_Volume::GetID(), volume)) part.volume = volume->Get();
    Handle(XCAFDoc_Area) area;
    if (label.FindAttribute(XCAFDoc_Area::GetID(), area)) part.area = area->Get();
    Handle(XCAFDoc_Centroid) centroid;
    if (label.FindAttribute(XCAFDoc_Centroid::GetID(), centroid))
      for (int i = 0; i < 3; ++i) part.centroid[i] = centroid->Get().Coord(i + 1);
    found_.parts.push_back(part);
  }

  void dress(const TDF_Label& label, const TopoDS_Shape& shape, ReadPart& part) const {
    Quantity_Color colour;
    for (const XCAFDoc_ColorType type : {XCAFDoc_ColorSurf, XCAFDoc_ColorCurv, XCAFDoc_ColorGen})
      if (part.colour.empty() &&
          (colours_->GetColor(shape, type, colour) || (!label.IsNull() && colours_->GetColor(label, type, colour))))
        part.colour = Quantity_Color::ColorToHex(colour).ToCString();
    Handle(TColStd_HSequenceOfExtendedString) names = new TColStd_HSequenceOfExtendedString;
    if (part.layer.empty() && layers_->GetLayers(shape, names) && names->Length() > 0)
      part.layer = TCollection_AsciiString(names->Value(1)).ToCString();
  }

  ReadStep& found_;
  Handle(XCAFDoc_ColorTool) colours_;
  Handle(XCAFDoc_LayerTool) layers_;
};

}  // namespace

const ReadPart& ReadStep::part(const std::string& name) const {
  for (const ReadPart& part : parts)
    if (part.name == name) return part;
  throw std::runtime_error("no part called " + name);
}

std::vector<TopoDS_Solid> ReadStep::solids() const {
  std::vector<TopoDS_Solid> solids;
  for (const ReadPart& part : parts)
    for (TopExp_Explorer at(part.shape, TopAbs_SOLID); at.More(); at.Next())
      solids.push_back(TopoDS::Solid(at.Current()));
  return solids;
}

ReadStep read_step(const std::string& text) {
  const ScratchFolder folder;
  write_file(folder / "a.step", text);
  STEPCAFControl_Reader reader;
  reader.SetPropsMode(true);
  reader.SetLayerMode(true);
  if (reader.ReadFile((folder / "a.step").c_str()) != IFSelect_RetDone) throw std::runtime_error("not a STEP file");
  ReadStep found;
  TColStd_SequenceOfAsciiString lengths, angles, solid_angles;
  reader.ChangeReader().FileUnits(lengths, angles, solid_angles);
  if (lengths.Length() > 0) found.unit = lengths.Value(1).ToCString();
  Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  if (!reader.Transfer(document)) throw std::runtime_error("nothing in the STEP file");
  TDF_LabelSequence labels;
  XCAFDoc_DocumentTool::ShapeTool(document->Main())->GetFreeShapes(labels);
  Walk walk(document, found);
  for (int i = 1; i <= labels.Length(); ++i) {
    found.roots.push_back(name_of(labels.Value(i)));
    walk.into(labels.Value(i), "");
  }
  return found;
}

}  // namespace sagitta::test
