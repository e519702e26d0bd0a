#pragma once

/// A command line taken apart, and its command run.

#include <span>

#include "program/Command.hpp"

namespace sagitta {

inline constexpr const char* program_description = "Sagitta makes exact solids of a fretboard from one board file.";

/// What both programs say of themselves: name and version; and `--manual`, which writes the manual page, or
/// what a shell completes, from the program's own table.
void introduce(CLI::App& program);

/// The exit code. The program's own help ends with how to begin. Wrong words are told on the error output, with the
/// nearest of the commands' names.
int run_command(CLI::App& program, std::span<const Command> commands, int argc, char** argv);

}  // namespace sagitta
