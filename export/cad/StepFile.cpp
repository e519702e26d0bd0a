#include "cad/StepFile.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_Static.hxx>
#include <STEPControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_GeometricCurveSet.hxx>
#include <StepShape_ShapeRepresentation.hxx>
#include <TCollection_HAsciiString.hxx>
#include <sstream>
#include <stdexcept>

#include "board/Length.hpp"
#include "cad/StepDress.hpp"
#include "cad/StepFileNames.hpp"
#include "cad/StepFileProperties.hpp"
#include "cad/StepFileTransfer.hpp"
#include "solid/StepTurn.hpp"

namespace sagitta {
namespace {

Handle(TCollection_HAsciiString) text(const char* value) { return new TCollection_HAsciiString(value); }

void set_options(const StepStyle& style) {
  Interface_Static::SetCVal("write.step.schema", style.schema == StepSchema::ap242 ? "AP242DIS" : "AP214IS");
  Interface_Static::SetCVal("write.step.unit", style.units == Units::inch ? "INCH" : "MM");
}

/// Everything in the header that would tell the hour, the machine or the user is replaced by a fixed word.
void fix_header(const Handle(StepData_StepModel) & model, const StepStyle& style, const std::string& name,
                StepNames& names) {
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
void name_solids(const StepModel& model, const StepTransfer& transfer, StepNames& names) {
  for (const StepBody& body : model.bodies) transfer.item_of(body.solid)->SetName(text(names.mark(body.name).c_str()));
}

std::string printed(const Handle(StepData_StepModel) & model) {
  StepData_StepWriter writer(model);
  writer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream stream;
  if (!writer.Print(stream)) throw std::runtime_error("the solid could not be written as STEP");
  return std::move(stream).str();
}

/// The model's products, in the order of the file, and what each body weighs.
void take(StepTransfer& transfer, const StepModel& model, const Handle(StepData_StepModel) & entities) {
  const auto add_all = [&](const std::vector<StepTransfer::Part>& parts, const std::string& name) {
    parts.size() == 1 ? transfer.add(parts.front().shape, parts.front().name) : transfer.add(parts, name);
  };
  std::vector<StepTransfer::Part> bodies, lines;
  for (const StepBody& body : model.bodies) bodies.push_back({body.solid, body.name});
  for (const StepLine& line : model.lines) lines.push_back({line.wire, line.name});
  if (!bodies.empty()) add_all(bodies, model.name);
  for (const StepFace& face : model.faces) transfer.add(face.face, face.name);
  if (!lines.empty()) transfer.add(lines, model.name + " lines");
  for (const StepBody& body : model.bodies)
    add_step_properties(entities, transfer.product_of(body.solid), transfer.item_of(body.solid), body.figures);
}

/// The file's entities of the model's bodies and lines, with their colours and layers.
std::vector<StepDressed> dressed(const StepModel& model, const StepTransfer& transfer,
                                 const Handle(StepData_StepModel) & entities) {
  std::vector<StepDressed> items;
  for (const StepBody& body : model.bodies) {
    const Handle(StepRepr_RepresentationContext) context =
        transfer.product_of(body.solid)->UsedRepresentation()->ContextOfItems();
    items.push_back(
        {entities->Number(transfer.item_of(body.solid)), entities->Number(context), false, body.colour, body.layer});
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
  const StepTurn turn;
  set_options(style);
  STEPControl_Writer writer;
  const Handle(StepData_StepModel) entities = writer.Model(true);
  StepNames names;
  StepTransfer transfer(entities, names);
  take(transfer, model, entities);
  fix_header(entities, style, model.name, names);
  name_solids(model, transfer, names);
  number_parts(entities);
  std::string whole = names.put_in(printed(entities));
  const std::size_t end = whole.rfind("ENDSEC;");
  if (end == std::string::npos) throw std::runtime_error("the STEP file has no end");
  return whole.insert(end, step_dress(dressed(model, transfer, entities), entities->NbEntities() + 1));
}

}  // namespace sagitta
