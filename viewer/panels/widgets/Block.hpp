#pragma once

/// A block of text with a bar whose width shows its weight.

#include <string>

#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// How much a block of words weighs: shown by the width and the darkness of its bar, never by colour alone.
enum class Weight { light, middle, heavy };

/// A block of wrapped words that can be pressed, with a bar at its left.
struct Block {
  std::string id, title, text, hint;
  std::string word = {};  ///< small, at the right of the title
  Weight weight = Weight::heavy;
  bool chosen = false;
};

/// Draws it over the width of the panel; true when it was pressed.
bool draw_block(Ui& ui, const Block& block);

/// With a capital first letter.
std::string capital(std::string text);

}  // namespace sagitta::viewer
