#pragma once

/// Reading and writing files (see files/), with what went wrong in words for the window.

#include <filesystem>
#include <string>
#include <string_view>
#include <variant>

namespace sagitta::viewer {

/// Replaces the file in one step. Returns "" or what went wrong and what to do.
std::string write_whole(const std::filesystem::path& path, std::string_view bytes);

struct Unread {
  std::string why;
};
/// The file's bytes, at most 16 MiB. Only a regular file is read: a pipe or a device is refused without waiting for it.
std::variant<std::string, Unread> read_whole(const std::filesystem::path& path);

}  // namespace sagitta::viewer
