#pragma once

/// The one way to read a file whole. A path comes from a stranger as often as not: only regular files are read, never
/// more bytes than the caller allows, and a pipe, a device or a socket never blocks the program.

#include <cstddef>
#include <filesystem>
#include <string>
#include <variant>

namespace sagitta {

enum class Unreadable {
  missing,    ///< there is no file of this name, or a part of the path is no folder
  folder,     ///< it is a folder
  special,    ///< it is a pipe, a device or a socket
  forbidden,  ///< this user may not read it
  too_large,  ///< it holds more bytes than allowed
  failed      ///< the system refused for another reason, or reading broke off
};

struct ReadFailure {
  Unreadable kind = Unreadable::failed;
  int error = 0;  ///< the system's number (errno); 0 where it gave none
};

/// The bytes of a regular file, symbolic links followed, or why they cannot be had. `most`: the largest size that is
/// read, bytes.
std::variant<std::string, ReadFailure> read_file(const std::filesystem::path& path, std::size_t most);

/// The failure in words that go on from the file's name: "is a folder, not a file".
std::string reason(const ReadFailure& failure);

}  // namespace sagitta
