#include "overlay/Selecting.hpp"

#include "decisions/DecisionsPanel.hpp"
#include "overlay/ChosenInlay.hpp"

namespace sagitta::viewer {

void select_feature(const HandState& state, const FeatureId& feature, std::optional<Point> near, Keyboard keyboard) {
  state.view.named = feature;
  state.view.chosen.reset();
  if (const auto inlay = inlay_of(feature))
    choose_inlay(state.view, state.document.board(), state.results, *inlay, near);
  const std::string key = feature_key(feature);
  if (key.empty()) return;
  if (keyboard == Keyboard::to_row)
    show_key(state.ui, state.view, state.rows, key);
  else
    reveal_key(state.ui, state.view, state.rows, key);
}

void select_nothing(View& view, FieldRows& rows) {
  view.named = {};
  view.chosen.reset();
  rows.take_in_hand("");
}

}  // namespace sagitta::viewer
