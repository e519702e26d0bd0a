#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace sagitta {

/// A folder could not be written. what() says what happened and what to do, in a builder's words.
struct FolderError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Throws FolderError for a folder and the reason that it cannot be written.
[[noreturn]] inline void fail_folder(const std::filesystem::path& folder, const std::string& why) {
  throw FolderError("cannot write the folder \"" + folder.string() + "\": " + why);
}

}  // namespace sagitta
