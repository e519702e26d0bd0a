#pragma once

/// What stands in the place where a folder is to be written, and whether it may be replaced: one rule for the command
/// line and for the window.

#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace sagitta {

/// A folder could not be written. what() says what happened and what to do, in a builder's words.
struct FolderError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Throws FolderError for a folder and the reason that it cannot be written.
[[noreturn]] inline void fail_folder(const std::filesystem::path& folder, const std::string& why) {
  throw FolderError("cannot write the folder \"" + folder.string() + "\": " + why);
}

struct FolderState {
  enum class Kind {
    absent,      ///< nothing of that name
    empty,       ///< a folder without anything in it
    ours,        ///< Sagitta made it; it holds what its manifest lists and nothing else, unchanged
    file,        ///< no folder
    working,     ///< the folder that the program was started in, or the user's home, or one that holds it
    input,       ///< it holds a file that the board is made from
    foreign,     ///< it holds files, and no manifest of Sagitta's
    extra,       ///< Sagitta made it, and it holds something that its manifest does not list
    changed,     ///< Sagitta made it, and a file in it was changed since
    unreadable,  ///< the system does not let us look into it
  };
  Kind kind = Kind::absent;
  /// Of input, foreign, extra and changed: names of what was found, below the folder, sorted.
  std::vector<std::string> found = {};
  std::string reason = {};  ///< of unreadable: the system's
  // Of ours, extra and changed: what the manifest says.
  std::string board = {};  ///< name of the board; may be empty
  bool trial = false;      ///< the folder of a trial strip
  std::size_t files = 0;   ///< files in it, the manifest among them

  /// Nothing is lost when a new folder takes its place, given that the user wants that.
  bool replaceable() const { return kind == Kind::ours; }
  /// Nothing is there that could be lost.
  bool free() const { return kind == Kind::absent || kind == Kind::empty; }
};

/// Looks at a folder. `inputs`: the files that the board is made from (see inputs_of() in BoardSources.hpp); a folder
/// that holds one of them, by whatever name or link, is never replaceable. Reads every listed file once, to compare its
/// checksum. Throws nothing.
FolderState look_at_folder(const std::filesystem::path& folder, const std::vector<std::filesystem::path>& inputs);

/// Why a folder that is neither free nor replaceable is left alone, naming what was found, and what to do. Goes on from
/// the folder's name.
std::string why_left_alone(const FolderState& state);

}  // namespace sagitta
