#include "decisions/DrawerMenu.hpp"

#include <imgui_internal.h>

#include "board/Fields.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

constexpr const char* button_label = "Drawer";
constexpr float menu_width = 300;  // units

std::string title_of(Drawer drawer) {
  switch (drawer) {
    case Drawer::wire:
      return "Fret wire in the drawer";
    case Drawer::strings:
      return "String sets in the drawer";
    case Drawer::cutters:
      return "Cutters in the drawer";
    case Drawer::materials:
      return "Materials in the drawer";
    case Drawer::sheets:
      return "Sheets in the drawer";
  }
  return "";
}

/// What there is to take; returns the one taken.
const DrawerItem* draw_items(Ui& ui, DrawerForm& form, Drawer drawer, const Board& draft) {
  const DrawerItem* taken = nullptr;
  std::string forgotten;
  const float cross = ImGui::GetFrameHeight();
  for (const DrawerItem& item : form.drawers.items(drawer)) {
    ImGui::PushID(item.name.c_str());
    const bool can = fits(draft, drawer, item);
    const float room = ImGui::GetContentRegionAvail().x - cross - ui.px(6);
    ImGui::BeginDisabled(!can);
    ImGui::PushStyleVar(ImGuiStyleVar_SelectableTextAlign, ImVec2(0, 0.5f));
    if (ImGui::Selectable(fitted(item.name, room).c_str(), false, ImGuiSelectableFlags_DontClosePopups,
                          ImVec2(room, cross)))
      taken = &item;
    ui.note("drawer " + item.name, item.name, can);
    ImGui::PopStyleVar();
    ImGui::EndDisabled();
    ImGui::SameLine(0, ui.px(6));
    if (ImGui::Button("\u00d7", ImVec2(cross, 0))) forgotten = item.name;
    ui.note("forget " + item.name);
    ui.help("Takes it out of the drawer; boards that have it keep it.");
    ImGui::PopID();
  }
  if (form.drawers.items(drawer).empty()) ui.quiet("Nothing is kept here yet.");
  for (const std::string& trouble : form.drawers.troubles(drawer)) ui.warning(trouble);
  if (!forgotten.empty()) form.message = form.drawers.forget(drawer, forgotten), taken = nullptr;
  return taken;
}

void draw_keeping(Ui& ui, DrawerForm& form, Drawer drawer, const Board& draft, std::size_t row) {
  ImGui::Separator();
  ImGui::SetNextItemWidth(-1);
  ui.text_field("drawer name", form.name, "name for this one");
  if (ui.button("Remember this one", !form.name.empty()))
    form.message = form.drawers.keep(drawer, form.name, draft, row);
  if (!form.message.empty()) ui.warning(form.message);
}

bool has_row(const Board& draft, Drawer drawer, std::size_t row) {
  if (drawer == Drawer::strings) return !draft.strings.gauges.empty();
  return row < row_count(draft, *find_table(table_of(drawer)));
}

}  // namespace

std::optional<Drawer> drawer_of(std::string_view table) {
  for (const Drawer drawer : all_drawers)
    if (table_of(drawer) == table) return drawer;
  return std::nullopt;
}

float drawer_button_width(const Ui& ui) { return button_width(ui, button_label); }

Edit draw_drawer(Ui& ui, DrawerForm& form, Drawer drawer, Board& draft, std::size_t row) {
  const std::string menu = "drawer of " + std::string(table_of(drawer)) + std::to_string(row);
  if (ImGui::SmallButton(button_label)) {
    form.name = own_name(draft, drawer, row), form.message.clear();
    form.drawers.look_again();
    ImGui::OpenPopup(menu.c_str());
  }
  ui.note(menu);
  ui.help("What is kept in the shop's drawer for all boards.");
  ImGui::SetNextWindowSize(ImVec2(ui.px(menu_width), 0));
  if (!ImGui::BeginPopup(menu.c_str())) return Edit::none;
  ui.heading(title_of(drawer));
  const DrawerItem* taken = draw_items(ui, form, drawer, draft);
  Edit edit = Edit::none;
  if (taken) {
    draft = with_item(draft, drawer, *taken, row);
    edit = Edit::done;
    ImGui::CloseCurrentPopup();
  } else if (has_row(draft, drawer, row)) {
    draw_keeping(ui, form, drawer, draft, row);
  }
  ImGui::EndPopup();
  return edit;
}

}  // namespace sagitta::viewer
