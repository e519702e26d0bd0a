#pragma once

/// A stage as the window shows it.

#include <cstddef>
#include <memory>

#include "mesh/Mesh.hpp"
#include "scene/RenderMesh.hpp"

namespace sagitta::viewer {

/// One stage of the work, meshed and dressed for the picture.
struct StageModel {
  Stage stage = Stage::board;
  std::shared_ptr<const Shell> shell;
  Mesh mesh;
  RenderMesh body;       ///< the wood
  RenderMesh pieces;     ///< the inlays lying in their pockets
  double deviation = 0;  ///< asked of the mesh
};

}  // namespace sagitta::viewer
