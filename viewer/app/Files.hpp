#pragma once

/// Boards and their files, as the window handles them. Each says on the status line what happened.

#include <filesystem>
#include <string>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Where what outlives a session is kept.
std::filesystem::path state_of(const Desk& desk);
/// Opens a board file in place of the board; when it cannot be opened, its problems are listed and the board stays.
bool open_board(Desk& desk, const std::filesystem::path& path);
/// A new board from one of the presets, not yet kept anywhere.
bool open_preset(Desk& desk, const std::string& name);
/// What the board file would say if it were saved now: a hand-written file with only the changed values rewritten.
std::string text_to_save(const Document& document);
/// To the document's own file; asks for a place when it has none.
bool save_board(Desk& desk);
bool save_board_as(Desk& desk, const std::filesystem::path& path);
/// Asks for `next` at once, or first asks about unsaved changes.
void when_settled(Desk& desk, Request next);
/// Asks for what was to follow once unsaved changes are settled.
void go_on(Desk& desk);
/// The board goes, or the program ends: one that was not saved anywhere leaves nothing behind.
void leave_board(Desk& desk);
/// Takes the copy that an earlier session left behind.
void take_left_over(Desk& desk);
/// Throws it away, with the drawings that were kept for it.
void drop_left_over(Desk& desk);
void compare_with(Desk& desk, const std::filesystem::path& path);
void compare_with_saved(Desk& desk);

}  // namespace sagitta::viewer
