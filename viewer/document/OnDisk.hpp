#pragma once

/// How the file that a document was read from stands now: another program, or a second window, may have changed it.

#include <filesystem>
#include <string>
#include <vector>

#include "document/Document.hpp"

namespace sagitta::viewer {

struct OnDisk {
  enum class Kind {
    none,       ///< the document has no file
    same,       ///< as the document knows it
    changed,    ///< somebody else wrote it
    gone,       ///< it was removed or renamed
    unreadable  ///< it can no longer be read
  };
  Kind kind = Kind::none;
  std::string text;      ///< of changed: what it holds now
  std::string checksum;  ///< of that
  std::string why;       ///< of unreadable
};

OnDisk look_on_disk(const Document& document);

/// Every file that the document is made from: its own, its bases, its drawings, its neck's model.
std::vector<std::filesystem::path> inputs(const Document& document);

/// A path beside `path` that nothing has: "heron-mine.toml", "heron-mine-2.toml".
std::filesystem::path free_name(const std::filesystem::path& path);

}  // namespace sagitta::viewer
