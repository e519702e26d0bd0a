#include "document/CopiedFiles.hpp"

#include <algorithm>

#include "artwork/ReadArtwork.hpp"
#include "document/Beside.hpp"
#include "files/ReadFile.hpp"
#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

bool holds(const fs::path& path, const std::string& bytes) {
  const auto read = read_file(path, largest_drawing);
  const auto* there = std::get_if<std::string>(&read);
  return there && *there == bytes;
}

bool names(const Board& board, const std::string& file) {
  const std::vector<std::string> files = files_beside(board);
  return std::find(files.begin(), files.end(), file) != files.end();
}

}  // namespace

void CopiedFiles::copied(const fs::path& from, const std::string& file, std::string bytes) {
  std::error_code unknown;
  copies_.push_back({fs::absolute(from, unknown), file, std::move(bytes)});
}

std::string CopiedFiles::follow(const Document& document) {
  for (const Copy& copy : copies_) {
    const fs::path there = fs::path(document.board().folder) / copy.file;
    std::error_code unknown;
    const bool present = fs::exists(there, unknown);
    if (names(document.board(), copy.file)) {
      const int wrong = present ? 0 : make_file(there, copy.bytes);
      if (wrong != 0) return there.string() + " could not be put back: " + system_reason(wrong) + ".";
    } else if (present && !names(document.saved(), copy.file) && holds(there, copy.bytes) &&
               holds(copy.from, copy.bytes)) {
      fs::remove(there, unknown);
    }
  }
  return "";
}

}  // namespace sagitta::viewer
