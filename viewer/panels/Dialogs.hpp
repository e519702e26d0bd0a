#pragma once

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Draws the dialog that is open, if any. Escape closes it.
void draw_dialogs(Desk& desk);

void draw_start(Desk& desk);        ///< new from a preset
void draw_file_dialog(Desk& desk);  ///< open, save as, compare with
void draw_send_out(Desk& desk);     ///< export
void draw_command_list(Desk& desk);
void draw_way(Desk& desk);      ///< the first-run page
void draw_comfort(Desk& desk);  ///< text size, colours, units
void draw_unsaved(Desk& desk);
void draw_elsewhere(Desk& desk);  ///< the file was changed by another program
void draw_left_over(Desk& desk);  ///< a recovery copy was found
void draw_sheets(Desk& desk);     ///< the pieces as they are laid out on their sheets
void draw_fret_page(Desk& desk);  ///< each slot's place, its wire, and where it was measured

/// The row of buttons at a dialog's foot: moves to the bottom right for buttons of this total width, pixels.
void dialog_foot(Ui& ui, float width);
float button_width(const Ui& ui, const char* label);

}  // namespace sagitta::viewer
