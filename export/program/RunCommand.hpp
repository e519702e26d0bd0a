#pragma once

/// A command line taken apart, and its command run.

#include <span>

#include "program/Command.hpp"

namespace sagitta {

/// The exit code. Wrong words are told on the error output, with the nearest of the commands' names.
int run_command(CLI::App& program, std::span<const Command> commands, int argc, char** argv);

}  // namespace sagitta
