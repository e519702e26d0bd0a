#pragma once

/// A board laid out, with its playing surface.

#include <variant>

#include "layout/OwnPlaces.hpp"
#include "surface/Surface.hpp"

namespace sagitta {

/// A board laid out, with its playing surface. The surface may have faults.
struct Drawn {
  Board board;
  Layout layout;
  Surface surface;
};

/// The first step from a board to its stages. Faults: what keeps it from being laid out.
std::variant<Drawn, Faults> draw(Board board);
/// The same with slots and markers at places of their own.
std::variant<Drawn, Faults> draw(Board board, const OwnPlaces& own);

/// What is wrong with the playing surface, and with what is cut into it.
Faults surface_faults(const Drawn& drawn);

}  // namespace sagitta
