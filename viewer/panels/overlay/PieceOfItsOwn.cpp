#include "overlay/PieceOfItsOwn.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "overlay/ChosenInlay.hpp"
#include "overlay/Selecting.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

bool is_at(const std::vector<int>& frets, int fret) {
  return std::find(frets.begin(), frets.end(), fret) != frets.end();
}

}  // namespace

std::size_t piece_count(const Inlay& inlay) { return inlay.frets.size() + 2 * inlay.double_frets.size(); }

Board with_own_piece(Board board, std::size_t inlay, int fret) {
  if (inlay >= board.inlays.size()) return board;
  Inlay& shared = board.inlays[inlay];
  const bool single = is_at(shared.frets, fret), pair = is_at(shared.double_frets, fret);
  if (single == pair || shared.frets.size() + shared.double_frets.size() < 2) return board;
  Inlay own = shared;
  own.frets.clear(), own.double_frets.clear();
  (single ? own.frets : own.double_frets) = {fret};
  std::erase(single ? shared.frets : shared.double_frets, fret);
  board.inlays.push_back(std::move(own));
  return board;
}

void draw_piece_choice(const HandState& state) {
  Ui& ui = state.ui;
  const Board& board = state.document.board();
  if (!has_chosen(state.view, board) || !state.sound) return;
  const auto index = static_cast<std::size_t>(state.view.chosen->inlay);
  const Inlay& inlay = board.inlays[index];
  const std::string name = "Inlay " + std::to_string(index + 1) + ": ";
  const std::size_t pieces = piece_count(inlay);
  const bool several = inlay.frets.size() + inlay.double_frets.size() > 1;
  const std::string words =
      pieces == 1 ? name + "one piece" : name + "all " + std::to_string(pieces) + " pieces move together";
  const ImVec2 pad(ui.px(8), ui.px(4)), at = state.low + ImVec2(ui.px(14), ui.px(10));
  const float wide = ImGui::CalcTextSize(words.c_str()).x, gap = ui.px(8),
              button = several ? button_width(ui, "This piece alone") + gap : 0;
  const ImVec2 size(wide + button, ImGui::GetFrameHeight());
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(at - pad, at + size + pad, ui.theme.paper, ui.px(4));
  paint->AddRect(at - pad, at + size + pad, ui.theme.line, ui.px(4));
  paint->AddText(at + ImVec2(0, (size.y - ImGui::GetFontSize()) / 2), ui.theme.text, words.c_str());
  ui.note_area("pieces together", at - pad, at + size + pad, std::to_string(pieces));
  if (!several || state.hand.what != BoardHand::What::none) return;
  ImGui::SetCursorScreenPos(at + ImVec2(wide + gap, 0));
  if (ui.button("This piece alone", state.view.chosen->fret > 0)) make_own_piece(state);
}

void make_own_piece(const HandState& state) {
  if (!state.view.chosen) return;
  const int fret = state.view.chosen->fret;
  Board split = with_own_piece(state.document.board(), static_cast<std::size_t>(state.view.chosen->inlay), fret);
  const std::size_t count = split.inlays.size();
  if (count == state.document.board().inlays.size()) return;
  state.document.change(std::move(split), "A piece of its own");
  const int own = static_cast<int>(count) - 1;
  select_feature(state, {.kind = FeatureId::Kind::inlay, .index = own, .fret = fret}, std::nullopt);
  state.view.chosen = ChosenInlay{own, fret, 0, count};
  state.view.say("The piece at fret " + std::to_string(fret) + " is an inlay of its own now; Undo joins it again.");
}

}  // namespace sagitta::viewer
