#pragma once

/// One board with everything that follows from it: the value that findings, exports and the window work from.

#include <memory>
#include <variant>
#include <vector>

#include "lift/Shell.hpp"
#include "plan/Feature.hpp"
#include "plan/PiecePlan.hpp"
#include "plan/Selection.hpp"
#include "prepared/InlayFitter.hpp"

namespace sagitta {

/// A board that is laid out, has a playing surface without fault and its inlays fitted. It never changes, and a copy
/// shares everything with what it is a copy of. A stage is made when it is first asked for, once, whichever thread
/// asks.
///
/// A part of a job is the same board with a selection: layout and inlays stay whole, `slots()`, `markers()`,
/// `side_dots()`, `pieces()` and `pockets()` give what is selected, and the wood of every stage has only these cuts.
class PreparedBoard {
 public:
  /// `drawn` has no fault, nor has `fitted`, which is made from it. `outside`: whether the board's files could lie
  /// outside its folder.
  PreparedBoard(Drawn drawn, std::shared_ptr<const FittedInlays> fitted, Outside outside = Outside::refused);

  // What does not depend on the selection.
  const Board& board() const;  ///< with what was measured in place of what was planned
  /// As the board file has it: what is written, compared and kept.
  const Board& planned() const;
  const Layout& layout() const;
  const Surface& surface() const;
  const Inlays& inlays() const;
  /// The drawings that the inlays are made from.
  const FittedInlays& fitted() const;
  Outside outside() const;

  // What is selected.
  const Selection& selection() const { return selection_; }
  const std::vector<Slot>& slots() const;
  const std::vector<Marker>& markers() const;
  const std::vector<SideDot>& side_dots() const;
  const std::vector<InlayPiece>& pieces() const { return *pieces_; }
  /// One a marker, as in Inlays.
  const std::vector<Pocket>& pockets() const;
  /// What shapes the wood when so much has been done.
  std::vector<Feature> features(const WorkDone& done) const;
  /// As make_piece_plan(); the piece need not lie where the board has it.
  std::variant<Plan, Faults> piece_plan(const InlayPiece& piece, PieceState state) const;

  // Stages, made on demand.
  const std::variant<Plan, Faults>& planned(Stage stage) const;
  /// The first faults of a stage, in the order of stages_of(); empty: every stage has a plan.
  Faults stage_faults() const;
  /// The stage must have a plan.
  const Plan& plan(Stage stage) const;
  const Shell& shell(Stage stage) const;
  /// The same, to be kept longer than the board.
  std::shared_ptr<const Shell> kept_shell(Stage stage) const;

  /// The same board with a selection in place of the one it has. What no selection changes is shared.
  PreparedBoard only(const Selection& selection) const;
  /// The same with pieces in place of the selected ones: cut anew for the same pockets.
  PreparedBoard with_pieces(std::vector<InlayPiece> pieces) const;

 private:
  struct Ground;
  struct Cuts;
  struct Stages;

  std::shared_ptr<const Ground> ground_;
  Selection selection_;
  std::shared_ptr<const Cuts> cuts_;
  std::shared_ptr<const std::vector<InlayPiece>> pieces_;
  std::shared_ptr<const Stages> stages_;
};

/// A board prepared, by way of draw(), surface_faults() and a fitter of its own. Faults: what keeps it from that.
/// Whether each stage can be made shows only when it is asked for.
std::variant<PreparedBoard, Faults> prepare(Board board, Outside outside = Outside::refused);
std::variant<PreparedBoard, Faults> prepare(Drawn drawn, Outside outside = Outside::refused);

}  // namespace sagitta
