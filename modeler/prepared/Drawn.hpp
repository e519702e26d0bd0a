#pragma once

/// A board laid out, with its playing surface.

#include <variant>

#include "layout/OwnPlaces.hpp"
#include "surface/Surface.hpp"

namespace sagitta {

/// A board laid out, with its playing surface. The surface may have faults.
struct Drawn {
  Board board;  ///< with what was measured in place of what was planned
  Layout layout;
  Surface surface;
  Board planned;  ///< as the board file has it
};

/// The first step from a board to its stages: what was measured is taken, then the board is laid out. Faults: what
/// keeps it from that.
std::variant<Drawn, Faults> draw(Board planned);
/// The same with slots and markers at places of their own, and nothing measured.
std::variant<Drawn, Faults> draw(Board board, const OwnPlaces& own);

/// What is wrong with the playing surface, and with what is cut into it.
Faults surface_faults(const Drawn& drawn);

}  // namespace sagitta
