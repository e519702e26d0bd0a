#include "decisions/ArtworkRows.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <set>

#include "board/ShapeKeys.hpp"

namespace sagitta::viewer {

namespace {

std::set<std::string> colours_of(const Results& results, const Inlay& inlay) {
  std::set<std::string> colours;
  if (!results.model || !results.model->fitted) return colours;
  const auto drawing = results.model->fitted->drawings.find(inlay.file);
  if (drawing != results.model->fitted->drawings.end())
    for (const DrawnRegion& region : drawing->second.regions) colours.insert(region.colour);
  return colours;
}

ImU32 ink_of(const std::string& colour) {
  const auto value = static_cast<unsigned>(std::strtoul(colour.c_str() + (colour.empty() ? 0 : 1), nullptr, 16));
  return IM_COL32(value >> 16 & 0xff, value >> 8 & 0xff, value & 0xff, 255);
}

/// What a colour may be cut from: the board's own materials, its sheets', and some that are built in.
std::vector<std::string> choices(const Board& board, const std::string& now) {
  std::vector<std::string> names{"shell", "bone", "brass", "ebony", "maple"};
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const auto& [name, material] : board.materials) add(name);
  for (const Sheet& sheet : board.sheets) add(sheet.material);
  add(now);
  return names;
}

bool draw_colour(Ui& ui, Board& draft, std::size_t index, const std::string& colour) {
  Inlay& inlay = draft.inlays[index];
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float side = ImGui::GetFrameHeight();
  const float room = row_label(ui, "      " + colour);
  ImGui::GetWindowDrawList()->AddRectFilled(ImVec2(corner.x, corner.y + ui.px(4)),
                                            ImVec2(corner.x + side - ui.px(8), corner.y + side - ui.px(4)),
                                            ink_of(colour), ui.px(3));
  const auto found = inlay.colours.find(colour);
  const std::string now = found == inlay.colours.end() ? "" : found->second;
  const std::vector<std::string> names = choices(draft, now);
  int chosen = static_cast<int>(std::find(names.begin(), names.end(), now) - names.begin());
  if (now.empty()) chosen = -1;
  ImGui::SetNextItemWidth(room);
  if (!ui.choice("inlays[" + std::to_string(index) + "].colours " + colour, names, chosen)) return false;
  inlay.colours[colour] = names[static_cast<std::size_t>(chosen)];
  need_sheet(draft, inlay.colours[colour], piece_thickness(inlay));
  return true;
}

}  // namespace

void need_sheet(Board& board, const std::string& material, double thickness) {
  if (board.sheets.empty()) return;
  for (const Sheet& sheet : board.sheets)
    if (sheet.material == material) return;
  Sheet sheet;
  sheet.material = material, sheet.length = 60, sheet.width = 40, sheet.thickness = thickness;
  board.sheets.push_back(sheet);
}

Edit draw_artwork_rows(Ui& ui, const Results& results, Board& draft, std::size_t index, Requests& asked) {
  Inlay& inlay = draft.inlays[index];
  if (!takes(inlay, "file")) return Edit::none;
  Edit edit = Edit::none;
  const std::set<std::string> colours = colours_of(results, inlay);
  if (colours.size() > 1)
    for (const std::string& colour : colours)
      if (draw_colour(ui, draft, index, colour)) edit = Edit::done;
  ImGui::PushID(static_cast<int>(index));
  if (ui.button("Choose a drawing")) asked.push_back(asked::ChooseDrawing{static_cast<int>(index)});
  ImGui::PopID();
  return edit;
}

}  // namespace sagitta::viewer
