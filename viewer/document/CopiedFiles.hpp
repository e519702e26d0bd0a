#pragma once

/// Files that the window copied beside the board: where a step is undone that brought one there, the copy goes too, and
/// comes back when it is done again.

#include <filesystem>
#include <string>
#include <vector>

#include "document/Document.hpp"

namespace sagitta::viewer {

class CopiedFiles {
 public:
  /// The bytes of `from` are beside the board now, under `file`.
  void copied(const std::filesystem::path& from, const std::string& file, std::string bytes);
  /// After the board has changed. A copy that neither the board nor its file on disk names is taken away, as long as it
  /// is as it was copied and what it was copied from is still there; one that is named again is put back. Returns "" or
  /// what could not be put back, and why.
  std::string follow(const Document& document);
  /// The board file on disk names them from now on, or they belong to another board: they stay where they are.
  void keep_all() { copies_.clear(); }

 private:
  struct Copy {
    std::filesystem::path from;
    std::string file, bytes;
  };
  std::vector<Copy> copies_;
};

}  // namespace sagitta::viewer
