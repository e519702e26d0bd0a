#pragma once

#include <map>
#include <ostream>
#include <string>

#include "random/RandomBoard.hpp"
#include "random/Trial.hpp"

namespace sagitta::random_boards {

/// Figures of a run, in all and by category.
class Tally {
 public:
  void add(const Sample& sample, const Verdict& verdict);
  void print(std::ostream& out) const;

 private:
  struct Line {
    int boards = 0, failed = 0, refused = 0;
    int overruled = 0;  ///< stages whose booleans quadrature rules against
    double slowest = 0, worst = 0;
    void add(const Verdict& verdict);
  };
  std::map<std::string, Line> by_category_;
  Line all_;
  int draws_ = 0;
};

}  // namespace sagitta::random_boards
