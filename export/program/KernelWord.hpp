#pragma once

/// The commands that need the geometry kernel. A program of their own does them, `sagitta-solid`, which nobody calls by
/// hand: to load the kernel takes longer than what all other commands do.

#include <CLI/CLI.hpp>

namespace sagitta {

/// The first word of a command line, and what the list of commands says of it.
struct KernelWord {
  const char* name;
  const char* help;
};

inline constexpr KernelWord export_word{
    "export", "Make the hand-off folder: the board at every stage of the work, and a list of what is in it."};
inline constexpr KernelWord trial_word{
    "trial",
    "Make a strip to try the machine on before the board is cut: slots and pockets a little tighter and looser than "
    "wanted, with a sheet that says what to measure and which key to set."};

/// Its manual lists the options of all commands.
inline constexpr const char* manual_option = "--manual";

/// Whether the command line begins with one of them or asks for the manual, or was given to read a neck.
bool needs_kernel(int argc, char** argv);

/// Becomes `sagitta-solid`, which lies beside this program where it was built and where it is installed. Comes back
/// only when that cannot be started, with the exit code.
int become_kernel_program(char** argv);

}  // namespace sagitta
