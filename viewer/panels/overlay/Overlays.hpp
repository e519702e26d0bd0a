#pragma once

/// Marks about findings, strings and the neck.

#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

/// The finding that is marked: its place and its value.
void draw_marked_finding(const PictureState& state, Labels& labels);
/// The surface under each string against a straight line, drawn higher by a factor that is stated.
void draw_humps(const PictureState& state, Labels& labels);
/// Along both edges, where the board stands out over the neck and where the neck does, drawn wider by a factor that is
/// stated.
void draw_fit_to_neck(const PictureState& state, Labels& labels);

/// What the pictures over the board mean, in words: one line for each that is shown.
std::vector<std::string> legends_of(const PictureState& state);

}  // namespace sagitta::viewer
