#pragma once

/// The heights that a shading by height runs over.

#include <array>

#include "layout/Layout.hpp"
#include "scene/StageModel.hpp"
#include "surface/Surface.hpp"

namespace sagitta::viewer {

/// Lowest and highest of the playing surface of an outlined stage, mm above the glue face: its edges' lowest place and
/// the wood's highest. Before the outline is cut: the whole height of the wood.
std::array<float, 2> height_span(const Layout& layout, const Surface& surface, const StageModel& stage);

/// Height between two contour lines of that shading, mm: so does the shader.
inline constexpr double contour_step = 0.25;

}  // namespace sagitta::viewer
