#pragma once

/// Programs of the desktop, started directly, without a shell: what a path holds is never read as a command.

#include <sys/types.h>

#include <filesystem>
#include <string>
#include <vector>

namespace sagitta::viewer {

/// The program of that name on PATH; "" when there is none.
std::filesystem::path find_program(const std::string& name);
/// A program that was started, and nobody waits for yet.
struct Started {
  pid_t child = 0;      ///< 0: it could not be started
  std::string trouble;  ///< why
};
/// Starts it with these arguments, without input and messages; its output goes to `output`, nowhere when that is < 0.
Started started(const std::filesystem::path& program, const std::vector<std::string>& arguments, int output = -1);
/// Starts it with these arguments and does not wait for it. Returns "" or why it could not be started.
std::string start_program(const std::filesystem::path& program, const std::vector<std::string>& arguments);
/// Shows a folder in the desktop's file manager. Returns "" or why it could not be shown.
std::string show_folder(const std::filesystem::path& folder);

}  // namespace sagitta::viewer
