#include "jobsheet/Walk.hpp"

#include <algorithm>

#include "board/CutSide.hpp"
#include "board/SlotCut.hpp"
#include "jobsheet/BenchText.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "jobsheet/JobRecord.hpp"
#include "jobsheet/MachineText.hpp"
#include "jobsheet/StepLevels.hpp"
#include "plan/Stage.hpp"

namespace sagitta {
namespace {

/// Puts the steps one behind the other: the operations in the order of work, a set-up before the first of its own, and
/// the work at the bench where it is done.
class Walk {
 public:
  Walk(const PreparedBoard& ready, const std::vector<ResolvedSetup>& setups)
      : ready_(ready), board_(ready.board()), setups_(setups), machine_(ready, setups), bench_(ready) {}

  std::vector<WalkStep> steps() {
    if (ready_.selection().whole() && board_.measured.done.empty()) add(bench_.blank());
    for (const Operation operation : board_.order) this->operation(operation);
    if (!ready_.selection().whole()) return std::move(steps_);
    if (!ready_.slots().empty() && slot_cut(board_) == SlotCut::lines) add(bench_.lines());
    if (board_.sanding > 0) add(bench_.sanding());
    if (works_edges(board_) && board_.edges->stage == EdgeStage::hand) add(bench_.edges());
    if (!ready_.slots().empty() && slot_cut(board_) == SlotCut::all) {
      add(bench_.wire());
      add(bench_.pressing());
      add(bench_.end_bevel());
    }
    if (board_.neck) add(bench_.neck());
    return std::move(steps_);
  }

 private:
  /// Work from below and at the bench has no zero of a set-up: its heights are from the glue face.
  void add(WalkStep step) {
    const bool clamped = step.machine && clamped_ >= 0;
    step.levels = step_levels(ready_, clamped ? &setups_[static_cast<std::size_t>(clamped_)] : nullptr, step.kind);
    steps_.push_back(std::move(step));
  }

  /// The set-up that does the operation; -1: none.
  int setup_of(Operation operation) const {
    for (std::size_t i = 0; i < setups_.size(); ++i)
      if (std::ranges::find(setups_[i].operations, operation) != setups_[i].operations.end())
        return static_cast<int>(i);
    return -1;
  }

  bool cuts_from_top() const {
    return std::ranges::any_of(board_.cuts, [](const Cut& cut) { return operation_of(cut) == Operation::pockets; });
  }

  void machine(WalkStep step, Operation operation, int setup) {
    step.machine = true;
    step.setup = setup;
    if (setup >= 0) step.job = machine_.step_in_setup(setup, operation);
    add(std::move(step));
  }

  void operation(Operation operation) {
    if (is_done(board_, operation)) return;
    const bool pieces = !ready_.pieces().empty();
    const int setup = setup_of(operation);
    if (setup < 0 && !ready_.selection().whole()) return;
    if (operation == Operation::inlay && !pieces) return;
    if (operation == Operation::pockets && !pieces && !cuts_from_top()) return;
    if (setup >= 0 && setup != clamped_ && operation != Operation::inlay) {
      add(machine_.set_up(setup, clamped_ >= 0));
      clamped_ = setup;
    }
    switch (operation) {
      case Operation::thickness:
        return machine(machine_.thickness(), operation, setup);
      case Operation::pockets:
        machine(machine_.pockets(), operation, setup);
        if (machine_.has_detail_cutter()) add(machine_.pockets_detail());
        return;
      case Operation::inlay:
        return inlay(setup);
      case Operation::radius:
        return machine(machine_.radius(), operation, setup);
      case Operation::slots:
        machine(machine_.slots(), operation, setup);
        if (ready_.layout().nut) add(machine_.nut());
        return;
      case Operation::outline:
        return outline(setup);
    }
  }

  void inlay(int setup) {
    machine(machine_.pieces(), Operation::inlay, setup);
    add(bench_.dry_fit());
    add(bench_.gluing());
    if (highest_proud(ready_) > 0) add(bench_.levelling());
  }

  void outline(int setup) {
    if (!ready_.layout().pins.empty() || std::ranges::any_of(board_.cuts, is_from_below)) add(machine_.from_below());
    machine(machine_.outline(), Operation::outline, setup);
    if (board_.binding) add(bench_.binding());
    if (!ready_.side_dots().empty()) add(bench_.side_dots());
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const std::vector<ResolvedSetup>& setups_;
  MachineText machine_;
  BenchText bench_;
  std::vector<WalkStep> steps_;
  int clamped_ = -1;  ///< the set-up that the blank lies in
};

}  // namespace

std::string walk_title(WalkKind kind) {
  switch (kind) {
    case WalkKind::blank:
      return "Prepare the blank";
    case WalkKind::thickness:
      return "Mill to thickness";
    case WalkKind::set_up:
      return "Set up";
    case WalkKind::pockets:
      return "Pockets";
    case WalkKind::pockets_detail:
      return "Pockets, corners";
    case WalkKind::pieces:
      return "Cut the pieces";
    case WalkKind::dry_fit:
      return "Dry fit";
    case WalkKind::gluing:
      return "Glue the pieces in";
    case WalkKind::levelling:
      return "Level the proud pieces";
    case WalkKind::radius:
      return "Radius";
    case WalkKind::slots:
      return "Slots";
    case WalkKind::nut:
      return "Nut seat";
    case WalkKind::from_below:
      return "Work from below";
    case WalkKind::outline:
      return "Outline";
    case WalkKind::binding:
      return "Bind the edges";
    case WalkKind::side_dots:
      return "Side dots";
    case WalkKind::lines:
      return "Let the lines in";
    case WalkKind::sanding:
      return "Sand";
    case WalkKind::edges:
      return "Work the edges";
    case WalkKind::wire:
      return "Cut and bend the wire";
    case WalkKind::pressing:
      return "Press the frets";
    case WalkKind::end_bevel:
      return "Bevel the fret ends";
    case WalkKind::neck:
      break;
  }
  return "Glue to the neck";
}

std::vector<WalkStep> walk_of(const PreparedBoard& ready, const std::vector<ResolvedSetup>& setups) {
  return Walk(ready, setups).steps();
}

}  // namespace sagitta
