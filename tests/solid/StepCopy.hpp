#pragma once

#include <TopoDS_Solid.hxx>
#include <string>

namespace sagitta {

/// The solid as it comes back from a STEP file written by the kernel's plain writer; null with `trouble` set when the
/// file holds anything but one solid.
struct StepCopy {
  TopoDS_Solid solid;
  std::string trouble;
};

/// Writes to and reads from a file of this name in the system's folder for such files.
StepCopy through_step(const TopoDS_Solid& solid, const std::string& name);

}  // namespace sagitta
