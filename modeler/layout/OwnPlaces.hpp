#pragma once

/// Slots and markers at places of their own.

#include <variant>
#include <vector>

#include "layout/Layout.hpp"

namespace sagitta {

/// Slots and markers that lie where they are told to, not where the scale's frets put them: those of a trial strip.
struct OwnPlaces {
  std::vector<Slot> slots;  ///< in order of x
  std::vector<Marker> markers;
};

/// The board's layout, judged as any other, with these slots and markers and no others.
std::variant<Layout, Faults> lay_out(const Board& board, const OwnPlaces& own);

}  // namespace sagitta
