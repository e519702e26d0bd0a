#include "widgets/Buttons.hpp"

#include <algorithm>

namespace sagitta::viewer {

float button_width(const Ui&, const char* label) {
  return ImGui::CalcTextSize(label).x + 2 * ImGui::GetStyle().FramePadding.x;
}

void dialog_foot(Ui& ui, float width) {
  const ImVec2 end = ImGui::GetContentRegionMax();
  const float line = ImGui::GetFrameHeight();
  ImGui::SetCursorPos(ImVec2(std::max(end.x - width, ui.px(14)), std::max(end.y - line, ImGui::GetCursorPosY())));
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float left = ImGui::GetWindowPos().x + ui.px(14), y = corner.y - ui.px(8);
  ImGui::GetWindowDrawList()->AddLine(ImVec2(left, y), ImVec2(ImGui::GetWindowPos().x + end.x, y), ui.theme.line);
}

}  // namespace sagitta::viewer
