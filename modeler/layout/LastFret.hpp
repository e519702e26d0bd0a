#pragma once

/// The last frets of the main board and of the board with its tongue.

#include "layout/Layout.hpp"

namespace sagitta {

/// The main board's last fret: the last one that is not on the tongue.
const FretLine& last_fret(const Layout& layout);

/// Frets of the board, those of its tongue included.
int fret_count(const Board& board);

}  // namespace sagitta
