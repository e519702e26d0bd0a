#pragma once

/// The shaders.

#include <string>

namespace sagitta::viewer {

/// Sources of the shaders, GLSL 3.30. `things`: everything on the bench. `lines`: crisp edges. `bench`: the bench top
/// with the board's soft shadow.
std::string things_vertex();
std::string things_fragment();
std::string lines_vertex();
std::string lines_fragment();
std::string bench_vertex();
std::string bench_fragment(bool quick);

}  // namespace sagitta::viewer
