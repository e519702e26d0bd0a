#pragma once

/// The heights of the strings as a table. JSON and CSV are in mm and degrees.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "neck/HeightChain.hpp"

namespace sagitta {

/// A line for each fret: height of each open string over it, and the least gap of each string held down there.
std::string height_csv(const HeightChain& chain);

/// {relief, relief_range, action, saddle, bridge, needed_bridge, angle, needed_angle, bridge_action, plane_at_saddle,
/// least_gap, strings: [{string, nut, saddle, action, frets: [{fret, at, top, height, ahead, behind}]}]}.
nlohmann::ordered_json height_json(const HeightChain& chain);

}  // namespace sagitta
