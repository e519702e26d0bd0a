#include "overlay/Figures.hpp"

#include <algorithm>

namespace sagitta::viewer {

namespace {

constexpr float column_width = 112;  // units

int columns(const Ui& ui, float width, int count) {
  return std::clamp(static_cast<int>(width / ui.px(column_width)), 1, std::max(count, 1));
}

}  // namespace

void draw_figures(Ui& ui, const std::vector<Figure>& figures, float width, const std::string& noted) {
  const int across = columns(ui, width, static_cast<int>(figures.size()));
  const float left = ImGui::GetCursorPosX(), column = width / static_cast<float>(across);
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const int place = static_cast<int>(i) % across;
    if (place > 0) ImGui::SameLine(left + column * static_cast<float>(place));
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, ui.px(1)));
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    ImGui::TextUnformatted(figures[i].name.c_str());
    ImGui::PopStyleColor();
    ImGui::TextUnformatted(figures[i].value.c_str());
    ui.note(noted + figures[i].name, figures[i].value);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
  }
}

float figures_height(const Ui& ui, float width, int count) {
  const int across = columns(ui, width, count), rows = (count + across - 1) / across;
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  return ImGui::GetFrameHeight() + gap + static_cast<float>(rows) * (2 * ImGui::GetFontSize() + ui.px(2) + gap);
}

}  // namespace sagitta::viewer
