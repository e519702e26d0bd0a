#pragma once

/// Where on the board the pointer is when something is dropped.

#include <optional>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// The place of the board under the pointer, mm: in its picture, or in the plan above it. Nothing beside the board.
std::optional<Point> place_at_pointer(const Desk& desk);

/// Puts an inlay into the space that the place lies in, moved off its middle as the place is; near the centre line it
/// lies on it.
void put_at(Inlay& inlay, Point place, const Board& board, const Layout& layout);

}  // namespace sagitta::viewer
