#include "random/PieceTrial.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "lift/ConnectedComponents.hpp"
#include "made/Made.hpp"
#include "oracle/PieceVolume.hpp"
#include "plan/PiecePlan.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta::random_boards {
namespace {

/// Relative, as for the wood.
constexpr double agreement = 1e-6;
/// And absolute, mm^3: quadrature subtracts two volumes of wood.
constexpr double crumb = 1e-5;

const char* name(PieceState state) {
  return state == PieceState::sheet ? "as cut" : state == PieceState::inlaid ? "in the blank" : "in the board";
}

struct PieceWise {
  const Board& board;
  const Layout& layout;
  const Surface& surface;
  const InlayPiece& piece;

  double floor() const { return board.board.thickness - piece.depth; }
  /// No higher than the blank, which may have been milled to its thickness first.
  double top() const {
    const bool milled = !board.order.empty() && board.order.front() == Operation::thickness;
    const double milled_to = board.thickness_to.value_or(board.board.thickness + board.sanding + 0.3);
    return std::min(floor() + piece.thickness, milled ? milled_to : layout.blank_thickness);
  }

  /// By closed form, in the board by quadrature of the wood that would be there with no pocket.
  double exact_volume(PieceState state) const {
    const double plain = area(outline(*piece.shape));
    if (state == PieceState::sheet) return plain * piece.thickness;
    if (state == PieceState::inlaid) return plain * (top() - floor());
    Board solid_wood = board;
    solid_wood.inlays.clear();
    solid_wood.cuts.clear();  // they never cut pieces
    Layout unmarked = layout;
    unmarked.markers.clear();
    const oracle::Work work = oracle::work_at(solid_wood, unmarked, surface, stages_of(board).back());
    return oracle::volume_within(work, outline(*piece.shape), floor(), top()).value;
  }

  std::string compared(PieceState state, const Plan& plan, double volume) const {
    if (!piece.shape) return {};
    if (state == PieceState::job && (board.scallop || board.edges)) return {};  // quadrature of pieces knows no forms
    const double exact = exact_volume(state);
    const double skin = 2 * tolerance::snap * perimeter(outline(*piece.shape)) * piece.thickness;
    const double moved = 1 + static_cast<double>(plan.notes.size());  // onto a line within the snap nothing is noted
    const double lowered = plan.lowered * area(outline(*piece.shape));
    const double allowed = agreement * exact + crumb + moved * skin + lowered;
    if (std::abs(volume - exact) <= allowed) return {};
    std::ostringstream text;
    text.precision(12);
    text << "volume " << volume << ", quadrature gives " << exact;
    return text.str();
  }

  std::string trouble(PieceState state, Ways ways) const {
    auto plan = make_piece_plan(board, layout, surface, piece, state);
    if (const auto* faults = std::get_if<Faults>(&plan)) return "refused: " + made::told(*faults);
    const Shell shell = lift(std::get<Plan>(std::move(plan)));
    double volume = 0;
    if (has_wood(shell.plan))
      for (const Shell& part : connected_components(shell)) {
        const Body body = judged(part, ways);
        if (!body.wrong.empty()) return body.wrong;
        volume += body.volume;
      }
    return compared(state, shell.plan, volume);
  }
};

}  // namespace

std::string piece_trouble(const Board& board, const Layout& layout, const Surface& surface, const InlayPiece& piece,
                          Ways ways) {
  const PieceWise wise{board, layout, surface, piece};
  for (const PieceState state : {PieceState::sheet, PieceState::inlaid, PieceState::job}) {
    const std::string wrong =
        wise.trouble(state, {ways.mesh, ways.step && state == PieceState::job, ways.vertices, ways.figures});
    if (!wrong.empty()) return std::string(name(state)) + ": " + wrong;
  }
  return {};
}

}  // namespace sagitta::random_boards
