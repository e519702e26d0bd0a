#pragma once

#include "app/Desk.hpp"
#include "panels/Labels.hpp"

namespace sagitta::viewer {

/// The finding that is marked: its place and its value. `low` is the picture's corner in the window.
void draw_marked_finding(Desk& desk, ImVec2 low, Labels& labels);
/// The surface under each string against a straight line, drawn higher by a factor that is stated.
void draw_humps(Desk& desk, ImVec2 low, Labels& labels);
/// Along both edges, where the board stands out over the neck and where the neck does, drawn wider by a factor that is
/// stated.
void draw_fit_to_neck(Desk& desk, ImVec2 low, Labels& labels);

/// What the pictures over the board mean, in words: one line for each that is shown.
std::vector<std::string> legends_of(const Desk& desk);

}  // namespace sagitta::viewer
