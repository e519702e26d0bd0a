#pragma once

/// The neck's STEP file, read apart from this program as often as the file or the board's outline changed.

#include <filesystem>
#include <functional>
#include <memory>

#include "neck/NeckShape.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta::viewer {

class NeckReader {
 public:
  /// What was read; null when the board names no file, or when `stopped` came true first. A file that could not be
  /// read is tried again only when it has changed.
  std::shared_ptr<const NeckReading> read(const PreparedBoard& board, const std::function<bool()>& stopped);

 private:
  struct Asked {
    std::filesystem::path path;
    std::filesystem::file_time_type written;
    Loop outline;
    double thickness = 0;
    bool operator==(const Asked&) const = default;
    /// The same file, whatever the board.
    bool same_file(const Asked& other) const { return path == other.path && written == other.written; }
  };
  Asked asked_;
  std::shared_ptr<const NeckReading> answer_;
};

}  // namespace sagitta::viewer
