#pragma once

/// Thrown where the plan's faces are not divided as they should be.

#include <stdexcept>

#include "plane/Plane.hpp"

namespace sagitta {

/// Two surfaces change places within one face of the plan, in height: its wood would end at the higher of them. A fault
/// of the program.
struct CellOrderError : std::runtime_error {
  /// `by`: how far each lies above the other somewhere on the face's border, mm. `at`: where.
  CellOrderError(double by, Point at)
      : std::runtime_error("two surfaces change places within a face of the plan, near x " + std::to_string(at.x) +
                           ", y " + std::to_string(at.y) + " mm: each is the lower one by " + std::to_string(by) +
                           " mm in a part of it") {}
};

}  // namespace sagitta
