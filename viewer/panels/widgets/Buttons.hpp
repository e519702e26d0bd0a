#pragma once

/// Buttons of dialogs.

#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Width of a button with this label, pixels.
float button_width(const Ui& ui, const char* label);

/// The row of buttons at a dialog's foot: moves to the bottom right for buttons of this total width, pixels.
void dialog_foot(Ui& ui, float width);

}  // namespace sagitta::viewer
