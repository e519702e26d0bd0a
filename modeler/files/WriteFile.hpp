#pragma once

/// The one way to write a file: whole or not at all, checked to the last close. Functions return 0 when every byte is
/// on the disk, or the system's error number (errno; see SystemError.hpp); nothing of the file is then to be seen.

#include <filesystem>
#include <string_view>

namespace sagitta {

/// Makes a new file; its mode is 0666 less the user's mask. EEXIST where the name is taken: nothing is overwritten.
int make_file(const std::filesystem::path& path, std::string_view bytes);

/// Makes the file, or replaces it in one step; a reader finds the old bytes or the new ones. Keeps the old file's mode,
/// and writes through symbolic links to the file that they lead to. EACCES where is_protected() says so, EISDIR for a
/// folder, EOPNOTSUPP for a pipe or a device.
int replace_file(const std::filesystem::path& path, std::string_view bytes);

/// Whether there is a file at this path that is read-only: nobody has leave to write it (mode 0444, say), or this user
/// has not.
bool is_protected(const std::filesystem::path& path);

/// Sees the names in a folder onto the disk. File systems that know no such thing are content.
int sync_folder(const std::filesystem::path& folder);

}  // namespace sagitta
