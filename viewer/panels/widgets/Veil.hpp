#pragma once

/// What is behind the document fades.

#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Lays a half-transparent sheet of that colour over a rectangle of the window that is drawn.
inline void draw_veil(ImVec2 low, ImVec2 high, ImU32 ground) {
  constexpr unsigned cover = 150;
  ImGui::GetWindowDrawList()->AddRectFilled(low, high, (ground & ~IM_COL32_A_MASK) | cover << IM_COL32_A_SHIFT);
}

}  // namespace sagitta::viewer
