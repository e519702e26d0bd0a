#pragma once

/// The choice between the document and its file as somebody else changed it. What was to follow goes on once the board
/// is saved, or is the file's.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// The file's version takes the document's place, as one step that can be undone.
void take_theirs(Desk& desk);
/// The document is written over the file's version: their text, with the values that differ here.
void keep_mine(Desk& desk);
/// The document is saved beside the file under a name of its own and is that file from now on.
void keep_both(Desk& desk);
/// Nothing happens until the file changes again or the board is to be saved.
void put_off(Desk& desk);

}  // namespace sagitta::viewer
