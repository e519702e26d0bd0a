#pragma once

#include "app/Desk.hpp"
#include "panels/Dimensions.hpp"
#include "panels/Labels.hpp"

namespace sagitta::viewer {

/// Lines and words over the board's picture; `low` is the picture's corner in the window.
void draw_dimensions(Desk& desk, ImVec2 low, Labels& labels);
void draw_measurement(Desk& desk, ImVec2 low, Labels& labels);
void draw_dimension(Desk& desk, ImVec2 low, const Dimension& dimension, Labels& labels);
void draw_cutting_plane(Desk& desk, ImVec2 low);

/// Where a point of the board stands in the window; nothing when it is behind the eye.
std::optional<ImVec2> in_window(const Camera& camera, Vec p, ImVec2 low);

/// The cutting plane's grip in the window, when it is in sight.
std::optional<ImVec2> plane_grip(const Desk& desk, ImVec2 low);

/// Words of a measurement: the distance, and its parts along, across and up.
std::string measured_words(const Measured& measured, const Manner& manner);

}  // namespace sagitta::viewer
