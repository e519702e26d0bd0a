#pragma once

/// The connected components of a shell.

#include "lift/Shell.hpp"

namespace sagitta {

/// The connected components of a shell, each as a shell, in the order of their first faces. An inlay piece that slots
/// cut through has several.
std::vector<Shell> connected_components(const Shell& shell);

}  // namespace sagitta
