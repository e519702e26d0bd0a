#pragma once

/// Colours and layers of a STEP file, as the entities that carry them.

#include <string>
#include <vector>

namespace sagitta {

/// An item of a STEP file that gets a colour and a layer; numbers are those of the file's entities.
struct StepDressed {
  int item = 0;     ///< the solid or the set of curves
  int context = 0;  ///< its representation's context
  bool curves = false;
  std::string colour;  ///< "#rrggbb" in sRGB
  std::string layer;   ///< ASCII
};

/// Entities that give each item its colour, in the order of the items, and put them on their layers, in the order in
/// which the layers first come: lines of ISO 10303-21 text, numbered from `next`. The kernel writes these in the order
/// of memory addresses, which differ from run to run. Throws std::runtime_error for what is no colour.
std::string step_dress(const std::vector<StepDressed>& items, int next);

}  // namespace sagitta
