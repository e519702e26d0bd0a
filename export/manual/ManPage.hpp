#pragma once

/// A program's manual page, in the macros of man(7).

#include <string>

#include "manual/ProgramTable.hpp"

namespace sagitta {

/// The page of section 1. Nothing in it depends on the hour or the machine.
std::string man_page(const ProgramTable& program);

}  // namespace sagitta
