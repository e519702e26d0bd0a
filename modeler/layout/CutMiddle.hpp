#pragma once

/// Where a cut of the builder's own lies.

#include "board/Board.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// Its middle in the board's frame. The file gives it for a right-handed board.
inline Point middle_of(const Cut& cut, Hand hand) { return {cut.at[0], hand == Hand::left ? -cut.at[1] : cut.at[1]}; }

}  // namespace sagitta
