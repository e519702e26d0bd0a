#include "dialogs/Dialogs.hpp"

#include <algorithm>

#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

Requests draw_unsaved(Ui& ui, const std::string& title) {
  ui.quiet(title + " has changes that are not saved.");
  dialog_foot(ui,
              button_width(ui, "Keep working") + button_width(ui, "Throw away") + button_width(ui, "Save") + ui.px(16));
  const bool stays = ui.button("Keep working");
  ImGui::SameLine();
  const bool thrown_away = ui.button("Throw away");
  ImGui::SameLine();
  const bool saved = ui.primary("Save");
  if (stays) return {asked::Stay{}};
  if (thrown_away || saved) return {asked::Continue{saved}};
  return {};
}

Requests draw_left_over(Ui& ui, const Recovered& left_over) {
  const std::string of = left_over.board.empty() ? "a board that had no file yet" : left_over.board.string();
  ui.quiet("Sagitta ended while this was being edited: " + of +
           ". A copy was kept up to two seconds before that. It can be taken up again; the file itself is as it "
           "was last saved.");
  dialog_foot(ui, button_width(ui, "Throw the copy away") + button_width(ui, "Take it up again") + ui.px(8));
  const bool thrown_away = ui.button("Throw the copy away");
  ImGui::SameLine();
  const bool taken = ui.primary("Take it up again");
  if (thrown_away || taken) return {asked::LeftOver{taken}};
  return {};
}

}  // namespace sagitta::viewer
