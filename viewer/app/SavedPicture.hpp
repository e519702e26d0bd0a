#pragma once

/// The board's picture as a PNG file.

#include "app/Desk.hpp"
#include "picture/Picture.hpp"

namespace sagitta::viewer {

/// Writes the picture as it is into the file that is wanted, whole or not at all, and says where it is or why not.
void save_picture(Desk& desk, const Picture& picture);

}  // namespace sagitta::viewer
