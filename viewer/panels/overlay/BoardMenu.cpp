#include "overlay/BoardMenu.hpp"

#include <algorithm>

#include "overlay/ChosenInlay.hpp"
#include "overlay/PieceOfItsOwn.hpp"

namespace sagitta::viewer {

namespace {

using Kind = FeatureId::Kind;

std::string capital_first(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

void draw_inlay_items(const HandState& state, std::size_t index, Requests& asked) {
  Board draft = state.document.board();
  if (index >= draft.inlays.size()) return;
  const Inlay& inlay = draft.inlays[index];
  const bool several = inlay.frets.size() + inlay.double_frets.size() > 1;
  if (several && state.ui.menu_item("This piece alone", state.view.chosen && state.view.chosen->fret > 0))
    make_own_piece(state);
  if (inlay.shape == InlayShape::artwork && state.ui.menu_item("Choose another drawing"))
    asked.push_back(asked::ChooseDrawing{static_cast<int>(index)});
  if (state.ui.menu_item("Lift the pieces out")) asked.push_back(asked::Run{"lift pieces"});
  if (state.ui.menu_item("Remove the inlay")) {
    draft.inlays.erase(draft.inlays.begin() + static_cast<std::ptrdiff_t>(index));
    state.view.chosen.reset(), state.view.named = {};
    state.document.change(std::move(draft), "Remove inlay " + std::to_string(index + 1));
  }
}

void draw_slot_items(const HandState& state, int fret, Requests& asked) {
  if (state.ui.menu_item("Cut the board across here") && state.results.laid_out()) {
    const auto& frets = state.results.good->prepared->layout().frets;
    if (fret >= 0 && static_cast<std::size_t>(fret) < frets.size())
      state.view.cut = frets[static_cast<std::size_t>(fret)].middle.x, state.view.cut_across(true);
  }
  if (state.ui.menu_item("Places of the slots")) asked.push_back(asked::Run{"slot places"});
  if (state.ui.menu_item("Fret wire to cut")) asked.push_back(asked::Run{"wire list"});
}

}  // namespace

Requests draw_board_menu(const HandState& state) {
  Requests asked;
  if (!ImGui::BeginPopup(board_menu_name)) return asked;
  Ui& ui = state.ui;
  const FeatureId named = state.view.named;
  const std::string key = feature_key(named);
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(named.kind == Kind::none ? "The board" : capital_first(feature_name(named)).c_str());
  ImGui::PopStyleColor();
  ImGui::Separator();
  if (!key.empty() && ui.menu_item("Open its decision")) asked.push_back(asked::ShowKey{key});
  if (const auto inlay = inlay_of(named))
    draw_inlay_items(state, static_cast<std::size_t>(*inlay), asked);
  else if (named.kind == Kind::slot || named.kind == Kind::fret)
    draw_slot_items(state, named.fret, asked);
  if (named.kind != Kind::none) ImGui::Separator();
  if (ui.menu_item("Fit the board to the picture")) asked.push_back(asked::Run{"fit"});
  if (ui.menu_item("View from above")) asked.push_back(asked::Run{"view above"});
  if (ui.menu_item("View on the bench")) asked.push_back(asked::Run{"view bench"});
  if (ui.menu_item("Measure")) asked.push_back(asked::Run{"measure"});
  ImGui::EndPopup();
  return asked;
}

}  // namespace sagitta::viewer
