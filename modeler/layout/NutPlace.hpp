#pragma once

/// The seat of the nut.

#include <optional>

#include "layout/Layout.hpp"

namespace sagitta {

/// The nut's seat, parallel to the nut line: its face at +compensation, or `distance` behind slot zero; a slot reaches
/// `nut.width` behind the face along the centre line. Adds faults when it does not lie on the board.
std::optional<NutGround> place_nut(const Board& board, const Layout& layout, Faults& faults);

}  // namespace sagitta
