#include "app/WindowPlaces.hpp"

#include <algorithm>

#include "dialogs/TopBar.hpp"
#include "overlay/BoardPanel.hpp"
#include "overlay/PlanStrip.hpp"
#include "overlay/StageStrip.hpp"

namespace sagitta::viewer {

WindowPlaces window_places(const Ui& ui, const View& view, float w, float h, bool whole_picture) {
  WindowPlaces p;
  p.narrow = w < ui.px(1040);
  p.bar = {0, 0}, p.bar_size = {w, top_bar_height(ui)};
  p.status_size = {w, status_height(ui)}, p.status = {0, h - p.status_size.y};
  const float top = p.bar_size.y, middle = std::max(h - top - p.status_size.y, 1.0f);
  const float left = p.narrow ? std::min(ui.px(310), w * 0.46f) : ui.px(330), right = p.narrow ? 0 : ui.px(286);
  const float tabs = p.narrow ? ui.px(42) : 0;
  p.tabs = {0, top}, p.tabs_size = {left, tabs};
  p.left = {0, top + tabs}, p.left_size = {left, middle - tabs};
  p.right = {w - right, top}, p.right_size = {right, middle};
  const float strip = std::min(stage_strip_height(ui), middle * 0.4f);
  p.board = {left, top}, p.board_size = {std::max(w - left - right, 1.0f), middle - strip};
  p.strip = {left, top + middle - strip}, p.strip_size = {p.board_size.x, strip};
  const float below_bar = p.board_size.y - board_bar_height(ui);
  const float share = view.cutting ? 0.5f : 0.6f;  // of the height: a drawing with rows of figures needs more
  const float slice =
      view.drawn_below() ? std::clamp(below_bar * share, std::min(ui.px(236), below_bar * 0.6f), below_bar) : 0;
  p.plan_height = view.plan && !whole_picture ? plan_strip_height(ui, below_bar - slice) : 0;
  p.picture_height = std::max(below_bar - slice - p.plan_height, 1.0f);
  if (whole_picture) p.board_size.x = w, p.picture_height = h;
  return p;
}

}  // namespace sagitta::viewer
