#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace sagitta::oracle {

/// One board of tests/cases with its reference values. Volumes come from section areas in closed form and agree with 3D
/// booleans of exact patches; face counts take faces of one surface that share an edge as one.
struct Case {
  std::string name;
  std::string path;
  double volume = 0;  ///< of stage board, mm^3
  int faces = 0;
  int genus = 0;
  bool refused = false;  ///< a board that must not be built
  friend std::ostream& operator<<(std::ostream& out, const Case& one) { return out << one.name; }
};

/// The cases of volumes.csv, singles.csv and families.csv in `folder` (tests/cases). The volumes of families.csv come
/// from quadrature that shares no code with the plan; their faces were counted by hand.
std::vector<Case> catalogue(const std::string& folder);

}  // namespace sagitta::oracle
