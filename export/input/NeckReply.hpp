#pragma once

/// What a process says that was started to read a neck's file; input/NeckProcess starts it.

#include <optional>

namespace sagitta {

/// The first word of the hidden command.
inline constexpr const char* neck_word = "--read-neck";

/// To be called first in main(): when this process was started to read a neck, reads it, answers on standard output and
/// gives the exit code; otherwise nothing, and main() goes on.
std::optional<int> run_as_neck_reader(int argc, char** argv);

}  // namespace sagitta
