#include "cad/StepFile.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPConstruct.hxx>
#include <STEPConstruct_Styles.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_GeometricCurveSet.hxx>
#include <StepShape_ShapeRepresentation.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_Area.hxx>
#include <XCAFDoc_Centroid.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XCAFDoc_Volume.hxx>
#include <XSControl_TransferWriter.hxx>
#include <XSControl_WorkSession.hxx>
#include <sstream>
#include <stdexcept>

#include "board/Length.hpp"
#include "cad/StepDress.hpp"
#include "text/StepString.hpp"

namespace sagitta {
namespace {

Handle(TCollection_HAsciiString) text(const char* value) { return new TCollection_HAsciiString(value); }

/// Names stand as marks of one width until the text is complete: the kernel's writer breaks long names in the middle of
/// a character.
class Names {
 public:
  std::string mark(const std::string& name) {
    names_.push_back(name);
    return mark_of(names_.size() - 1);
  }
  std::string put_in(const std::string& whole) const {
    std::string result;
    std::size_t from = 0;
    for (std::size_t at; (at = whole.find(start, from)) != std::string::npos; from = at + start.size() + digits) {
      result.append(whole, from, at - from);
      result += step_string(names_.at(std::stoul(whole.substr(at + start.size(), digits))));
    }
    return result.append(whole, from);
  }

 private:
  static constexpr std::string_view start = "SAGITTA-NAME-";
  static constexpr std::size_t digits = 6;
  static std::string mark_of(std::size_t number) {
    const std::string shown = std::to_string(number);
    return std::string(start) + std::string(digits - shown.size(), '0') + shown;
  }
  std::vector<std::string> names_;
};

/// The kernel's document of a model.
class Document {
 public:
  Document(const StepModel& model, Names& names) : names_(names) {
    document_ = new TDocStd_Document("BinXCAF");
    shapes_ = XCAFDoc_DocumentTool::ShapeTool(document_->Main());
    XCAFDoc_DocumentTool::SetLengthUnit(document_, 1, UnitsMethods_LengthUnit_Millimeter);
    const TDF_Label whole = model.bodies.size() > 1 ? assembly(model.name) : TDF_Label();
    for (const StepBody& body : model.bodies) weigh(part(body.solid, body.name, whole), body.figures);
    for (const StepFace& face : model.faces) part(face.face, face.name, whole);
    if (model.lines.empty()) return;
    const TDF_Label lines = assembly(model.name + " lines");
    for (const StepLine& line : model.lines) part(line.wire, line.name, lines);
  }

  const Handle(TDocStd_Document) & handle() const { return document_; }
  /// In an assembly the tool sees to it that its compound is made.
  void finish() { shapes_->UpdateAssemblies(); }

 private:
  TDF_Label assembly(const std::string& name) {
    const TDF_Label label = shapes_->NewShape();
    TDataStd_Name::Set(label, names_.mark(name).c_str());
    return label;
  }

  /// A product of its own, inside `whole` when that is one.
  TDF_Label part(const TopoDS_Shape& shape, const std::string& name, const TDF_Label& whole) {
    const TDF_Label label = shapes_->AddShape(shape, Standard_False);
    const std::string mark = names_.mark(name);
    TDataStd_Name::Set(label, mark.c_str());
    if (!whole.IsNull()) TDataStd_Name::Set(shapes_->AddComponent(whole, label, TopLoc_Location()), mark.c_str());
    return label;
  }

  static void weigh(const TDF_Label& label, const MassProperties& figures) {
    XCAFDoc_Volume::Set(label, figures.volume);
    XCAFDoc_Area::Set(label, figures.area);
    XCAFDoc_Centroid::Set(label, gp_Pnt(figures.centroid[0], figures.centroid[1], figures.centroid[2]));
  }

