#pragma once

/// The dimensions that belong to a decision, drawn on the board.

#include <string>
#include <vector>

#include "jobs/Model.hpp"
#include "scene/Vec.hpp"
#include "widgets/LengthText.hpp"

namespace sagitta::viewer {

/// A dimension drawn on the board: a line between two points with ticks, or (a == b) a note at a point. Without a text
/// it is a bare line.
struct Dimension {
  Vec a, b;
  std::string text;
  friend bool operator==(const Dimension&, const Dimension&) = default;
};

/// What belongs on the board while this key is in hand; nothing for a key without a place on it, or while the board has
/// nothing of it.
std::vector<Dimension> dimensions_for(const std::string& key, const PreparedBoard& prepared, const Manner& manner);

}  // namespace sagitta::viewer
