#include "dialogs/CommandList.hpp"

#include <algorithm>
#include <cctype>

namespace sagitta::viewer {

namespace {

bool pressed(ImGuiKey key, bool repeat = true) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key), repeat); }

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

std::vector<const OfferedCommand*> search_commands(const Offer& offer, const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : lower(text) + " ") {
    if (c != ' ')
      word += c;
    else if (!word.empty())
      words.push_back(std::move(word)), word.clear();
  }
  std::vector<const OfferedCommand*> found;
  for (const OfferedCommand& c : offer) {
    const std::string hay = lower(c.title + " " + c.group + " " + c.keys);
    if (std::all_of(words.begin(), words.end(), [&](const std::string& w) { return hay.find(w) != hay.npos; }))
      found.push_back(&c);
  }
  return found;
}

Requests draw_command_list(Ui& ui, CommandSearch& search, const Offer& offer) {
  Requests asked;
  ImGui::SetNextItemWidth(-1);
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  if (ui.text_field("search", search.words, "type a few letters of what you want to do")) search.chosen = 0;
  const auto found = search_commands(offer, search.words);
  const int last = static_cast<int>(found.size()) - 1;
  const bool moved = pressed(ImGuiKey_DownArrow) || pressed(ImGuiKey_UpArrow);
  if (pressed(ImGuiKey_DownArrow)) ++search.chosen;
  if (pressed(ImGuiKey_UpArrow)) --search.chosen;
  search.chosen = std::clamp(search.chosen, 0, std::max(last, 0));
  const bool enter = pressed(ImGuiKey_Enter, false);
  ImGui::BeginChild("commands");
  if (found.empty()) ui.quiet("Nothing of that name.");
  for (int i = 0; i <= last; ++i) {
    const OfferedCommand& command = *found[static_cast<std::size_t>(i)];
    const bool can = command.can;
    ImGui::PushID(i);
    ImGui::BeginDisabled(!can);
    const bool chosen =
        ImGui::Selectable(command.title.c_str(), i == search.chosen, ImGuiSelectableFlags_DontClosePopups);
    ImGui::EndDisabled();
    ui.note(command.name, command.title, can);
    if (moved && i == search.chosen) ImGui::SetScrollHereY(0.5f);
    const std::string& keys = command.keys;
    ImGui::SameLine(ImGui::GetContentRegionMax().x - ImGui::CalcTextSize(keys.c_str()).x - ui.px(8));
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    ImGui::TextUnformatted(keys.c_str());
    ImGui::PopStyleColor();
    ImGui::PopID();
    if (can && (chosen || (enter && i == search.chosen))) asked = {asked::Show{Dialog::none}, asked::Run{command.name}};
  }
  ImGui::EndChild();
  return asked;
}

}  // namespace sagitta::viewer
