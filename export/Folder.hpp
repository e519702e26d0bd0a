#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace sagitta {

/// A folder could not be written. what() says what happened and what to do, in a builder's words.
struct FolderError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// A folder that appears whole or not at all. Files go into a temporary folder beside the wanted one; keep() puts it in
/// place in one step. A Folder that goes away without keep() leaves nothing behind.
class Folder {
 public:
  /// Prepares to write `path`, which must be absent or empty unless `replace` is set; missing parents are made.
  /// `sources`: files that a replacement may not swallow (the board file). Throws FolderError; nothing has then
  /// changed.
  Folder(const std::filesystem::path& path, bool replace, const std::vector<std::filesystem::path>& sources = {});
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder();

  /// Where the folder will be: absolute, links resolved.
  const std::filesystem::path& path() const { return wanted_; }
  /// Adds one file; folders in its name ("setups/first-01/setup.dxf") are made. Throws FolderError when it cannot be
  /// written in full.
  void add(const std::string& name, const std::string& bytes);
  /// Puts the folder in place; with `replace`, the old one goes only when the new one is complete. Throws FolderError.
  void keep();

 private:
  void make_temporary();
  void discard() noexcept;
  /// Swaps the finished temporary folder with the one in place, which then holds the old files under the temporary
  /// name.
  void swap();

  std::filesystem::path wanted_;                ///< absolute, links resolved
  std::filesystem::path temporary_;             ///< sibling; empty when there is none
  std::vector<std::filesystem::path> parents_;  ///< parents made on the way, outermost first
  bool replace_ = false;
};

}  // namespace sagitta
