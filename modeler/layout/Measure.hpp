#pragma once

/// Lengths as text for messages.

#include <string>

namespace sagitta {

/// "12.5 mm": up to four decimals, without trailing zeros. For messages.
std::string in_mm(double value);
/// "12.5": the same without the unit.
std::string plain(double value);

}  // namespace sagitta
