#include "scene/RenderMesh.hpp"

#include <algorithm>

namespace sagitta::viewer {

void RenderMesh::bound() {
  for (const RenderVertex& v : vertices) {
    low = {std::min(low.x, v.position.x), std::min(low.y, v.position.y), std::min(low.z, v.position.z)};
    high = {std::max(high.x, v.position.x), std::max(high.y, v.position.y), std::max(high.z, v.position.z)};
  }
}

}  // namespace sagitta::viewer
