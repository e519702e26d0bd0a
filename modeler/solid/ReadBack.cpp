#include "solid/ReadBack.hpp"

#include <STEPControl_Reader.hxx>
#include <STEPControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <XSControl_WorkSession.hxx>
#include <sstream>

#include "solid/StepTurn.hpp"

namespace sagitta {

std::vector<TopoDS_Solid> read_back(const TopoDS_Solid& solid) {
  const StepTurn turn;
  STEPControl_Writer writer;
  if (writer.Transfer(solid, STEPControl_AsIs) != IFSelect_RetDone) return {};
  const Handle(StepData_StepModel) model = Handle(StepData_StepModel)::DownCast(writer.WS()->Model());
  StepData_StepWriter printer(model);
  printer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::stringstream text;
  if (!printer.Print(text)) return {};
  STEPControl_Reader reader;
  if (reader.ReadStream("solid", text) != IFSelect_RetDone) return {};
  reader.TransferRoots();
  std::vector<TopoDS_Solid> solids;
  for (TopExp_Explorer it(reader.OneShape(), TopAbs_SOLID); it.More(); it.Next())
    solids.push_back(TopoDS::Solid(it.Current()));
  return solids;
}

}  // namespace sagitta
