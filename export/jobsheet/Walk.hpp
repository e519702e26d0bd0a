#pragma once

/// The whole job, one step after another as a hand does them, at the machine and at the bench. A step that the board
/// does not have is absent. Texts are in the board's own units.

#include <string>
#include <vector>

#include "drawing/ResolvedSetup.hpp"
#include "jobsheet/JobLevel.hpp"
#include "jobsheet/JobSteps.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// What a step of the walk is.
enum class WalkKind {
  blank,      ///< the blank prepared
  thickness,  ///< brought to one thickness first
  set_up,     ///< clamped, and the zero set
  pockets,
  pockets_detail,  ///< where a cutter of its own does the corners
  pieces,
  dry_fit,
  gluing,
  levelling,  ///< pieces that stand proud brought down to the wood
  radius,
  slots,
  nut,
  from_below,  ///< pins, and the cuts from the glue face
  outline,
  binding,
  side_dots,
  lines,  ///< strips of veneer let in where frets would be
  sanding,
  edges,  ///< rolled or bevelled by hand
  wire,
  pressing,
  end_bevel,
  neck
};

struct WalkStep {
  WalkKind kind = WalkKind::blank;
  bool machine = false;  ///< else at the bench
  std::string title;
  int setup = -1;  ///< set_up, and steps that show a machine's step: index into the sheet's set-ups
  int job = -1;    ///< index into that set-up's steps; -1: the step shows none
  std::vector<std::string> need, act, check, wrong;
  std::vector<std::string> ticks;     ///< a box each, beside the one that every step has
  std::vector<JobLevel> levels;       ///< heights that the step is about; empty: none
  std::vector<std::string> findings;  ///< those that matter here
  friend bool operator==(const WalkStep&, const WalkStep&) = default;
};

/// "Slots", "Set up: NAME": as the step's heading reads.
std::string walk_title(WalkKind kind);

/// The steps in their order; findings are not in them yet. `setups`: the board's, in the order of its file.
std::vector<WalkStep> walk_of(const PreparedBoard& ready, const std::vector<ResolvedSetup>& setups);

}  // namespace sagitta
