#pragma once

/// A hidden folder beside a wanted one, in which the wanted one is made: ".NAME.sagitta-0123456789abcdef". It holds a
/// marker with NAME in it, which the running program keeps locked, "new" (the folder in the making; after an exchange
/// the old one) and "old" (the old one, where the file system knows no exchange). A program that was killed leaves it
/// behind; a later run knows it by its marker, and that nobody has it locked.

#include <filesystem>
#include <string>

namespace sagitta {

class TemporaryFolder {
 public:
  /// Makes it beside `wanted`, whose parent must exist, with an empty folder made() in it. Throws FolderError.
  explicit TemporaryFolder(const std::filesystem::path& wanted);
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  /// Removes it with all that is left in it.
  ~TemporaryFolder();

  /// The folder that will become the wanted one.
  std::filesystem::path made() const;
  /// Where the wanted one's predecessor goes when the two cannot be exchanged in one step.
  std::filesystem::path aside() const;
  /// Gives it up as it is: what is in it must not be lost. A later run looks at it again.
  void leave();

 private:
  /// One attempt; ENOENT when another run took the folder for a left one before it was locked.
  int make(const std::filesystem::path& wanted);
  int lock(const std::filesystem::path& marker);
  void remove();

  std::filesystem::path path_;
  int marker_ = -1;  ///< open file, locked while the program runs
};

/// Removes the temporary folders that killed programs of this user left in a folder. Where the folder that one was made
/// for is absent and its predecessor stands aside, whole, that one is put back first. Whatever has no marker, is in use
/// or holds anything that Sagitta did not write is left alone.
void clear_left_folders(const std::filesystem::path& parent);

}  // namespace sagitta
