#include "solid/StepTurn.hpp"

#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <STEPControl_Controller.hxx>

namespace sagitta {
namespace {

std::mutex& only_one() {
  static std::mutex one;
  return one;
}

}  // namespace

StepTurn::StepTurn() : turn_(only_one()) {
  STEPControl_Controller::Init();
  Interface_Static::SetCVal("write.step.schema", "AP214IS");
  Interface_Static::SetCVal("write.step.unit", "MM");
  Interface_Static::SetIVal("write.surfacecurve.mode", 1);
  Message_SequenceOfPrinters& printers = Message::DefaultMessenger()->ChangePrinters();
  if (!printers.IsEmpty()) printers.Clear();
}

}  // namespace sagitta
