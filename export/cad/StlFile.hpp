#pragma once

/// A mesh written as a binary STL file.

#include <string>

#include "mesh/Mesh.hpp"

namespace sagitta {

/// The mesh as the bytes of a binary STL: an 80-byte header that does not begin with "solid", the number of triangles,
/// and 50 bytes a triangle, little endian; 84 + 50 n bytes in all. Coordinates in mm (the format has no unit).
/// `title` goes into the header; what does not fit or is not ASCII is left out.
std::string stl_bytes(const Mesh& mesh, const std::string& title);

}  // namespace sagitta
