#pragma once

/// Dimensions, measurements and the cutting plane, drawn over the board's picture.

#include "decisions/Dimensions.hpp"
#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

/// Lines and words over the board's picture. `key`: the decision that a hand was last on.
void draw_dimensions(const PictureState& state, std::string key, Labels& labels);
void draw_measurement(const PictureState& state, Labels& labels);
void draw_dimension(const PictureState& state, const Dimension& dimension, Labels& labels);
void draw_cutting_plane(const PictureState& state);

/// Where a point of the board stands in the window; nothing when it is behind the eye.
std::optional<ImVec2> in_window(const Camera& camera, Vec p, ImVec2 low);

/// The cutting plane's grip in the window, when it is in sight.
std::optional<ImVec2> plane_grip(const PictureState& state);

/// Words of a measurement: the distance, and its parts along, across and up.
std::string measured_words(const Measured& measured, const Manner& manner);

}  // namespace sagitta::viewer
