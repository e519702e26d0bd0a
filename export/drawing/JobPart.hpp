#pragma once

/// A part of the job, to be done again or finished: some frets, some pieces, one operation. Everything stays where it
/// is on the board, so that the zero of the work that stopped still holds.

#include <optional>
#include <set>
#include <stdexcept>
#include <string>

#include "board/Board.hpp"

namespace sagitta {

class PreparedBoard;

struct JobPart {
  std::set<int> frets;           ///< slots of these frets, inlays and side dots of these spaces; empty: all
  std::set<std::string> pieces;  ///< by name, "shell-03"; empty: all
  std::optional<double>
      clearance;  ///< mm; the named pieces fit their pockets, as cut, with this much room (RefitDrawn)
  std::optional<Operation> operation;

  bool whole() const { return frets.empty() && pieces.empty() && !operation; }
  friend bool operator==(const JobPart&, const JobPart&) = default;
};

/// The part asks for what the board has not; what() says what it has.
struct PartError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// "9-22" or "1,3,9-12" as a list. Throws PartError.
std::set<int> frets_in(const std::string& words);
/// "9-12,15": the list as it is typed.
std::string words_of(const std::set<int>& frets);
/// "only frets 9-12, only slots": what a part is, for notes.
std::string words_of(const JobPart& part);

/// pockets, inlay, radius, slots, outline. Throws PartError.
Operation operation_named(const std::string& name);

/// The board with what the part names selected: slots, inlays and side dots of its frets, its pieces, its operation.
/// Pieces that get another clearance take the place of those fitted. Nothing moves, no piece and no set-up changes its
/// name; the wood of every stage lacks the frets that are left out. Throws PartError where the board has not what is
/// named.
PreparedBoard part_of(const PreparedBoard& whole, const JobPart& part);

}  // namespace sagitta
