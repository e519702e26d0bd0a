#pragma once

/// The neck's STEP file, read apart from this program as often as the file or what of the board meets it changed.

#include <filesystem>
#include <functional>
#include <memory>

#include "neck/NeckShape.hpp"
#include "neck/NeckWood.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta::viewer {

class NeckReader {
 public:
  /// What was read; null when the board names no file, or when `stopped` came true first. A file that could not be
  /// read is tried again only when it has changed.
  std::shared_ptr<const NeckReading> read(const PreparedBoard& board, const std::function<bool()>& stopped);

  /// The wood of the neck that was read last, where its place under this board is sure: else null, as when `stopped`
  /// came true first. Made once for each reading.
  std::shared_ptr<const NeckWood> wood(const PreparedBoard& board, const std::function<bool()>& stopped);

 private:
  struct Asked {
    std::filesystem::path path;
    std::filesystem::file_time_type written;
    BoardSeat seat;
    bool operator==(const Asked&) const = default;
    /// The same file and the same points in it, whatever the board's measures.
    bool same_file(const Asked& other) const {
      return path == other.path && written == other.written && seat.file_nut == other.seat.file_nut &&
             seat.file_heel == other.seat.file_heel;
    }
  };
  Asked asked_;
  std::shared_ptr<const NeckReading> answer_, wood_of_;  ///< the newest; the one that wood_ was made of
  std::shared_ptr<const NeckWood> wood_;
};

}  // namespace sagitta::viewer
