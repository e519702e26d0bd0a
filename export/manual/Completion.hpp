#pragma once

/// What a shell completes of a program's command line, as the script that the shell reads.

#include <string>

#include "manual/ProgramTable.hpp"

namespace sagitta {

std::string bash_completion(const ProgramTable& program);
std::string zsh_completion(const ProgramTable& program);
std::string fish_completion(const ProgramTable& program);

}  // namespace sagitta
