#pragma once

/// What tells, without reading a file, that it may have been written since.

#include <filesystem>
#include <string>

namespace sagitta::viewer {

/// Size, number and times of the file; "" when it is not there.
std::string stamp_of(const std::filesystem::path& path);

}  // namespace sagitta::viewer
