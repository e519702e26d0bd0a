#include "dialogs/StartPage.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cctype>

#include "input/Presets.hpp"
#include "widgets/Buttons.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/PlanDrawing.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr float card_width = 252, plan_height = 46, least_gap = 10;  // units
constexpr std::size_t most_last = 4;

void make_cards(StartForm& form, const Settings& settings) {
  form = {};
  form.made = true;
  for (const std::string& path : settings.recent) {
    std::error_code unknown;
    if (form.last.size() == most_last || !fs::is_regular_file(path, unknown)) continue;
    form.last.push_back(card_of(path, fs::path(path).stem().string(), read_board(path)));
    form.last.back().file = path;
  }
  for (const Preset& preset : presets()) {
    const std::string name(preset.name);
    form.presets.push_back(card_of(name, name, read_board_text(preset.text, name + ".toml", "")));
  }
}

/// Numbers and their units stay in one line.
std::string unbroken(std::string words) {
  for (const std::string unit : {" mm", " in"})
    for (std::size_t at = words.find(unit); at != words.npos; at = words.find(unit, at + 1))
      if (at > 0 && std::isdigit(static_cast<unsigned char>(words[at - 1]))) words.replace(at, 1, "\u00a0");
  return words;
}

bool draw_card(Ui& ui, const StartCard& card, float width) {
  const float pad = ui.px(10), line = ImGui::GetFontSize(), plan = ui.px(plan_height);
  const std::string words = wrapped(unbroken(card.words), width - 2 * pad);
  const ImVec2 size(width, plan + 3 * line + 2.6f * pad);
  const ImVec2 low = ImGui::GetCursorScreenPos(), high = low + size;
  ImGui::PushID(card.id.c_str());
  const bool pressed = ImGui::InvisibleButton("card", size);
  ImGui::RenderNavHighlight(ImRect(low, high), ImGui::GetItemID());
  ImGui::PopID();
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, ImGui::IsItemHovered() ? ui.theme.line : ui.theme.field, ui.px(6));
  const ImVec2 inner = low + ImVec2(pad, pad);
  draw_card_plan(ui, card, inner, ImVec2(high.x - pad, inner.y + plan));
  float y = inner.y + plan + pad * 0.6f;
  paint->AddText(ui.letters.heading, line, ImVec2(inner.x, y), ui.theme.text,
                 fitted(card.title, width - 2 * pad).c_str());
  paint->AddText(ImVec2(inner.x, y + line), ui.theme.quiet, words.c_str());
  ui.note(card.id, card.words);
  return pressed;
}

/// As many beside each other as there is room for; returns the one pressed.
const StartCard* draw_cards(Ui& ui, const std::vector<StartCard>& cards) {
  const float gap = ui.px(least_gap), room = ImGui::GetContentRegionAvail().x;
  const int across = std::max(1, static_cast<int>((room + gap) / (ui.px(card_width) + gap)));
  const float width = (room - gap * static_cast<float>(across - 1)) / static_cast<float>(across);
  const StartCard* pressed = nullptr;
  for (std::size_t i = 0; i < cards.size(); ++i) {
    if (static_cast<int>(i) % across > 0) ImGui::SameLine(0, gap);
    if (draw_card(ui, cards[i], width)) pressed = &cards[i];
  }
  return pressed;
}

std::string scale_words(const Board& board, const Manner& manner) {
  if (board.scale.length) return shown(*board.scale.length, manner, 1);
  return shown_bare(board.scale.bass.value_or(0), manner, 1) + " to " +
         shown(board.scale.treble.value_or(0), manner, 1);
}

std::string surface_words(const SurfaceSpec& surface, const Manner& manner) {
  const std::string nut = surface.radius_at_nut ? shown_bare(*surface.radius_at_nut, manner, 1) : "",
                    heel = surface.radius_at_heel ? shown(*surface.radius_at_heel, manner, 1) : "";
  switch (surface.profile) {
    case Profile::flat:
      return "flat";
    case Profile::single:
      return "radius " + (surface.radius_at_nut ? shown(*surface.radius_at_nut, manner, 1) : heel);
    case Profile::compound:
      return "compound " + nut + " to " + heel;
    case Profile::string_line:
      return "along the strings, from " + nut;
    case Profile::even_edge:
      return "even edges, from " + nut;
  }
  return "";
}

}  // namespace

StartCard card_of(std::string id, std::string title, BoardFile file) {
  StartCard card;
  card.id = std::move(id), card.title = std::move(title);
  if (!file.sound()) {
    card.words = "cannot be read any more";
    return card;
  }
  card.words = figures_of(file.board);
  auto laid_out = lay_out(file.board);
  if (auto* layout = std::get_if<Layout>(&laid_out)) card.layout = std::make_shared<const Layout>(std::move(*layout));
  card.board = std::make_shared<const Board>(std::move(file.board));
  return card;
}

void draw_card_plan(const Ui& ui, const StartCard& card, ImVec2 low, ImVec2 high) {
  if (!card.layout) return;
  const PlanFrame frame = plan_frame(*card.layout, low, high);
  draw_plan(ImGui::GetWindowDrawList(), ui.theme, *card.board, *card.layout, frame);
}

std::string figures_of(const Board& board) {
  const Manner manner = manner_of(Display::as_file, board);
  return std::to_string(board.strings.count) + (board.strings.count == 1 ? " string, " : " strings, ") +
         scale_words(board, manner) + ", " + std::to_string(board.scale.frets) + " frets, " +
         surface_words(board.surface, manner);
}

Requests draw_start(Ui& ui, StartForm& form, const Settings& settings) {
  if (!form.made || ImGui::IsWindowAppearing()) make_cards(form, settings);
  Requests asked;
  ImGui::BeginChild("cards", ImVec2(0, -ImGui::GetFrameHeightWithSpacing() - ui.px(6)));
  if (!form.last.empty()) {
    ui.quiet("Worked at last");
    if (const StartCard* card = draw_cards(ui, form.last)) asked.push_back(asked::OpenBoard{card->file});
    ImGui::Dummy(ImVec2(0, ui.px(6)));
  }
  ui.quiet("A new board starts from one that is near to it; every decision can then be changed");
  if (const StartCard* card = draw_cards(ui, form.presets)) asked.push_back(asked::OpenPreset{card->title});
  ImGui::EndChild();
  dialog_foot(ui, button_width(ui, "Open a file") + button_width(ui, "Not now") + ui.px(8));
  if (ui.button("Open a file")) asked.push_back(asked::Show{Dialog::open});
  ImGui::SameLine();
  if (ui.button("Not now")) asked.push_back(asked::Show{Dialog::none});
  return asked;
}

}  // namespace sagitta::viewer
