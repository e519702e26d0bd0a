#pragma once

/// The solids of the inlay pieces, alone or in the board, as an export writes them.

#include <string_view>
#include <vector>

#include "lift/Shell.hpp"
#include "plan/PiecePlan.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// The files that hold pieces: the pieces flat, the blank with its pieces in, the finished board with them.
enum class Assembly { pieces, inlaid, job };

/// "pieces", "inlaid", "job": as in file names and on the command line.
std::string_view name(Assembly assembly);
std::optional<Assembly> assembly_named(std::string_view name);
/// All three where the board has inlays.
std::vector<Assembly> assemblies_of(const PreparedBoard& ready);

/// The stage whose wood an assembly holds; nothing where it holds only pieces.
std::optional<Stage> wood_of(Assembly assembly, const Board& board);

struct PieceBody {
  std::string name, material, colour;
  Shell shell;  ///< of several bodies where slots cut the piece through
};

/// The pieces as an assembly has them, by number. Flat pieces are laid out in rows, their lower faces at z = 0. A piece
/// of which the work leaves nothing is not among them. Throws BuildError.
std::vector<PieceBody> piece_bodies(const PreparedBoard& ready, Assembly assembly);

}  // namespace sagitta
