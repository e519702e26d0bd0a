#pragma once

/// The connected components of a shell.

#include "lift/Shell.hpp"

namespace sagitta {

/// The shell's connected bodies, each a shell of its own, in the order of their first faces: a piece that slots cut
/// through is several.
std::vector<Shell> connected_components(const Shell& shell);

}  // namespace sagitta
