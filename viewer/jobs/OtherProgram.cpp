#include "jobs/OtherProgram.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <cstring>
#include <sstream>
#include <thread>

extern char** environ;

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// No input and no messages: the other program keeps to its own window.
struct Actions {
  posix_spawn_file_actions_t actions;
  explicit Actions(int output) {
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    ::posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    if (output >= 0)
      ::posix_spawn_file_actions_adddup2(&actions, output, STDOUT_FILENO);
    else
      ::posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  }
  ~Actions() { ::posix_spawn_file_actions_destroy(&actions); }
  Actions(const Actions&) = delete;
  Actions& operator=(const Actions&) = delete;
};

}  // namespace

fs::path find_program(const std::string& name) {
  const char* path = std::getenv("PATH");
  std::istringstream folders(path ? path : "/usr/bin:/bin");
  for (std::string folder; std::getline(folders, folder, ':');) {
    const fs::path program = fs::path(folder.empty() ? "." : folder) / name;
    std::error_code unknown;
    if (fs::is_regular_file(program, unknown) && ::access(program.c_str(), X_OK) == 0) return program;
  }
  return {};
}

Started started(const fs::path& program, const std::vector<std::string>& arguments, int output) {
  std::vector<std::string> words{program.string()};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  const Actions own(output);
  pid_t child = 0;
  const int failed = ::posix_spawn(&child, program.c_str(), &own.actions, nullptr, pointers.data(), environ);
  if (failed != 0) return {0, program.string() + " could not be started: " + std::strerror(failed) + "."};
  return {child, ""};
}

std::string start_program(const fs::path& program, const std::vector<std::string>& arguments) {
  const Started other = started(program, arguments);
  if (other.child != 0) std::thread([child = other.child] { ::waitpid(child, nullptr, 0); }).detach();
  return other.trouble;
}

std::string show_folder(const fs::path& folder) {
  std::error_code unknown;
  if (!fs::is_directory(folder, unknown)) return folder.string() + " is no folder any more.";
  const fs::path program = find_program("xdg-open");
  if (program.empty())
    return "No program that opens folders was found (xdg-open). Copy the path and open it in your file manager.";
  return start_program(program, {fs::absolute(folder).string()});
}

}  // namespace sagitta::viewer
