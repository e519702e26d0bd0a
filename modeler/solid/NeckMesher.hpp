#pragma once

/// The wood of a neck's STEP file as triangles.

#include <string>

#include "neck/BoardSeat.hpp"
#include "neck/NeckPlace.hpp"
#include "neck/NeckWood.hpp"

namespace sagitta {

/// Triangles of a picture depart from the solid by no more than this. mm.
inline constexpr double neck_deviation = 0.1;
/// A neck of more triangles than this is not shown.
inline constexpr std::size_t most_neck_triangles = 200000;

/// Reads a neck's STEP file and meshes its solids where `place` lays the board on them. As for read_neck, foreign files
/// can make the kernel loop, exhaust memory or crash: run this in a process with limits on both. Throws nothing.
NeckWood mesh_neck(const std::string& path, const BoardSeat& seat, const NeckPlace& place);

}  // namespace sagitta
