#include "widgets/Ui.hpp"

#include <imgui_internal.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <utility>

namespace sagitta::viewer {

namespace {

/// The bytes of a word, a path say, that fit: up to its last slash there, or to its last whole letter.
std::size_t fitting(const std::string& word, float width) {
  std::size_t last = 0, slash = 0;
  for (std::size_t i = 1; i < word.size(); ++i) {
    if ((static_cast<unsigned char>(word[i]) & 0xc0) == 0x80) continue;
    if (ImGui::CalcTextSize(word.data(), word.data() + i).x > width) break;
    last = i;
    if (word[i - 1] == '/') slash = i;
  }
  return std::max<std::size_t>(slash > 1 ? slash : last, 1);
}

}  // namespace

bool Ui::begin_panel(const std::string& name, ImVec2 low, ImVec2 size, ImGuiWindowFlags flags, bool bare) {
  panel_ = name;
  ImGui::SetNextWindowPos(low);
  ImGui::SetNextWindowSize(size);
  const ImGuiWindowFlags fixed = ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoTitleBar |
                                 ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings |
                                 ImGuiWindowFlags_NoBringToFrontOnFocus;
  if (bare) ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
  const bool open = ImGui::Begin(name.c_str(), nullptr, fixed | flags);
  if (bare) ImGui::PopStyleVar();
  note_area("", low, ImVec2(low.x + size.x, low.y + size.y));
  return open;
}

void Ui::end_panel() {
  ImGui::End();
  panel_.clear();
}

bool Ui::begin_dialog(const std::string& name, ImVec2 size) {
  panel_ = dialog_ = name;
  const ImVec2 room = ImGui::GetIO().DisplaySize;
  size = ImVec2(std::min(size.x, room.x - px(16)), std::min(size.y, room.y - px(16)));
  ImGui::SetNextWindowPos(ImVec2(room.x / 2, room.y / 2), ImGuiCond_Always, ImVec2(0.5f, 0.5f));
  ImGui::SetNextWindowSize(size);
  if (!ImGui::IsPopupOpen(name.c_str())) ImGui::OpenPopup(name.c_str());
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1.0f);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, px(6));
  const bool open = ImGui::BeginPopupModal(name.c_str(), nullptr,
                                           ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize |
                                               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoSavedSettings);
  ImGui::PopStyleVar(2);
  if (!open) return false;
  note_area("", ImGui::GetWindowPos(), ImGui::GetWindowPos() + size);
  heading(name);
  return true;
}

void Ui::end_dialog() {
  ImGui::EndPopup();
  panel_.clear();
}

void Ui::no_dialog() {
  if (!dialog_.empty() && ImGui::IsPopupOpen(dialog_.c_str())) ImGui::ClosePopupToLevel(0, true);
  dialog_.clear();
}

bool Ui::push_enabled(bool enabled) {
  ImGui::BeginDisabled(!enabled);
  return enabled;
}

bool Ui::button(const std::string& label, bool enabled) {
  push_enabled(enabled);
  const bool lead = arrives(label);
  if (lead) ImGui::SetKeyboardFocusHere();
  const bool pressed = ImGui::Button(label.c_str());
  note(label, "", enabled);
  ImGui::EndDisabled();
  return pressed;
}

bool Ui::primary(const std::string& label, bool enabled) {
  const ImVec4 accent = ImGui::ColorConvertU32ToFloat4(theme.accent);
  ImGui::PushStyleColor(ImGuiCol_Button, accent);
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, accent);
  ImGui::PushStyleColor(ImGuiCol_Text, theme.dark ? IM_COL32(24, 20, 16, 255) : IM_COL32_WHITE);
  const bool pressed = button(label, enabled);
  ImGui::PopStyleColor(3);
  return pressed;
}

bool Ui::toggle(const std::string& label, bool& value, const std::string& more) {
  if (value) ImGui::PushStyleColor(ImGuiCol_Button, theme.accent_soft);
  const bool pressed = ImGui::Button((label + more + "###" + label).c_str());
  if (value) ImGui::PopStyleColor();
  note(label, value ? "on" : "off");
  if (pressed) value = !value;
  return pressed;
}

bool Ui::checkbox(const std::string& label, bool& value) const {
  const RimmedFields rim(theme);
  return ImGui::Checkbox(label.c_str(), &value);
}

