#pragma once

/// Meshes written as a 3MF file (3MF Core Specification 1.2).

#include <string>
#include <vector>

#include "mesh/Mesh.hpp"

namespace sagitta {

/// A body of a 3MF file.
struct ThreeMfBody {
  std::string name;      ///< UTF-8
  std::string material;  ///< name of the material
  std::string colour;    ///< "#rrggbb"
  Mesh mesh;
};

/// Coordinates are written to whole steps of this, mm.
inline constexpr double three_mf_step = 1e-6;

/// The bodies as the bytes of a 3MF file (core specification 1.4.0): millimetres, an object and a build item for each
/// body, the material's name and colour as its base material. Objects keep the board's frame; the build moves them all
/// alike into the positive octant, as the specification asks. Nothing in it depends on the hour or the machine: the
/// same bodies give the same bytes. Throws std::runtime_error when the library refuses.
std::string three_mf_bytes(const std::string& title, const std::vector<ThreeMfBody>& bodies);

}  // namespace sagitta
