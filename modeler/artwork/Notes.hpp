#pragma once

/// What is said about a drawing, each thing once with the first place and a count.

#include <string>
#include <vector>

#include "board/Problem.hpp"

namespace sagitta {

class Notes {
 public:
  /// `where` is "line 12, <path>", or empty.
  void add(const std::string& where, const std::string& what, const std::string& hint);
  Faults faults() const;

 private:
  struct Note {
    std::string where, what, hint;
    int count = 1;
  };
  std::vector<Note> notes_;
};

}  // namespace sagitta
