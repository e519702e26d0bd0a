#pragma once

/// A program of the desktop that is not there: a script in its place on PATH.

#include <cstdlib>
#include <filesystem>
#include <string>

#include "gui/Hand.hpp"

namespace sagitta::test {

/// While it lives, a program of this name comes first on PATH. It writes what it is called with into `told`, a word a
/// line, prints an answer and ends with that code.
struct StandIn {
  std::string before = std::getenv("PATH");
  std::filesystem::path told;

  StandIn(const std::filesystem::path& folder, const std::string& name, const std::string& answer = "", int code = 0)
      : told(folder / ("told-" + name)) {
    std::filesystem::create_directories(folder / "bin");
    write(folder / "answer", answer);
    const std::string part = told.string() + ".part";
    write(folder / "bin" / name, "#!/bin/sh\nfor word in \"$@\"; do printf '%s\\n' \"$word\"; done > '" + part +
                                     "'\nmv '" + part + "' '" + told.string() + "'\ncat '" +
                                     (folder / "answer").string() + "'\nexit " + std::to_string(code) + "\n");
    std::filesystem::permissions(folder / "bin" / name, std::filesystem::perms::owner_all);
    ::setenv("PATH", ((folder / "bin").string() + ":" + before).c_str(), 1);
  }
  ~StandIn() { ::setenv("PATH", before.c_str(), 1); }
  StandIn(const StandIn&) = delete;
  StandIn& operator=(const StandIn&) = delete;
};

}  // namespace sagitta::test
