#pragma once

#include "app/Desk.hpp"

namespace sagitta::viewer {

float top_bar_height(const Ui& ui);
float status_height(const Ui& ui);
/// The commands used all day, by name with their keys on hover, and the board's name.
void draw_top_bar(Desk& desk, ImVec2 low, ImVec2 size);
/// The last line: what happened, what the background is at, and the tabs of a narrow window.
void draw_status(Desk& desk, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
