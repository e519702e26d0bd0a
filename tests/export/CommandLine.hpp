#pragma once

/// Running programs the way a builder does, from the command line.

#include <sys/wait.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace sagitta::test {

namespace fs = std::filesystem;

/// An empty folder that goes when the test does.
class ScratchFolder {
 public:
  ScratchFolder() {
    std::string pattern = fs::temp_directory_path() / "sagitta-test.XXXXXX";
    if (!mkdtemp(pattern.data())) throw std::runtime_error("no scratch folder");
    path_ = pattern;
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  ~ScratchFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  fs::path operator/(const std::string& name) const { return path_ / name; }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

inline std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  std::ostringstream text;
  text << file.rdbuf();
  return std::move(text).str();
}

inline void write_file(const fs::path& path, const std::string& text) {
  std::ofstream file(path, std::ios::binary);
  file << text;
  if (!file.flush()) throw std::runtime_error("cannot write " + path.string());
}

/// The presets' drawings, for a preset that is copied into a folder.
inline void copy_drawings(const fs::path& folder) {
  for (const auto& entry : fs::directory_iterator(fs::path(SAGITTA_SOURCE) / "presets"))
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
inline Outcome sagitta(const std::string& arguments) { return shell(SAGITTA_PROGRAM " " + arguments); }

inline fs::path preset_path(const std::string& name) { return fs::path(SAGITTA_SOURCE) / "presets" / (name + ".toml"); }

/// Sorted names of all entries below a folder, one a line.
inline std::string listing(const fs::path& folder) {
  std::string text;
  std::vector<std::string> names;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    names.push_back(entry.path().lexically_relative(folder));
  std::sort(names.begin(), names.end());
  for (const std::string& name : names) text += name + "\n";
  return text;
}

}  // namespace sagitta::test
