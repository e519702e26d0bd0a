#include "export/StepFile.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XSControl_WorkSession.hxx>
#include <sstream>
#include <stdexcept>

#include "export/StepString.hpp"

namespace sagitta {
namespace {

/// Stands for the product's name until the text is complete: the kernel's writer breaks long names in the middle of a
/// character.
constexpr const char* product_mark = "SAGITTA-PRODUCT-NAME";

Handle(TCollection_HAsciiString) text(const char* value) { return new TCollection_HAsciiString(value); }

Quantity_Color colour_of(const std::string& hex) {
  Quantity_Color colour;
  if (!Quantity_Color::ColorFromHex(hex.c_str(), colour)) throw std::runtime_error("\"" + hex + "\" is not a colour");
  return colour;
}

/// A document with the solid in it under its name and colour.
Handle(TDocStd_Document) document(const TopoDS_Solid& solid, const BodyLook& look) {
  Handle(TDocStd_Document) result = new TDocStd_Document("BinXCAF");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(result->Main());
  const Handle(XCAFDoc_ColorTool) colours = XCAFDoc_DocumentTool::ColorTool(result->Main());
  XCAFDoc_DocumentTool::SetLengthUnit(result, 1, UnitsMethods_LengthUnit_Millimeter);
  const TDF_Label label = shapes->AddShape(solid, Standard_False);
  TDataStd_Name::Set(label, product_mark);
  colours->SetColor(label, colour_of(look.colour), XCAFDoc_ColorSurf);
  return result;
}

void set_options() {
  // Asking for a writer fills the table of options that the next lines set.
  const STEPCAFControl_Writer filled;
  Interface_Static::SetCVal("write.step.schema", "AP214IS");
  Interface_Static::SetCVal("write.step.unit", "MM");
  Interface_Static::SetIVal("write.surfacecurve.mode", 1);
  Message::DefaultMessenger()->ChangePrinters().Clear();
}

/// Everything in the header that would tell the hour, the machine or the user is replaced by a fixed word.
void fix_header(const Handle(StepData_StepModel) & model) {
  APIHeaderSection_MakeHeader header(model);
  header.SetName(text(product_mark));
  header.SetTimeStamp(text("2000-01-01T00:00:00"));
  header.SetAuthorValue(1, text(""));
  header.SetOrganizationValue(1, text(""));
  header.SetPreprocessorVersion(text("Sagitta"));
  header.SetOriginatingSystem(text("Sagitta"));
  header.SetAuthorisation(text(""));
  header.SetDescriptionValue(1, text("fretboard, mm"));
}

std::string printed(const Handle(StepData_StepModel) & model) {
  StepData_StepWriter writer(model);
  writer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream stream;
  if (!writer.Print(stream)) throw std::runtime_error("the solid could not be written as STEP");
  return std::move(stream).str();
}

std::string replaced(std::string whole, const std::string& mark, const std::string& with) {
  for (std::size_t at = whole.find(mark); at != std::string::npos; at = whole.find(mark, at + with.size()))
    whole.replace(at, mark.size(), with);
  return whole;
}

}  // namespace

std::string step_text(const TopoDS_Solid& solid, const BodyLook& look) {
  set_options();
  STEPCAFControl_Writer writer;
  writer.SetColorMode(Standard_True);
  writer.SetNameMode(Standard_True);
  if (!writer.Transfer(document(solid, look), STEPControl_AsIs))
    throw std::runtime_error("the solid could not be turned into STEP");
  const Handle(StepData_StepModel) model = Handle(StepData_StepModel)::DownCast(writer.ChangeWriter().WS()->Model());
  fix_header(model);
  return replaced(printed(model), product_mark, step_string(look.product));
}

}  // namespace sagitta
