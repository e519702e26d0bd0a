#pragma once

/// A copy of the board being edited, kept beside the settings while it differs from its file, for the case that the
/// program ends without warning. One copy a running program, named by its process.

#include <filesystem>
#include <optional>
#include <string>

namespace sagitta::viewer {

struct Recovered {
  std::filesystem::path copy;    ///< the board file that was left
  std::filesystem::path board;   ///< the file that it was opened from; empty when it had none
  std::filesystem::path folder;  ///< that its relative paths start from
  std::string text;
  std::string checksum;  ///< of the board's file when it was last read or written; "" when it is not known
};

class Recovery {
 public:
  explicit Recovery(std::filesystem::path folder) : folder_(std::move(folder)) {}
  /// Writes the copy whole; `checksum` is that of the board's file as it was last read or written. Returns "" or why it
  /// could not be written.
  std::string keep(const std::string& text, const std::filesystem::path& board, const std::filesystem::path& folder,
                   const std::string& checksum) const;
  /// The board is saved, or given up: no copy is needed.
  void drop() const;
  /// The newest copy of a program that no longer runs; what cannot be read is passed over.
  std::optional<Recovered> find_left() const;
  /// Removes such a copy.
  static void discard(const Recovered& left);
  std::filesystem::path copy_path() const;

 private:
  std::filesystem::path folder_;
};

}  // namespace sagitta::viewer
