#pragma once

/// What the manual page and the shells are told of the viewer beyond its parser.

#include "manual/ProgramTable.hpp"

namespace sagitta::viewer {

/// The whole table: options of the parser, exit codes, examples.
ProgramTable viewer_table(const CLI::App& line);

}  // namespace sagitta::viewer
