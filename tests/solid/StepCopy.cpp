#include "solid/StepCopy.hpp"

#include <unistd.h>

#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Reader.hxx>
#include <STEPControl_Writer.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <filesystem>

namespace sagitta {

StepCopy through_step(const TopoDS_Solid& solid, const std::string& name) {
  const std::string path =
      (std::filesystem::temp_directory_path() / ("sagitta-" + std::to_string(::getpid()) + "-" + name + ".step"))
          .string();
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  STEPControl_Writer writer;
  if (writer.Transfer(solid, STEPControl_AsIs) != IFSelect_RetDone || writer.Write(path.c_str()) != IFSelect_RetDone)
    return {{}, "not written"};
  STEPControl_Reader reader;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone) return {{}, "not read"};
  reader.TransferRoots();
  const TopoDS_Shape shape = reader.OneShape();
  std::filesystem::remove(path);
  StepCopy copy;
  int solids = 0;
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next(), ++solids)
    copy.solid = TopoDS::Solid(it.Current());
  if (solids != 1) copy.trouble = std::to_string(solids) + " solids";
  return copy;
}

}  // namespace sagitta
