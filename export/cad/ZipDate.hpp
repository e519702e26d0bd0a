#pragma once

/// The date of the files in a zip archive, which 3MF is.

#include <string>

namespace sagitta {

/// The archive with every file dated 2000-01-01 00:00, as the STEP files' headers are: no hour goes out, and the date
/// is one that an unpacking program can set. Throws std::runtime_error for what is no zip archive.
std::string with_fixed_date(std::string archive);

}  // namespace sagitta
