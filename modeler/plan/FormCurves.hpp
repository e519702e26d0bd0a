#pragma once

/// Curves along which a scallop or a bevel meets what else bounds the wood of a cell.

#include <memory>
#include <vector>

#include "plan/FaceEdges.hpp"

namespace sagitta {

/// Whether a form is made of the other surface, the playing surface that it lies under: their heights are equal on the
/// form's own border only.
bool joins(const Surface& surface, const BoundingSurface& form, const BoundingSurface& other);

/// Draws the curve where the two surfaces are equally high through one face, `upper` a scallop or a bevel. `nodes`: the
/// vertices of its border that lie on the curve. Each edge is monotone in x and in y, so that its points are found by
/// bisection (IntersectionCurve::at). For this the curve is parted into branches: a scallop's as ScallopBranches says;
/// a bevel falls across the board more steeply than any floor and has one place for each x.
void divide_at_form(FaceEdges& faces, int face, const std::shared_ptr<const SurfacePair>& meeting,
                    std::vector<int> nodes);

/// Vertices within a face where a scallop and a floor, `pair`, meet a third surface on the curve that they share.
/// Returns whether they meet a roll within tolerance of the side, where it is almost upright: there the place is not
/// sure.
bool add_triple_points(FaceEdges& faces, int face, const SurfacePair& pair, const BoundingSurface& third,
                       std::vector<int>& nodes);

}  // namespace sagitta
