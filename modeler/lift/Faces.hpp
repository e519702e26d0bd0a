#pragma once

/// The faces of a shell: cells that share a surface, walls that stand side by side on one line or arc.

#include <vector>

#include "lift/Heights.hpp"
#include "lift/Shell.hpp"

namespace sagitta {

/// A wall over one plan edge, before walls side by side are joined.
struct WallPiece {
  int plan_edge = -1;
  int low = -1, high = -1;  ///< shell edges
  bool wood_left = true;
  std::vector<Coedge> uprights;
  std::vector<int> joined;  ///< neighbours that continue it without an upright between
};

/// Whether two walls with a common plan vertex continue each other: on one line or one circle, with the wood on the
/// same side.
bool stand_together(const Subdivision& map, const WallPiece& a, const WallPiece& b);

/// Whether two arcs of one circle are one drawn segment; a closed wall is parted where its drawn segments meet.
bool same_drawn_piece(const Subdivision& map, const WallPiece& a, const WallPiece& b);

void add_level_faces(Shell& shell, const std::vector<EdgeHeights>& over);
void add_walls(Shell& shell, const std::vector<WallPiece>& walls);

/// Edges that meet at a vertex where nothing else ends, on one line or arc and one surface, become one edge.
void join_edges(Shell& shell);

/// Plain walls of artwork on arcs that follow each other with one tangent become one: a drawn curve is many short arcs.
void join_smooth_walls(Shell& shell);

/// Drops edges that no face uses any more, and vertices without an edge.
void drop_edges(Shell& shell, const std::vector<bool>& dropped);

}  // namespace sagitta
