#pragma once

#include <filesystem>

#include "layout/Layout.hpp"

namespace sagitta::test {

/// Writes a neck as a STEP file: a bar below z = 0 along the board, whose sides stand out beyond the board's edges by
/// `low` at negative y and by `high` at positive y. It is 15 deep, and ends at x = `length` where the board is longer.
void write_neck(const std::filesystem::path& file, const Layout& board, double low, double high, double length = 1e3);

}  // namespace sagitta::test
