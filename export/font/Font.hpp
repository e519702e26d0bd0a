#pragma once

/// The typeface of paper and window (Inter, under the SIL Open Font License 1.1), built into the program: what is
/// printed does not depend on the fonts of the machine.

#include <span>

namespace sagitta {

/// An OpenType file.
using FontFile = std::span<const unsigned char>;

FontFile regular_font();
FontFile semi_bold_font();

}  // namespace sagitta