bool Ui::tick(const std::string& label, bool& value) {
  const float box = ImGui::GetFrameHeight() + ImGui::GetStyle().ItemInnerSpacing.x;
  const float room = ImGui::GetContentRegionAvail().x - box;
  const bool popup = ImGui::GetCurrentWindow()->Flags & ImGuiWindowFlags_AlwaysAutoResize;
  const bool wide = !popup && !label.starts_with("##") && ImGui::CalcTextSize(label.c_str()).x > room;
  const bool changed = checkbox(wide ? "##" + label : label, value);
  if (wide) {
    note(label, value ? "on" : "off");
    ImGui::SameLine(0, ImGui::GetStyle().ItemInnerSpacing.x);
    ImGui::TextUnformatted(wrapped(label, room).c_str());
    return changed;
  }
  note(label.starts_with("##") ? label.substr(2) : label, value ? "on" : "off");
  return changed;
}

bool Ui::row(const std::string& label, const std::string& shown, bool chosen) {
  ImGui::PushID(label.c_str());
  const bool pressed = ImGui::Selectable(fitted(shown, ImGui::GetContentRegionAvail().x).c_str(), chosen,
                                         ImGuiSelectableFlags_DontClosePopups);
  ImGui::PopID();
  note(label, shown);
  return pressed;
}

bool Ui::menu_item(const std::string& label, bool enabled) {
  const bool pressed = ImGui::MenuItem(label.c_str(), nullptr, false, enabled);
  note(label, "", enabled);
  return pressed;
}

bool Ui::text_field(const std::string& name, std::string& text, const char* hint, ImGuiInputTextFlags flags) {
  if (arrives(name)) ImGui::SetKeyboardFocusHere();
  ImGui::PushID(name.c_str());
  const RimmedFields rim(theme);
  const bool changed = ImGui::InputTextWithHint("##text", hint, &text, flags);
  ImGui::PopID();
  note(name, text, !(GImGui->CurrentItemFlags & ImGuiItemFlags_Disabled));
  return changed;
}

bool Ui::begin_list(const std::string& id, const std::string& shown) const {
  const RimmedFields rim(theme);
  return ImGui::BeginCombo(id.c_str(), shown.c_str());
}

bool Ui::choice(const std::string& name, const std::vector<std::string>& options, int& chosen) {
  const std::string now =
      chosen >= 0 && chosen < static_cast<int>(options.size()) ? options[static_cast<std::size_t>(chosen)] : "";
  bool changed = false;
  if (arrives(name)) ImGui::SetKeyboardFocusHere();
  const std::string id = "##" + name;
  const float face = ImGui::CalcItemWidth() - ImGui::GetFrameHeight() - 2 * ImGui::GetStyle().FramePadding.x;
  const bool open = begin_list(id, fitted(now, face));
  if (!open) {
    note(name, now);
    return false;
  }
  for (int i = 0; i < static_cast<int>(options.size()); ++i) {
    const std::string& option = options[static_cast<std::size_t>(i)];
    if (ImGui::Selectable(option.c_str(), i == chosen) && i != chosen) chosen = i, changed = true;
    note(name + "/" + option);
  }
  ImGui::EndCombo();
  note(name, now);
  return changed;
}

void Ui::heading(const std::string& text) {
  ImGui::PushFont(letters.heading);
  ImGui::TextUnformatted(text.c_str());
  ImGui::PopFont();
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImGui::GetWindowDrawList()->AddLine(at, ImVec2(at.x + ImGui::GetContentRegionAvail().x, at.y), theme.line);
  ImGui::Dummy(ImVec2(0, px(1)));
}

void Ui::quiet(const std::string& text) {
  ImGui::PushStyleColor(ImGuiCol_Text, theme.quiet);
  ImGui::TextUnformatted(wrapped(text, ImGui::GetContentRegionAvail().x).c_str());
  ImGui::PopStyleColor();
}

void Ui::warning(const std::string& text) {
  ImGui::PushStyleColor(ImGuiCol_Text, theme.accent);
  ImGui::TextUnformatted(wrapped(text, ImGui::GetContentRegionAvail().x).c_str());
  ImGui::PopStyleColor();
}

void Ui::help(const std::string& text) {
  if (text.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return;
  if (GImGui->HoveredIdTimer < 0.35f && !ImGui::IsItemActive()) return;
  if (ImGui::IsItemActive()) return;
  ImGui::BeginTooltip();
  ImGui::TextUnformatted(wrapped(text, px(320)).c_str());
  ImGui::EndTooltip();
  note_area("help", ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), text);
}

