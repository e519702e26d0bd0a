#pragma once

/// The words of the walk's steps at the bench: what is needed, done, checked, and what goes wrong.

#include <string>

#include "jobsheet/Walk.hpp"

namespace sagitta {

class BenchText {
 public:
  /// `ready` must live as long as this.
  explicit BenchText(const PreparedBoard& ready) : ready_(ready), board_(ready.board()) {}

  WalkStep blank() const;
  WalkStep dry_fit() const;
  WalkStep gluing() const;
  WalkStep levelling() const;
  WalkStep binding() const;
  WalkStep side_dots() const;
  WalkStep sanding() const;
  WalkStep lines() const;
  WalkStep edges() const;
  WalkStep wire() const;
  WalkStep pressing() const;
  WalkStep end_bevel() const;
  WalkStep neck() const;

 private:
  std::string length(double mm) const;
  std::string fine(double mm) const;
  WalkStep begin(WalkKind kind) const;

  const PreparedBoard& ready_;
  const Board& board_;
};

}  // namespace sagitta
