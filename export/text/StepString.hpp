#pragma once

/// Text as a STEP file may contain it.

#include <string>
#include <string_view>

namespace sagitta {

/// Foreign text as it stands between the quotes of a STEP file (ISO 10303-21, 6.4.3): quotes and backslashes doubled,
/// what is not ASCII as \X2\....\X0\ or \X4\........\X0\, control characters of ASCII as spaces, hidden characters and
/// bytes that are no UTF-8 as question marks.
std::string step_string(std::string_view utf8);

}  // namespace sagitta
