#pragma once

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// The left column: the groups of decisions in shop order, one open at a time, with its values.
void draw_decisions(Desk& desk, ImVec2 low, ImVec2 size);

/// Opens the group of a key and brings its row into view with the keyboard on it.
void lead_to_key(Desk& desk, const std::string& key);

}  // namespace sagitta::viewer
