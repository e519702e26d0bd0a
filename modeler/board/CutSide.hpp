#pragma once

/// The sides that a cut of the builder's own opens.

#include <cmath>

#include "board/Board.hpp"

namespace sagitta {

inline bool is_through(const Cut& cut) { return std::isinf(cut.depth); }
/// A cut from below is made with the outline; one from the top, or right through, with the pockets.
inline bool is_from_below(const Cut& cut) { return cut.from == CutFrom::below && !is_through(cut); }
inline Operation operation_of(const Cut& cut) { return is_from_below(cut) ? Operation::outline : Operation::pockets; }

}  // namespace sagitta
