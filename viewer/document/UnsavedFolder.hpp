#pragma once

/// The drawings of a board that is not saved anywhere yet: they lie in a folder of the window's own, beside its
/// recovery copy, until the board has a place.

#include <filesystem>

namespace sagitta::viewer {

/// Makes a folder below `state` that nothing else uses; "" when it cannot be made.
std::filesystem::path make_unsaved_folder(const std::filesystem::path& state);
/// Removes it, where it is one that was made so below `state`; another folder is left alone.
void remove_unsaved_folder(const std::filesystem::path& state, const std::filesystem::path& folder);
/// Whether it was made so.
bool is_unsaved_folder(const std::filesystem::path& state, const std::filesystem::path& folder);

}  // namespace sagitta::viewer
