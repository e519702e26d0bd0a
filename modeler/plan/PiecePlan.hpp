#pragma once

/// A piece of inlay as a stage of the work has it.

#include "plan/Plan.hpp"
#include "plan/Selection.hpp"

namespace sagitta {

enum class PieceState {
  sheet,   ///< as cut from its sheet: flat, its lower face at z = 0
  inlaid,  ///< in its pocket in the blank, before anything else is cut
  job      ///< in the board at the last stage: cut by radius, slots and outline, sanded with the board
};

/// The plan of a piece: where its material is, and what bounds it. In the blank it reaches from its pocket's floor up
/// by its thickness, and no higher than the blank's top. There may be nothing left of it. `selection`: the cuts that
/// are made in it at the last stage. Faults: as for make_plan.
std::variant<Plan, Faults> make_piece_plan(const Board& board, const Layout& layout, const Surface& surface,
                                           const InlayPiece& piece, PieceState state, const Selection& selection = {});

/// Whether a plan has any material.
bool has_wood(const Plan& plan);

}  // namespace sagitta
