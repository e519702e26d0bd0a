#include "document/DrawingWatch.hpp"

#include <filesystem>
#include <utility>

#include "artwork/ReadArtwork.hpp"
#include "document/Beside.hpp"
#include "document/FileStamp.hpp"
#include "files/ReadFile.hpp"
#include "folder/Digest.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr double between_looks = 1;  ///< seconds

std::string checksum_of(const std::string& path) {
  const auto read = read_file(path, largest_drawing);
  const auto* bytes = std::get_if<std::string>(&read);
  return bytes ? sha256(*bytes) : "";
}

}  // namespace

bool DrawingWatch::has_changed(Known& known, const std::string& path) const {
  std::string stamp = stamp_of(path);
  if (stamp == known.stamp) return known.pending = stamp, false;
  if (stamp != known.pending) return known.pending = std::move(stamp), false;
  known.stamp = std::move(stamp);
  const std::string before = std::exchange(known.checksum, checksum_of(path));
  return known.checksum != before;
}

std::vector<std::string> DrawingWatch::changed(const Board& board, double seconds) {
  std::vector<std::string> files;
  const bool due = seconds >= next_;
  if (due) next_ = seconds + between_looks;
  std::map<std::string, Known> looked_at;
  for (const std::string& file : drawings_of(board)) {
    const std::string path = (fs::path(board.folder) / file).string();
    const auto before = known_.find(path);
    if (before == known_.end()) {
      const std::string stamp = stamp_of(path);
      looked_at[path] = {stamp, stamp, checksum_of(path)};
      continue;
    }
    Known& known = looked_at[path] = std::move(before->second);
    if (due && has_changed(known, path)) files.push_back(file);
  }
  known_ = std::move(looked_at);
  return files;
}

}  // namespace sagitta::viewer
