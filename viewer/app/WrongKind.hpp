#pragma once

/// Files that are no drawings, whatever they are called.

#include <filesystem>
#include <string>

namespace sagitta::viewer {

/// What a picture made of pixels, or a page, needs to become a drawing, as a sentence; "" for a file that is neither by
/// its ending and its first bytes.
std::string wrong_kind_words(const std::filesystem::path& path);

}  // namespace sagitta::viewer
