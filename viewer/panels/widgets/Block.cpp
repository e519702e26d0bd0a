#include "widgets/Block.hpp"

#include <imgui_internal.h>

#include <cctype>

namespace sagitta::viewer {

std::string capital(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

namespace {

ImU32 ink_of(const Theme& theme, Weight weight) {
  return weight == Weight::heavy ? theme.accent : weight == Weight::middle ? theme.look : theme.quiet;
}

/// A filled square for what says stop, a ring for what says look, a small dot for the rest.
void draw_shape(const Ui& ui, Weight weight, ImVec2 middle) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const ImU32 ink = ink_of(ui.theme, weight);
  const float half = ui.px(4.5f);
  if (weight == Weight::heavy)
    paint->AddRectFilled(middle - ImVec2(half, half), middle + ImVec2(half, half), ink);
  else if (weight == Weight::middle)
    paint->AddCircle(middle, half, ink, 0, ui.px(2));
  else
    paint->AddCircleFilled(middle, ui.px(2), ink);
}

}  // namespace

bool draw_block(Ui& ui, const Block& block) {
  const float width = ImGui::GetContentRegionAvail().x, pad = ui.px(12), room = width - 2 * pad;
  const float word = block.word.empty() ? 0 : ImGui::CalcTextSize(block.word.c_str()).x + ui.px(24);
  ImGui::PushFont(ui.letters.heading);
  const std::string title = wrapped(block.title, room - word);
  ImGui::PopFont();
  const std::string text = wrapped(block.text, room), hint = wrapped(block.hint, room);
  const auto tall = [&](const std::string& words) {
    return words.empty() ? 0 : ImGui::CalcTextSize(words.c_str()).y + ui.px(4);
  };
  const float height = tall(title) + tall(text) + tall(hint) + ui.px(12);
  const ImVec2 low = ImGui::GetCursorScreenPos(), high = low + ImVec2(width, height);
  ImGui::PushID(block.id.c_str());
  const bool pressed = ImGui::InvisibleButton("block", ImVec2(width, height));
  ImGui::RenderNavHighlight(ImRect(low, high), ImGui::GetItemID());
  ImGui::PopID();
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, ImGui::IsItemHovered() ? ui.theme.line : ui.theme.field, ui.px(4));
  if (block.chosen) paint->AddRect(low, high, ui.theme.accent, ui.px(4), 0, ui.px(1.5f));
  const float bar = block.weight == Weight::heavy ? 5.0f : block.weight == Weight::middle ? 3.0f : 2.0f;
  const ImU32 ink = ink_of(ui.theme, block.weight);
  paint->AddRectFilled(low, ImVec2(low.x + ui.px(bar), high.y), ink, ui.px(2));
  float y = low.y + ui.px(6);
  const auto write = [&](const std::string& words, ImU32 colour, ImFont* font) {
    if (!words.empty()) paint->AddText(font, ImGui::GetFontSize(), ImVec2(low.x + pad, y), colour, words.c_str());
    y += tall(words);
  };
  if (word > 0) {
    draw_shape(ui, block.weight, ImVec2(high.x - pad - word + ui.px(14), y + ImGui::GetFontSize() / 2));
    paint->AddText(ImVec2(high.x - pad - word + ui.px(24), y), ink, block.word.c_str());
  }
  write(title, ui.theme.text, ui.letters.heading);
  write(text, ui.theme.text, ui.letters.regular);
  write(hint, ui.theme.quiet, ui.letters.regular);
  ui.note(block.id, block.title + ": " + block.text);
  return pressed;
}

}  // namespace sagitta::viewer
