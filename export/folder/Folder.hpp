#pragma once

/// A folder that is written completely or not at all.

#include <cstdint>
#include <filesystem>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "folder/FolderState.hpp"
#include "folder/TemporaryFolder.hpp"

namespace sagitta {

/// A folder that appears whole or not at all. Files go into a temporary folder beside the wanted one; keep() puts it in
/// place in one step. A Folder that goes away without keep() leaves nothing behind; what a killed program left behind
/// is cleared by the next one.
class Folder {
 public:
  /// Prepares to write `path`, which must be absent or empty, or, with `replace`, a folder that look_at_folder() calls
  /// replaceable; missing parents are made. `inputs`: the files that the board is made from. Throws FolderError;
  /// nothing has then changed.
  Folder(const std::filesystem::path& path, bool replace, const std::vector<std::filesystem::path>& inputs = {});
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder();

  /// Where the folder will be: absolute, links resolved.
  const std::filesystem::path& path() const { return wanted_; }
  /// Adds one file; folders in its name ("setups/first-01/setup.dxf") are made. Throws FolderError when it cannot be
  /// written in full. Several threads may add files.
  void add(const std::string& name, const std::string& bytes);
  /// How many files were added.
  std::size_t files() const { return files_; }
  /// Their bytes in all.
  std::uintmax_t bytes() const { return bytes_; }
  /// Puts the folder in place, with the mode of the one that it takes the place of; with `replace`, the old one goes
  /// only when the new one is complete, and only if it is still replaceable. Throws FolderError.
  void keep();

 private:
  void make_parents();
  void discard() noexcept;
  /// Throws unless the wanted place is free or may be replaced.
  FolderState looked_at() const;
  void place();
  void exchange();
  /// The same for a file system that cannot exchange two folders in one step.
  void replace_in_two_steps();

  std::filesystem::path wanted_;  ///< absolute, links resolved
  std::vector<std::filesystem::path> inputs_;
  std::optional<TemporaryFolder> temporary_;
  std::vector<std::filesystem::path> parents_;  ///< parents made on the way, outermost first
  std::mutex adding_;
  std::size_t files_ = 0;
  std::uintmax_t bytes_ = 0;
  bool replace_ = false;
};

}  // namespace sagitta
