#pragma once

/// A strip of the board's own wood to try the machine on before the board is cut: slots a little narrower and wider
/// than wanted, pockets and pieces at several clearances, and a length to measure. Lengths in mm.

#include <variant>
#include <vector>

#include "input/PreparedFile.hpp"

namespace sagitta {

struct TrialSlot {
  int number = 0;  ///< from the left, 1 ..
  double x = 0;    ///< of the middle line
  double width = 0;
  bool wanted = false;  ///< the board's own slots.width
};

struct TrialPair {
  int number = 0;
  Point centre;  ///< of the pocket
  double clearance = 0;
  bool wanted = false;  ///< the clearance of the board's own inlays
};

struct Trial {
  PreparedBoard strip;  ///< flat, as thick as the board, all of it cut in one set-up
  std::vector<TrialSlot> slots;
  std::vector<TrialPair> pairs;  ///< of the board's first inlay that is no artwork, else of a block of its material
  double between = 0;            ///< middle line to middle line of the first slot and the last: 100 mm, or 4 in

  /// Outer flank of the first slot to outer flank of the last: what a caliper finds.
  double over_flanks() const;
};

/// How much wider each slot is than its neighbour, and each clearance larger: 0.02 mm and a thousandth of an inch, by
/// the board's units.
double trial_step(const Board& board);

/// The strip for a board. No slot is narrower than the slot cutter cuts, unless the board's own slots are; no clearance
/// is negative.
std::variant<Trial, Problems> trial_of(const PreparedBoard& ready);

}  // namespace sagitta
