#pragma once

/// A watertight triangle mesh of a stage, lifted from the plan. Points are already rounded to 32-bit floats (mm,
/// board's frame), equal points share one index, every directed edge is used once, normals point out of the wood.

#include <array>
#include <cstdint>
#include <vector>

#include "lift/Shell.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

struct Mesh {
  std::vector<std::array<float, 3>> points;
  std::vector<std::array<std::uint32_t, 3>> triangles;  ///< counter-clockwise seen from outside
  std::vector<std::int32_t> face;                       ///< for each triangle: index into Shell::faces
  double deviation = 0;                                 ///< largest distance between mesh and exact surface, mm
};

/// Default for the largest distance between mesh and exact surface, mm.
inline constexpr double default_deviation = 0.005;

/// Two points joined by a side differ once their coordinates are rounded to whole multiples of this, wherever one of
/// them can go: 3MF files have six decimals. mm.
inline constexpr double told_apart = 1e-6;

/// Triangles within `deviation` (mm, > 0) of the exact surfaces. Empty when cancelled.
Mesh make_mesh(const Shell& shell, double deviation = default_deviation, const Cancel& cancel = {});

/// Adds another body's points and triangles; `face` and `deviation` stay as they are.
void append(Mesh& all, const Mesh& other);

/// Volume enclosed, mm^3, by the divergence theorem.
double volume(const Mesh& mesh);

}  // namespace sagitta
