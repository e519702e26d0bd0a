#pragma once

/// Areas cut from each other, put together or compared. Outlines that neither touch nor cross any other keep their
/// curves; only those that do become polygons.

#include <optional>
#include <vector>

#include "artwork/OutlineClusters.hpp"
#include "artwork/ShapeOutline.hpp"

namespace sagitta {

/// An area: outlines and how they share it out.
struct OverlaySource {
  const Outlines* outlines = nullptr;
  FillRule rule = FillRule::nonzero;
};

enum class Keep {
  any,    ///< what lies in one source at least
  first,  ///< what lies in the first and in none of the others
  both    ///< what lies in all
};

struct Overlay {
  Outlines outlines;     ///< outer ones counter-clockwise, holes clockwise
  bool changed = false;  ///< areas overlapped by more than their chords' deviation, and outlines became polygons
};

/// How finely the drawing is taken, mm.
struct Resolution {
  double chord = 0;  ///< what chords depart from curves
  double touch = 0;  ///< how near is touching
};

/// Nothing when the effort runs out.
std::optional<Overlay> overlay(const std::vector<OverlaySource>& sources, Keep keep, const Resolution& resolution,
                               Effort& effort);

}  // namespace sagitta
