#pragma once

/// Disjoint sets (union-find).

#include <algorithm>
#include <numeric>
#include <vector>

namespace sagitta {

/// Disjoint sets of the numbers 0 to n - 1. A set's representative is its least member.
class DisjointSets {
 public:
  explicit DisjointSets(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0); }

  int of(int i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(int i, int k) {
    const int a = of(i), b = of(k);
    parent_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<int> parent_;
};

}  // namespace sagitta