  Names& names_;
  Handle(TDocStd_Document) document_;
  Handle(XCAFDoc_ShapeTool) shapes_;
};

void set_options(const StepStyle& style) {
  // Asking for a writer fills the table of options that the next lines set.
  const STEPCAFControl_Writer filled;
  Interface_Static::SetCVal("write.step.schema", style.schema == StepSchema::ap242 ? "AP242DIS" : "AP214IS");
  Interface_Static::SetCVal("write.step.unit", style.units == Units::inch ? "INCH" : "MM");
  Interface_Static::SetIVal("write.surfacecurve.mode", 1);
  Message::DefaultMessenger()->ChangePrinters().Clear();
}

/// Everything in the header that would tell the hour, the machine or the user is replaced by a fixed word.
void fix_header(const Handle(StepData_StepModel) & model, const StepStyle& style, const std::string& name,
                Names& names) {
  APIHeaderSection_MakeHeader header(model);
  // ISO 10303-242:2014, Annex E; the kernel's own word for it has a full stop in it.
  if (style.schema == StepSchema::ap242)
    header.SetSchemaIdentifiersValue(
        1, text(names.mark("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }").c_str()));
  header.SetName(text(names.mark(name).c_str()));
  header.SetTimeStamp(text("2000-01-01T00:00:00"));
  header.SetAuthorValue(1, text(""));
  header.SetOrganizationValue(1, text(""));
  header.SetPreprocessorVersion(text("Sagitta"));
  header.SetOriginatingSystem(text("Sagitta"));
  header.SetAuthorisation(text(""));
  header.SetDescriptionValue(1, text(("fretboard, " + std::string(unit_name(style.units))).c_str()));
}

/// The kernel counts an assembly's parts on from one file to the next.
void number_parts(const Handle(StepData_StepModel) & model) {
  int next = 1;
  for (int i = 1; i <= model->NbEntities(); ++i) {
    const auto use = Handle(StepRepr_NextAssemblyUsageOccurrence)::DownCast(model->Value(i));
    if (!use.IsNull()) use->SetId(text(std::to_string(next++).c_str()));
  }
}

/// Programs that show a file's solids and not its products show these names.
void name_solids(const StepModel& model, const Handle(XSControl_WorkSession) & session, Names& names) {
  for (const StepBody& body : model.bodies) {
    const Handle(StepRepr_RepresentationItem) item =
        STEPConstruct::FindEntity(session->TransferWriter()->FinderProcess(), body.solid);
    if (!item.IsNull()) item->SetName(text(names.mark(body.name).c_str()));
  }
}

std::string printed(const Handle(StepData_StepModel) & model) {
  StepData_StepWriter writer(model);
  writer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream stream;
  if (!writer.Print(stream)) throw std::runtime_error("the solid could not be written as STEP");
  return std::move(stream).str();
}

/// The file's entities of the model's bodies and lines, with their colours and layers.
std::vector<StepDressed> dressed(const StepModel& model, const Handle(XSControl_WorkSession) & session,
                                 const Handle(StepData_StepModel) & entities) {
  std::vector<StepDressed> items;
  const STEPConstruct_Styles styles(session);
  for (const StepBody& body : model.bodies) {
    const Handle(StepRepr_RepresentationItem) item =
        STEPConstruct::FindEntity(session->TransferWriter()->FinderProcess(), body.solid);
    const Handle(StepRepr_RepresentationContext) context = styles.FindContext(body.solid);
    if (item.IsNull() || context.IsNull()) throw std::runtime_error("a body is missing in the STEP file");
    items.push_back({entities->Number(item), entities->Number(context), false, body.colour, body.layer});
  }
  std::size_t line = 0;
  for (int i = 1; i <= entities->NbEntities() && line < model.lines.size(); ++i) {
    const auto shape = Handle(StepShape_ShapeRepresentation)::DownCast(entities->Value(i));
    if (shape.IsNull() || shape->NbItems() == 0) continue;
    for (int k = 1; k <= shape->NbItems(); ++k) {
      const auto set = Handle(StepShape_GeometricCurveSet)::DownCast(shape->ItemsValue(k));
      if (set.IsNull()) continue;
      const StepLine& dress = model.lines.at(line++);
      items.push_back(
          {entities->Number(set), entities->Number(shape->ContextOfItems()), true, dress.colour, dress.layer});
    }
  }
  if (line != model.lines.size()) throw std::runtime_error("a line is missing in the STEP file");
  return items;
}

}  // namespace

std::string step_text(const StepModel& model, const StepStyle& style) {
  set_options(style);
  STEPCAFControl_Writer writer;
  writer.SetColorMode(Standard_False);
  writer.SetLayerMode(Standard_False);
  writer.SetNameMode(Standard_True);
  writer.SetPropsMode(Standard_True);
  Names names;
  Document document(model, names);
  document.finish();
  if (!writer.Transfer(document.handle(), STEPControl_AsIs))
    throw std::runtime_error("the solid could not be turned into STEP");
  const Handle(XSControl_WorkSession) session = writer.ChangeWriter().WS();
  const Handle(StepData_StepModel) entities = Handle(StepData_StepModel)::DownCast(session->Model());
  fix_header(entities, style, model.name, names);
  name_solids(model, session, names);
  number_parts(entities);
  std::string whole = names.put_in(printed(entities));
  const std::size_t end = whole.rfind("ENDSEC;");
  if (end == std::string::npos) throw std::runtime_error("the STEP file has no end");
  return whole.insert(end, step_dress(dressed(model, session, entities), entities->NbEntities() + 1));
}

}  // namespace sagitta
