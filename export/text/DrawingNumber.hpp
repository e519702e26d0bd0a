#pragma once

/// Numbers as drawings contain them.

#include <string>

namespace sagitta {

/// A number as drawings carry it: at most nine decimals, a point, no trailing zeros, never "-0".
std::string drawn_number(double value);

}  // namespace sagitta
