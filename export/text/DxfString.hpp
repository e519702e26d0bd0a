#pragma once

/// Text as a DXF file may contain it.

#include <cstddef>
#include <string>
#include <string_view>

namespace sagitta {

/// No value of a DXF file is longer: readers of release 12 hold 255 bytes (DXF reference of AutoCAD 2000, group codes).
inline constexpr std::size_t longest_dxf_value = 255;

/// Foreign text as it stands in a value of a DXF file: what is not ASCII as \U+XXXX, and the backslash too, so that no
/// text is taken for such a code; control characters of ASCII as spaces; hidden characters, bytes that are no UTF-8 and
/// what has no such code as question marks. Cut off at longest_dxf_value.
std::string dxf_string(std::string_view utf8);

}  // namespace sagitta
