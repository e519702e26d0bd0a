#include "lift/Faces.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Whether this strip of a straight wall stands at the hole's mouth, above and below it.
bool stands_at(const Shell& shell, const WallStrip& strip, const SideHole& hole) {
  const Piece& piece = shell.plan.map.edges[strip.plan_edge].piece;
  if (piece.is_arc()) return false;
  const Point d = piece.b - piece.a;
  const double along = dot(hole.mouth - piece.a, d) / dot(d, d);
  if (along < 0 || along > 1 || std::abs(cross(unit(d), hole.mouth - piece.a)) > tolerance::vertex) return false;
  return height(shell.plan.surface, strip.low, hole.mouth) < hole.z &&
         height(shell.plan.surface, strip.high, hole.mouth) > hole.z;
}

int wall_of(const Shell& shell, const SideHole& hole) {
  for (int f = 0; f < static_cast<int>(shell.faces.size()); ++f)
    for (const WallStrip& strip : shell.faces[f].strips)
      if (stands_at(shell, strip, hole)) return f;
  return -1;
}

}  // namespace

void add_holes(Shell& shell) {
  for (int i = 0; i < static_cast<int>(shell.plan.side_holes.size()); ++i) {
    SideHole& hole = shell.plan.side_holes[i];
    const int wall = hole.clear ? wall_of(shell, hole) : -1;
    hole.clear = wall >= 0;
    if (!hole.clear) continue;
    shell.faces[wall].holes.push_back(i);
    for (const ShellFace::Kind kind : {ShellFace::Kind::hole_wall, ShellFace::Kind::hole_floor}) {
      ShellFace face;
      face.kind = kind;
      face.hole = i;
      face.feature = hole.feature;
      shell.faces.push_back(face);
    }
  }
}

}  // namespace sagitta
