#pragma once

/// The words of the walk's steps at the machine: what is needed, done, checked, and what goes wrong.

#include <string>
#include <vector>

#include "drawing/ResolvedSetup.hpp"
#include "jobsheet/Walk.hpp"

namespace sagitta {

class MachineText {
 public:
  /// Both must live as long as this.
  MachineText(const PreparedBoard& ready, const std::vector<ResolvedSetup>& setups)
      : ready_(ready), board_(ready.board()), setups_(setups) {}

  /// Which of the set-up's steps, in the order of work, is the operation's.
  int step_in_setup(int setup, Operation operation) const;
  /// Whether a cutter that does not clear pockets does their corners.
  bool has_detail_cutter() const;

  /// `again`: the blank was clamped before.
  WalkStep set_up(int setup, bool again) const;
  WalkStep thickness() const;
  WalkStep pockets() const;
  WalkStep pockets_detail() const;
  WalkStep pieces() const;
  WalkStep radius() const;
  WalkStep slots() const;
  WalkStep nut() const;
  /// Pins, and the cuts that are made from the glue face.
  WalkStep from_below() const;
  WalkStep outline() const;

 private:
  std::string length(double mm) const;
  std::string fine(double mm) const;
  WalkStep begin(WalkKind kind) const;
  void builders_cuts(WalkStep& step) const;
  void cutters(WalkStep& step, CutterUse use) const;

  const PreparedBoard& ready_;
  const Board& board_;
  const std::vector<ResolvedSetup>& setups_;
};

}  // namespace sagitta
