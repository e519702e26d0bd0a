#pragma once

/// Places of a set-up in its own zero, to drive to with a pointed cutter: the zero is true where all of them are.

#include <string>
#include <vector>

#include "drawing/ResolvedSetup.hpp"

namespace sagitta {

struct SetupPlace {
  std::string what;
  Point at;  ///< in the set-up's frame
};

/// The board's markers as they follow each other from the nut to the body end.
std::vector<Marker> markers_along(const PreparedBoard& ready);

/// The nut line's middle, the blank's lower left corner and its middle; then the middle of every pocket, of every cut
/// of the builder's own from above, and of every fret slot on the centre line, as far as the set-up makes them.
std::vector<SetupPlace> setup_places(const PreparedBoard& ready, const ResolvedSetup& setup);

}  // namespace sagitta
