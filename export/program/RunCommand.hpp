#pragma once

/// A command line taken apart, and its command run.

#include <functional>

#include "program/Command.hpp"

namespace sagitta {

/// Adds one command to the program.
using AddCommand = std::function<Command(CLI::App&)>;

/// Runs a command line of `sagitta` and gives its exit code. The list of commands is the same in both programs;
/// `add_export` and `add_trial` add those that need the kernel, or only their names. `--manual` writes the manual page,
/// or what a shell completes, from the list. Wrong words are told on the error output, with the nearest of the
/// commands' names.
int run_command(const AddCommand& add_export, const AddCommand& add_trial, int argc, char** argv);

}  // namespace sagitta
