#pragma once

/// A folder for one test, and what lies in it.

#include <algorithm>
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
