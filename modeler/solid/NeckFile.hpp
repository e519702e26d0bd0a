#pragma once

/// The glue face of a neck, found in its STEP file and moved to where the board lies on it.

#include <string>

#include "neck/BoardSeat.hpp"
#include "neck/NeckShape.hpp"

namespace sagitta {

/// Reads a neck's STEP file and lays the board in it (neck/NeckPlace.hpp). What of the neck stands in the board's place
/// is measured by a boolean common with the board's plain prism; depths by lines through the neck. Bodies that lie on
/// the glue face like the board are taken for it and left out. Foreign files can make the kernel loop, exhaust memory
/// or crash: run this in a process with limits on both. Throws nothing; a failure is put into words.
NeckReading read_neck(const std::string& path, const BoardSeat& seat);

}  // namespace sagitta
