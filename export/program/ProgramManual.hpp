#pragma once

/// What the manual page and the shells are told of this program beyond its parser.

#include "manual/ProgramTable.hpp"

namespace sagitta {

/// What a shell offers for options and places.
Offers program_offers();

/// The whole table: commands of the parser, exit codes, examples.
ProgramTable program_table(const CLI::App& program);

}  // namespace sagitta
