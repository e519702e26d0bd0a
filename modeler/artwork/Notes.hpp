#pragma once

/// What is said about a drawing, each thing once with the first place and a count.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "board/Problem.hpp"

namespace sagitta {

class Notes {
 public:
  /// `units`: what lengths are told in.
  explicit Notes(Units units = Units::mm) : units_(units) {}

  /// `where` is "line 12, <path>", or empty.
  void add(const std::string& where, const std::string& what, const std::string& hint);
  /// "0.01 mm", "0.0004 in".
  std::string length(double mm) const;
  Faults faults() const;

 private:
  struct Note {
    std::string where, what, hint;
    int count = 1;
  };
  Units units_;
  std::vector<Note> notes_;
};

}  // namespace sagitta
