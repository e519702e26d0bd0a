#pragma once

/// Meshes and layouts dressed for the picture: normals, colours, crisp edges.

#include <string>

#include "jobs/Model.hpp"

namespace sagitta::viewer {

/// How a material looks: its colour and kind, as the board or the built-in materials have it.
struct Appearance {
  Colour colour;
  Finish finish = Finish::wood;
};
/// Of every neck: its wood is not the board file's to say.
inline constexpr Colour neck_colour{205, 170, 122, 255};
Appearance appearance_of(const Board& board, const std::string& material);

/// The wood of a stage. Normals come from the exact surface where a face lies on it; edges where two faces meet.
RenderMesh dress_body(const PreparedBoard& board, const Shell& shell, const Mesh& mesh);
/// The pieces lying in their pockets: flush with the surface once the radius is cut, as thick as they are before; each
/// vertex's `change` is what will be left of the piece there. Empty before the pockets are cut.
RenderMesh dress_pieces(const PreparedBoard& board, Stage stage);
/// Binding with the lines beside it and side dots, added where the outline is cut.
void dress_trim(const PreparedBoard& board, Stage stage, RenderMesh& skin);
/// Upward normal of the playing surface moved up or down: (-dz/dx, -dz/dy, 1).
Vec surface_normal(const Surface& surface, double x, double y);
/// The neck's own wood.
RenderMesh dress_neck_wood(const NeckWood& wood);
/// `neck` and `wood` are what its STEP file says; either may be null. A board that names no file gets a neck by its
/// widths; one that does gets no other than the file's, and that where its place is sure.
Fittings dress_fittings(const PreparedBoard& board, const NeckReading* neck, const NeckWood* wood);

}  // namespace sagitta::viewer
