#pragma once

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// The section where the cutting plane stands, to scale, with its figures; or a small part of it much enlarged.
void draw_slice(Desk& desk, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
