#pragma once

/// A folder that keeps the list of its files for the manifest.

#include "board/Board.hpp"
#include "folder/Folder.hpp"
#include "folder/Manifest.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// A folder that keeps the list of what is put into it, for its manifest.
class ListedFolder {
 public:
  explicit ListedFolder(Folder& folder) : folder_(folder) {}

  /// Adds a file; what is given back can still be completed. `stage` is empty for files that hold no solid. Throws
  /// FolderError.
  ManifestFile& add(const std::string& file, const std::string& stage, const std::string& kind,
                    const std::string& bytes, std::vector<ManifestBody> bodies = {});

  /// Lists what another list of the same folder holds, after what is listed here.
  void append(ListedFolder other);

  /// Adds copies of the drawings and of the neck's file that the board is read with (see BoardSources.hpp), and
  /// manifest.json with the board, what was found on it, and how the folder was made, as JSON text. Throws FolderError.
  void finish(const Board& board, const std::vector<Finding>& findings, const std::string& options);
  /// Nothing was added yet.
  bool empty() const { return files_.empty(); }

 private:
  Folder& folder_;
  std::vector<ManifestFile> files_;
};

}  // namespace sagitta
