#pragma once

/// Ways out of what was measured, each of them proved.

#include <functional>
#include <optional>
#include <variant>
#include <vector>

#include "prepared/PreparedBoard.hpp"
#include "rescue/Way.hpp"

namespace sagitta {

/// The findings of a board, or what keeps it from being built.
using Judged = std::variant<std::vector<Finding>, Faults>;
using JudgeBoard = std::function<Judged(const Board&)>;

/// Prepares the board, makes sure that every stage has a plan and asks every finding that needs no neck's file.
Judged judged(const Board& board, Outside outside = Outside::refused);

/// All ways out of what is wrong with the board as it was measured, best first: the least effort, then the fewest
/// findings that say look and that the measured board does not have, then the order in which the kinds of rescue are
/// tried. Where nothing is wrong but numbers of what is still to be cut change, the first way takes them over. A way is
/// kept only when the edited board, written as a board file, reads without problem and `judge` finds no stop: nothing
/// proposed may raise one. `judge` null: judged().
std::vector<Way> ways_out(const Board& board, const JudgeBoard& judge = {});

/// What the kinds of rescue work on, and where they offer their ways.
class Ways {
 public:
  Ways(const Board& planned, const JudgeBoard& judge);

  const Board& planned() const { return planned_; }
  /// The board as measured; none where it cannot be built.
  const PreparedBoard* ready() const { return ready_ ? &*ready_ : nullptr; }
  /// What keeps it from being built.
  const Faults& faults() const { return faults_; }
  const std::vector<Finding>& findings() const { return findings_; }
  bool has_fault(FaultCode code) const;
  bool has_finding(std::string_view name) const;

  /// Keeps the way if it proves good, with the findings of its board; says whether it did.
  bool offer(Way way);
  /// Whether the board can be read, built, and has no finding that says stop; its findings then.
  std::optional<std::vector<Finding>> proved(const Board& board) const;

  std::vector<Way> best_first() &&;

 private:
  int new_looks(const Way& way) const;

  const Board& planned_;
  JudgeBoard judge_;
  std::optional<PreparedBoard> ready_;
  Faults faults_;
  std::vector<Finding> findings_;
  std::vector<Way> ways_;
};

// The kinds of rescue; each offers nothing where nothing of its kind is wrong.
void slot_ways(Ways& ways);     ///< slots at other places than planned
void blank_ways(Ways& ways);    ///< a blank too thin, too short or too narrow
void pocket_ways(Ways& ways);   ///< pockets too deep or too wide
void chip_ways(Ways& ways);     ///< chips in the surface and at the edges
void surface_ways(Ways& ways);  ///< a radius cut too deep
void neck_ways(Ways& ways);     ///< a board cut narrower than its neck

}  // namespace sagitta
