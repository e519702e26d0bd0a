#pragma once

#include <cstdio>
#include <cstdlib>

namespace sagitta::test {

/// Ends a fuzz target where something does not hold.
inline void demand(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "not so: %s\n", what);
  std::abort();
}

}  // namespace sagitta::test