void Ui::note(const std::string& label, const std::string& text, bool enabled) {
  const std::string name = panel_ + "/" + label;
  const ImRect item(ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
  Seen& seen = seen_[name];
  seen = {item.Min, item.Max, false, enabled, frame_, text};
  const ImGuiWindow* window = ImGui::GetCurrentWindow();
  const ImVec2 middle = item.GetCenter();
  const ImVec2 room = ImGui::GetIO().DisplaySize;
  seen.in_view =
      window->ClipRect.Contains(middle) && middle.x >= 0 && middle.y >= 0 && middle.x < room.x && middle.y < room.y;
  note_stop(name, enabled);
  if (name == focusing_) take_focus();
  if (name == revealing_ || name == focusing_) {
    if (!seen.in_view || !window->ClipRect.Contains(item)) ImGui::SetScrollHereY(0.5f);
    if (window->ScrollMax.x > 0) ImGui::SetScrollHereX(0.5f);
    revealing_.clear(), focusing_.clear();
  }
}

void Ui::note_stop(const std::string& name, bool enabled) {
  const ImGuiID item = ImGui::GetItemID();
  const bool skipped = GImGui->LastItemData.InFlags & (ImGuiItemFlags_Disabled | ImGuiItemFlags_NoNav);
  if (item == 0 || !enabled || skipped) return;
  if (!stops_.empty() && stops_.back().item == item) return;  // noted under a second name
  stops_.push_back({item, ImGui::GetCurrentWindow()->RootWindow->ID, name});
}

void Ui::follow_tab(bool typing) {
  stops_before_.swap(stops_);
  stops_.clear();
  if (tab_wait_ > 0 && --tab_wait_ == 0) step_focus();
  if (typing || !ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab))) return;
  // ImGui's own Tab, which knows fields of text only, acts in the next frame; ours comes after it.
  tab_from_ = GImGui->NavId;
  tab_step_ = ImGui::GetIO().KeyShift ? -1 : 1;
  tab_wait_ = 2;
}

std::string Ui::focused() const {
  for (const auto* stops : {&stops_, &stops_before_})
    for (const Stop& stop : *stops)
      if (stop.item == GImGui->NavId) return stop.name;
  return "";
}

void Ui::step_focus() {
  const auto& popups = GImGui->OpenPopupStack;
  const ImGuiWindow* top = popups.empty() ? nullptr : popups.back().Window;
  std::vector<const Stop*> there;
  for (const Stop& stop : stops_before_)
    if (!top || stop.root == top->RootWindow->ID) there.push_back(&stop);
  if (there.empty()) return;
  const auto count = static_cast<std::ptrdiff_t>(there.size());
  const auto from = std::find_if(there.begin(), there.end(), [&](const Stop* stop) { return stop->item == tab_from_; });
  std::ptrdiff_t next = tab_step_ > 0 ? 0 : count - 1;
  if (from != there.end()) next = (from - there.begin() + tab_step_ + count) % count;
  focusing_ = there[static_cast<std::size_t>(next)]->name;
  ImGui::ClearActiveID();
}

void Ui::take_focus() {
  const ImGuiID item = ImGui::GetItemID();
  if (std::exchange(pointing_, false)) led_to_ = focusing_;
  if (item == 0) return;
  ImGui::FocusWindow(ImGui::GetCurrentWindow());
  ImGui::SetFocusID(item, ImGui::GetCurrentWindow());
  GImGui->NavDisableHighlight = false;
}

void Ui::note_area(const std::string& label, ImVec2 low, ImVec2 high, const std::string& text) {
  seen_[label.empty() ? panel_ : panel_ + "/" + label] = {low, high, true, true, frame_, text};
}

bool Ui::arrives(const std::string& label) {
  if (leading_.empty()) return false;
  if (panel_ + "/" + label != leading_) return false;
  ImGui::SetScrollHereY(0.4f);
  led_to_ = leading_;
  leading_.clear();
  return true;
}

const Seen* Ui::find(const std::string& name) const {
  const auto found = seen_.find(name);
  return found == seen_.end() || found->second.frame < frame_ - 1 ? nullptr : &found->second;
}

std::string wrapped(const std::string& text, float width) {
  std::string out, line;
  std::size_t from = 0;
  while (from <= text.size()) {
    const std::size_t to = std::min(text.find_first_of(" \n", from), text.size());
    const std::string word = text.substr(from, to - from);
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && ImGui::CalcTextSize(longer.c_str()).x > width)
      out += line + "\n", line = word;
    else
      line = longer;
    while (line.find(' ') == std::string::npos && ImGui::CalcTextSize(line.c_str()).x > width && line.size() > 1) {
      const std::size_t cut = fitting(line, width);
      out += line.substr(0, cut) + "\n", line.erase(0, cut);
    }
    if (to < text.size() && text[to] == '\n') out += line + "\n", line.clear();
    from = to + 1;
  }
  return out + line;
}

std::string fitted(const std::string& text, float width) {
  if (ImGui::CalcTextSize(text.c_str()).x <= width) return text;
  std::string cut = text;
  while (!cut.empty() && ImGui::CalcTextSize((cut + "\u2026").c_str()).x > width) {
    while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xc0) == 0x80) cut.pop_back();
    if (!cut.empty()) cut.pop_back();
  }
  return cut + "\u2026";
}

}  // namespace sagitta::viewer
