#pragma once

/// Volume, area and bounding box of a body for the manifest.

#include "folder/Manifest.hpp"
#include "mesh/Mesh.hpp"
#include "solid/Solid.hpp"

namespace sagitta {

/// Volume, area and box as a manifest gives them; name and material are left empty. A mesh's are those of its own
/// triangles.
ManifestBody figures_of(const Mesh& mesh);
ManifestBody figures_of(const MassProperties& solid);

}  // namespace sagitta
