#pragma once

/// What a file that is dropped onto the window becomes, by its kind.

#include <filesystem>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// A board is opened, a drawing becomes an inlay, a STEP file is the neck's; another file is refused with a word about
/// what would do.
void take_dropped(Desk& desk, const std::filesystem::path& path);

}  // namespace sagitta::viewer
