#pragma once

/// Figures in columns over a drawing.

#include <string>
#include <vector>

#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// A figure under its name.
struct Figure {
  std::string name, value;
};

/// As many beside each other as the width has room for; each is noted as `noted` and its name.
void draw_figures(Ui& ui, const std::vector<Figure>& figures, float width, const std::string& noted);
/// Of a row with buttons and of the rows of so many figures, pixels.
float figures_height(const Ui& ui, float width, int count);

}  // namespace sagitta::viewer
