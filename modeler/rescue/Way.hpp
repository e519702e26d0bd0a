#pragma once

/// A way out of what was measured.

#include <string>
#include <vector>

#include "rescue/Edits.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// What has to be done with hands and machines, the least first.
enum class WayEffort {
  numbers,    ///< nothing is cut again: only numbers of what is still to be cut change
  pieces,     ///< pieces or strips are made and put in
  cut_again,  ///< something is filled and cut again
  design      ///< another board than the one that was wanted
};

/// A number that belongs to a way.
struct WayFigure {
  std::string what;  ///< "saddle-move"; fixed words, for programs
  double value = 0;
  std::string unit;  ///< "mm", "cents"
};

struct Way {
  std::string name;     ///< fixed word: "other-scale"
  std::string message;  ///< what to do, a sentence
  std::string cost;     ///< what it costs, a sentence
  WayEffort effort{};
  Edits edits;
  std::vector<WayFigure> figures;
  std::vector<Finding> findings;  ///< of the board with the edits; none of them says stop
};

}  // namespace sagitta
