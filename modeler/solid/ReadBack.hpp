#pragma once

/// A solid written as STEP and read again, in memory.

#include <TopoDS_Solid.hxx>
#include <vector>

namespace sagitta {

/// The solids that the kernel's reader makes of a STEP file with this solid, written and read in memory. Not to be
/// called from two threads at once: the kernel keeps what it writes and reads with in one place for the whole program.
std::vector<TopoDS_Solid> read_back(const TopoDS_Solid& solid);

}  // namespace sagitta
