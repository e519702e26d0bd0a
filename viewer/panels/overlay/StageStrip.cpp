#include "overlay/StageStrip.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "overlay/NextCut.hpp"
#include "widgets/Veil.hpp"

namespace sagitta::viewer {

namespace {

std::string words(Stage stage) {
  switch (stage) {
    case Stage::blank:
      return "Blank";
    case Stage::thicknessed:
      return "Thicknessed";
    case Stage::pocketed:
      return "Pockets cut";
    case Stage::radiused:
      return "Radius cut";
    case Stage::slotted:
      return "Slots cut";
    case Stage::board:
      return "Outline cut";
    case Stage::finished:
      return "Sanded";
  }
  return "";
}

std::optional<Operation> operation_of(Stage stage) {
  switch (stage) {
    case Stage::thicknessed:
      return Operation::thickness;
    case Stage::pocketed:
      return Operation::pockets;
    case Stage::radiused:
      return Operation::radius;
    case Stage::slotted:
      return Operation::slots;
    case Stage::board:
      return Operation::outline;
    default:
      return std::nullopt;
  }
}

/// Index of the set-up that makes the stage; -1 when none is named for it.
int setup_of(const Board& board, Stage stage) {
  const auto operation = operation_of(stage);
  for (std::size_t i = 0; operation && i < board.setups.size(); ++i)
    for (const Operation o : board.setups[i].operations)
      if (o == *operation) return static_cast<int>(i);
  return -1;
}

constexpr const char* stage_menu_name = "stage menu";

/// The menu of the stage that is shown.
Requests draw_stage_menu(const StripState& state) {
  Requests asked;
  if (!ImGui::BeginPopup(stage_menu_name)) return asked;
  Ui& ui = state.ui;
  const int setup = setup_of(state.document.board(), state.shown);
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(words(state.shown).c_str());
  ImGui::PopStyleColor();
  ImGui::Separator();
  if (ui.menu_item("Fit the board to the picture")) asked.push_back(asked::Run{"fit"});
  if (ui.menu_item("Cut the board across")) asked.push_back(asked::Run{"cutting plane"});
  if (setup >= 0 && ui.menu_item("Open its set-up"))
    asked.push_back(asked::ShowKey{"setups[" + std::to_string(setup) + "].name"});
  if (ui.menu_item("Open the order of work")) asked.push_back(asked::ShowKey{"work.order"});
  ImGui::EndPopup();
  return asked;
}

/// Whether the right button asks for the menu of the last item.
bool asks_for_menu() { return ImGui::IsItemHovered() && ImGui::IsMouseReleased(ImGuiMouseButton_Right); }

/// Returns whether its menu is asked for.
bool draw_one(Ui& ui, Stage& now, Stage stage, ImTextureID picture, ImVec2 size) {
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const float text = ImGui::GetFontSize() + ui.px(6);
  ImGui::PushID(static_cast<int>(stage));
  const bool pressed = ImGui::InvisibleButton("stage", ImVec2(size.x, size.y + text));
  ImGui::RenderNavHighlight(ImRect(low, low + ImVec2(size.x, size.y + text)), ImGui::GetItemID());
  ImGui::PopID();
  const bool shown = now == stage, hovered = ImGui::IsItemHovered(), menu = asks_for_menu();
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, low + size, ui.theme.canvas, ui.px(4));
  if (picture) paint->AddImageRounded(picture, low, low + size, ImVec2(0, 1), ImVec2(1, 0), IM_COL32_WHITE, ui.px(4));
  if (shown || hovered)
    paint->AddRect(low, low + size, shown ? ui.theme.accent : ui.theme.quiet, ui.px(4), 0, ui.px(2));
  const std::string label = words(stage);
  paint->AddText(low + ImVec2(0, size.y + ui.px(4)), shown ? ui.theme.accent : ui.theme.text, label.c_str());
  ui.note(label, picture ? "drawn" : "not drawn");
  if (pressed || menu) now = stage;
  return menu;
}

/// Returns whether a stage's menu is asked for.
bool draw_stages(const StripState& state, ImVec2 size, const StagePictures& pictures) {
  bool menu = false;
  Ui& ui = state.ui;
  const Board& board = state.document.board();
  bool first = true;
  const ImVec2 picture = stage_picture_size(ui, size.x, stages_of(board).size());
  for (const StageGroup& group : stage_groups(board)) {
    if (!first) ImGui::SameLine(0, ui.px(22));
    first = false;
    ImGui::BeginGroup();
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float room = picture.x * static_cast<float>(group.stages.size());
    ImGui::TextUnformatted(fitted(group.title, room).c_str());
    ImGui::PopStyleColor();
    ui.note_area("group " + group.title, corner, ImGui::GetItemRectMax(), group.title);
    for (std::size_t i = 0; i < group.stages.size(); ++i) {
      if (i > 0) ImGui::SameLine(0, ui.px(8));
      menu |= draw_one(ui, state.shown, group.stages[i], pictures[static_cast<std::size_t>(group.stages[i])], picture);
    }
    ImGui::EndGroup();
  }
  return menu;
}

}  // namespace

std::vector<StageGroup> stage_groups(const Board& board) {
  std::vector<StageGroup> groups;
  int last = -2;
  for (const Stage stage : stages_of(board)) {
    const int setup = stage == Stage::blank ? -3 : stage == Stage::finished ? -4 : setup_of(board, stage);
    if (groups.empty() || setup != last) {
      std::string title = "On the machine";
      if (setup == -3) title = "Stock";
      if (setup == -4) title = "By hand";
      if (setup >= 0) title = board.setups[static_cast<std::size_t>(setup)].name;
      if (setup >= 0 && title.empty()) title = "Set-up " + std::to_string(setup + 1);
      groups.push_back({title, {}});
    }
    groups.back().stages.push_back(stage);
    last = setup;
  }
  return groups;
}

ImVec2 stage_picture_size(const Ui& ui, float width, std::size_t count) {
  const float margins = ui.px(28 + 44), gaps = ui.px(8) * static_cast<float>(count);
  const float each = (width - margins - gaps) / static_cast<float>(std::max<std::size_t>(count, 1));
  return {std::floor(std::clamp(each, ui.px(92), ui.px(190))), ui.px(62)};
}
float stage_strip_height(const Ui& ui) { return ui.px(12 + 22 + 60 + 24 + 18) + next_cut_height(ui); }

Requests draw_stage_strip(const StripState& state, ImVec2 low, ImVec2 size, const StagePictures& pictures) {
  Requests asked;
  if (state.ui.begin_panel("Stages", low, size, ImGuiWindowFlags_HorizontalScrollbar)) {
    asked = draw_next_cut(state.ui, state.document, state.results, state.manner);
    const ImVec2 from = ImGui::GetCursorScreenPos();
    const bool menu = draw_stages(state, size, pictures);
    if (state.results.behind.picture) draw_veil(from, low + size, state.ui.theme.panel);
    if (menu) ImGui::OpenPopup(stage_menu_name);
    for (Request& request : draw_stage_menu(state)) asked.push_back(std::move(request));
  }
  state.ui.end_panel();
  return asked;
}

}  // namespace sagitta::viewer
