#include "overlay/LengthwisePanel.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "overlay/EdgeDrawing.hpp"
#include "overlay/SideDrawing.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

constexpr float numbers_row = 15;  // units

constexpr const char* over_frets = "Over the frets";
constexpr float string_width = 126, head_gap = 16;  // units

/// Whether the string's choice stands in a row of its own.
bool head_is_split(const Ui& ui, float width) {
  const ImGuiStyle& style = ImGui::GetStyle();
  const float buttons = button_width(ui, "Side") + button_width(ui, "Bass edge") + button_width(ui, "Treble edge");
  const float tick = ImGui::GetFrameHeight() + style.ItemInnerSpacing.x + ImGui::CalcTextSize(over_frets).x;
  return buttons + 2 * style.ItemSpacing.x + ui.px(string_width + 2 * head_gap) + tick > width;
}

/// Which of the drawings, and how it is drawn.
void draw_head(Ui& ui, View& view, const Layout& layout, bool split, Requests& asked) {
  const std::pair<const char*, Lengthwise> views[] = {
      {"Side", Lengthwise::side}, {"Bass edge", Lengthwise::bass_edge}, {"Treble edge", Lengthwise::treble_edge}};
  const char* const commands[] = {"side view", "bass edge", "treble edge"};
  for (std::size_t i = 0; i < std::size(views); ++i) {
    bool now = view.lengthwise == views[i].second;
    if (ui.toggle(views[i].first, now)) asked.push_back(asked::Run{commands[i]});
    ImGui::SameLine();
  }
  if (view.lengthwise != Lengthwise::side || split) ImGui::NewLine();
  if (view.lengthwise != Lengthwise::side) return;
  if (!split) ImGui::SameLine(0, ui.px(head_gap));
  ImGui::SetNextItemWidth(ui.px(string_width));
  ui.choice("String", string_names(layout), view.side_string);
  ImGui::SameLine(0, ui.px(head_gap));
  ui.tick(over_frets, view.magnified);
}

/// What is missing for the strings to be drawn.
std::string missing_words(float width) {
  return wrapped("For the strings give the action, or the bridge and the body's step, under Neck.", width);
}

void draw_missing(const LongSheet& s, float y) {
  const std::string words = missing_words(s.high.x - s.low.x);
  const ImVec2 size = ImGui::CalcTextSize(words.c_str()), at(s.low.x, y);
  s.paint->AddText(at, s.ui.theme.quiet, words.c_str());
  s.ui.note_area("side missing", at, at + size, words);
}

void draw_side_view(LongSheet s, const std::optional<HeightChain>& chain, LongExtent extent) {
  const float row = s.ui.px(numbers_row);
  const int string = s.view.side_string;
  const float bottom = s.high.y, top = s.low.y + ImGui::GetFontSize() + s.ui.px(4);
  s.frame = long_frame(extent, ImVec2(s.low.x, top), ImVec2(s.high.x, bottom));
  const int rows = chain ? draw_fret_heights(s, *chain, string, 0, false) : 0;
  const float heights = chain ? static_cast<float>(rows) * s.ui.letters.small->FontSize + s.ui.px(4)
                              : ImGui::CalcTextSize(missing_words(s.high.x - s.low.x).c_str()).y + s.ui.px(4);
  s.high.y = bottom - heights - row;
  s.frame = long_frame(extent, ImVec2(s.low.x, top), s.high);
  s.state_factor(chain ? "; under each fret, the string over it" : "");
  s.low.y = top;
  draw_side(s, chain, string);
  s.fret_numbers(s.high.y + row / 2);
  if (chain) draw_fret_heights(s, *chain, string, s.high.y + row, true);
  if (!chain) draw_missing(s, s.high.y + row + s.ui.px(2));
}

void draw_edge_view(LongSheet s, const EdgeView& edge) {
  const float row = s.ui.px(numbers_row), margin = s.ui.px(78);
  const float line = ImGui::GetFontSize() + s.ui.px(4);
  s.high.y -= row;
  s.frame = long_frame(edge_extent(s.board(), edge), s.low + ImVec2(margin, line), s.high - ImVec2(margin, 0));
  s.state_factor();
  s.low += ImVec2(margin, line), s.high.x -= margin;
  draw_edge(s, edge);
  s.fret_numbers(s.high.y + row / 2);
}

}  // namespace

Requests draw_lengthwise(Ui& ui, View& view, const Results& results, const Manner& manner, ImVec2 low, ImVec2 size) {
  Requests asked;
  const StageModel* stage = results.at(view.stage);
  if (!stage || !results.laid_out() || size.y < ui.px(60)) return asked;
  const PreparedBoard& board = *results.good->prepared;
  const bool side = view.lengthwise == Lengthwise::side;
  const ImVec2 high = low + size;
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, ui.theme.paper);
  paint->AddLine(low, ImVec2(high.x, low.y), ui.theme.line);
  const auto chain = side ? height_chain(board) : std::nullopt;
  const int low_side = bass_side(board.layout());
  const NeckReading* neck = results.good->neck.get();
  const EdgeView edge =
      side ? EdgeView()
           : edge_view(board, *stage, view.lengthwise == Lengthwise::bass_edge ? low_side : 1 - low_side, neck);
  const std::vector<Figure> figures =
      side ? side_figures(board, chain, manner) : edge_figures(board, edge, neck, manner);
  const float inside = size.x - ui.px(28);
  ImGui::SetCursorScreenPos(low + ImVec2(ui.px(14), ui.px(8)));
  const bool split = side && head_is_split(ui, inside);
  const float head =
      figures_height(ui, inside, static_cast<int>(figures.size())) + (split ? ImGui::GetFrameHeightWithSpacing() : 0);
  ImGui::BeginChild("along", ImVec2(inside, std::min(head, size.y / 2)), false);
  draw_head(ui, view, board.layout(), split, asked);
  draw_figures(ui, figures, inside, side ? "side " : "edge ");
  ImGui::EndChild();
  const ImVec2 from(low.x + ui.px(16), ImGui::GetItemRectMax().y + ui.px(4)), to(high.x - ui.px(16), high.y - ui.px(6));
  paint->PushClipRect(low, high, true);
  {
    Labels labels(ui, paint, side ? "side label " : "edge label ");
    const LongSheet sheet{ui, view, manner, *results.good, *stage, {}, from, to, labels};
    if (side)
      draw_side_view(sheet, chain, side_extent(board, chain, view.side_string, view.magnified));
    else
      draw_edge_view(sheet, edge);
  }
  paint->PopClipRect();
  return asked;
}

}  // namespace sagitta::viewer
