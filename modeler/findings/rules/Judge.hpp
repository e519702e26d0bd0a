#pragma once

/// Holds measured values against the board's limits and keeps what breaks one.

#include <string>
#include <utility>
#include <vector>

#include "rules/Catalogue.hpp"

namespace sagitta {

/// Where a value was measured.
struct Spot {
  Point at;
  double z = 0;
  FeatureId where;
  std::string feature;  ///< the same for people
};

class Judge {
 public:
  explicit Judge(const Board& board) : board_(board) {}

  /// The rule's limit on this board: from [limits], else the catalogue's. Lengths in mm.
  double limit(const Rule& rule) const;
  /// Whether the value is on the wrong side of the limit by more than rounding.
  bool breaks(const Rule& rule, double value) const;
  /// Keeps a finding if the value breaks the rule; says whether it did. A fix that the board does not allow is dropped.
  bool hold(const Rule& rule, double value, const Spot& spot, const std::string& message, const std::string& suggestion,
            const std::optional<Fix>& fix = {});
  /// A length for a message, in the board's units.
  std::string shown(double mm) const;
  std::string shown_area(double mm2) const;
  /// Whether a length is more than 0 as messages tell it.
  bool shows(double mm) const;
  /// "only 0.2 mm of wood is left", "no wood is left".
  std::string wood_left(double mm) const;
  /// The next larger or smaller length that a builder would write: hundredths of a mm, half thousandths of an inch.
  double up(double mm) const;
  double down(double mm) const;

  std::vector<Finding> take() { return std::move(found_); }

 private:
  const Board& board_;
  std::vector<Finding> found_;
};

}  // namespace sagitta
