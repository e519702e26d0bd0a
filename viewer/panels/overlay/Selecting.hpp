#pragma once

/// What a click on the board, or on its plan, selects.

#include <optional>

#include "overlay/PictureState.hpp"

namespace sagitta::viewer {

enum class Keyboard { to_row, stays };  ///< whether the row shown has the keyboard as well

/// Makes it the feature that is looked at: its dimensions are drawn and its row among the decisions is shown; nothing
/// is typed. An inlay is taken up too, at the piece nearest to `near`.
void select_feature(const HandState& state, const FeatureId& feature, std::optional<Point> near,
                    Keyboard keyboard = Keyboard::to_row);

/// Nothing is selected any more.
void select_nothing(View& view, FieldRows& rows);

}  // namespace sagitta::viewer
