#pragma once

/// The document's file was changed by somebody else: an editor, or a second window. It is never overwritten unasked.

#include <optional>
#include <string>

#include "board/BoardFile.hpp"

namespace sagitta::viewer {

struct Desk;

/// The other version of the document's file, while the choice is open.
struct Elsewhere {
  std::string text, checksum;  ///< of the file as it is now
  BoardFile file;              ///< read from it; it may have problems
};

/// When the file was last looked at.
struct Watch {
  double next = 0;      ///< seconds, of the desk's clock: not before
  std::string stamp;    ///< of the file when it was last read: size and times
  std::string put_off;  ///< checksum of a version that the user has put the choice off for
};

/// Looks at the document's file, at most once a second and only as far as its size and time differ, and opens the
/// choice when somebody else changed it.
void watch_file(Desk& desk);

/// Opens the choice if the file was changed. Otherwise false.
bool is_changed_elsewhere(Desk& desk);

/// The file's version takes the document's place, as one step that can be undone.
void take_theirs(Desk& desk);
/// The document is written over the file's version: their text, with the values that differ here.
void keep_mine(Desk& desk);
/// The document is saved beside the file under a name of its own and is that file from now on.
void keep_both(Desk& desk);
/// Nothing happens until the file changes again or the board is to be saved.
void put_off(Desk& desk);

}  // namespace sagitta::viewer
