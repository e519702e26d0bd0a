#pragma once

/// Colours, spacing and letters of the window: one accent colour, two sizes of text, light and dark.

#include <imgui.h>

#include "scene/Showing.hpp"

namespace sagitta::viewer {

struct Theme {
  bool dark = false;
  ImU32 accent = 0, accent_soft = 0, text = 0, quiet = 0, line = 0, panel = 0, canvas = 0, field = 0, paper = 0;
  ImU32 rim = 0;   ///< about what takes input: at least 3 : 1 against every ground that it stands on
  ImU32 look = 0;  ///< of a finding that says look
  Ink ink;
};

Theme light_theme();
Theme dark_theme();

struct Letters {
  ImFont* regular = nullptr;
  ImFont* heading = nullptr;  ///< same size, heavier
  ImFont* small = nullptr;
};

/// Loads the letters at a scale (1 = 15.5 pixels high) and replaces those loaded before. The picture of the letters
/// must be made anew on the graphics card afterwards. Falls back on ImGui's own letters where Inter is not installed.
Letters load_letters(float scale);

/// Colours and spacing for ImGui at that scale.
void apply(const Theme& theme, float scale);

}  // namespace sagitta::viewer
