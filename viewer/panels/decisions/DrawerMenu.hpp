#pragma once

/// The button beside a decision that opens the shop's drawer: take something out of it, or keep this one in it.

#include "document/Drawers.hpp"
#include "widgets/FieldRow.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What is half typed in an open drawer.
struct DrawerForm {
  Drawers drawers;
  std::string name, message;  ///< to be kept under; why it was not
};

/// The drawer that holds rows of this table; nothing for other tables.
std::optional<Drawer> drawer_of(std::string_view table);
/// Width of the button that draw_drawer() draws, pixels.
float drawer_button_width(const Ui& ui);
/// A small button; its menu lists the drawer. Returns what a choice makes of the draft. `row` one past the last: only
/// taking, as a new row.
Edit draw_drawer(Ui& ui, DrawerForm& form, Drawer drawer, Board& draft, std::size_t row);

}  // namespace sagitta::viewer
