#pragma once

/// Running programs the way a builder does, from the command line.

#include <sys/wait.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

#include "Places.hpp"
#include "files/ScratchFolder.hpp"

namespace sagitta::test {

/// The presets' drawings, for a preset that is copied into a folder.
inline void copy_drawings(const fs::path& folder) {
  for (const auto& entry : fs::directory_iterator(fs::path(places::source()) / "presets"))
    if (entry.path().extension() == ".svg") fs::copy_file(entry.path(), folder / entry.path().filename());
}

/// What a command left behind: its exit code (128 + the signal when one ended it) and what it printed.
struct Outcome {
  int code = -1;
  std::string out, err;
};

/// Runs a line of shell.
inline Outcome shell(const std::string& line) {
  const ScratchFolder scratch;
  const std::string out = scratch / "out", err = scratch / "err";
  const int status = std::system(("{ " + line + "\n} >'" + out + "' 2>'" + err + "'").c_str());
  Outcome outcome{WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), bytes_of(out), bytes_of(err)};
  return outcome;
}

/// Runs the program with the given arguments, as typed.
inline Outcome sagitta(const std::string& arguments) { return shell(places::program() + " " + arguments); }

inline fs::path preset_path(const std::string& name) {
  return fs::path(places::source()) / "presets" / (name + ".toml");
}

}  // namespace sagitta::test
