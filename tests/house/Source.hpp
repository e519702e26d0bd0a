#pragma once

/// The project's own files, as the house tests read them.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "Places.hpp"

namespace sagitta::test {

namespace fs = std::filesystem;

inline const fs::path& source() {
  static const fs::path folder = places::source();
  return folder;
}

inline std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  std::ostringstream text;
  text << file.rdbuf();
  return std::move(text).str();
}

inline std::vector<std::string> lines_of(const fs::path& path) {
  std::istringstream text(text_of(path));
  std::vector<std::string> lines;
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  return lines;
}

/// Our C++ files below a folder of the project, in order; empty when there is no such folder.
inline std::vector<fs::path> code_below(const std::string& folder) {
  std::vector<fs::path> files;
  if (!fs::exists(source() / folder)) return files;
  for (const auto& entry : fs::recursive_directory_iterator(source() / folder))
    if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// The path from the project's top, for messages.
inline std::string shown(const fs::path& path) { return path.lexically_relative(source()).string(); }

}  // namespace sagitta::test
