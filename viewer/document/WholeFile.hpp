#pragma once

#include <filesystem>
#include <string>
#include <variant>

namespace sagitta::viewer {

/// Writes the bytes beside `path` and renames them into place, so that the file is whole, old or new, whatever happens.
/// Keeps the old file's permissions and follows a link to the file itself. Returns "" or what went wrong and what to
/// do.
std::string write_whole(const std::filesystem::path& path, const std::string& bytes);

struct Unread {
  std::string why;
};
/// The file's bytes, at most 16 MiB.
std::variant<std::string, Unread> read_whole(const std::filesystem::path& path);

}  // namespace sagitta::viewer
