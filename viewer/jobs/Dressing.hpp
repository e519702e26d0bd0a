#pragma once

/// Meshes and layouts dressed for the picture: normals, colours, crisp edges.

#include <string>

#include "jobs/Model.hpp"

namespace sagitta::viewer {

/// How a material looks: its colour and kind, as the board or the built-in materials have it.
struct Cloth {
  Colour colour;
  Finish finish = Finish::wood;
};
Cloth cloth_of(const Board& board, const std::string& material);

/// The wood of a stage. Normals come from the exact surface where a face lies on it; edges where two faces meet.
Skin dress_body(const Board& board, const Surface& surface, const Shell& shell, const Mesh& mesh);
/// The pieces lying in their pockets: flush with the surface once the radius is cut, as thick as they are before.
Skin dress_pieces(const Board& board, const Surface& surface, Stage stage, const Shell& shell, const Mesh& mesh);
/// `neck` is what its STEP file says; null: its widths are the board file's.
Fittings dress_fittings(const Board& board, const Layout& layout, const Surface& surface, const NeckReading* neck);

/// Which inlay a face is the pocket floor of: an index into Board::inlays; -1 for every other face.
int inlay_of(const Shell& shell, int face);

}  // namespace sagitta::viewer
