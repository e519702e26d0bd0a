#pragma once

/// What the entities of a DXF draw.

#include <optional>
#include <string>
#include <variant>

#include "artwork/Curve.hpp"
#include "artwork/DxfEntities.hpp"

namespace sagitta {

/// Whether the entity is one that draws an outline or a part of one: LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE,
/// SPLINE.
bool is_dxf_curve(const DxfEntity& entity);

/// The curves of such an entity in its drawing's units, or why it cannot be taken.
std::variant<Subpath, std::string> dxf_curves(const DxfEntity& entity);

/// Entities with their own plane: as it is, or mirrored in x where the plane is seen from behind. Nothing when the
/// plane is a tilted one.
std::optional<Affine> dxf_plane(const DxfEntity& entity);

/// The colour of a standard index: 1 to 255. 7 is the one of paper and ink: black.
std::string index_colour(int index);

}  // namespace sagitta
