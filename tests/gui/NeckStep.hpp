#pragma once

#include <filesystem>

namespace sagitta::test {

/// Writes a neck as a STEP file: a block from x = 0 to `length`, below z = 0, wide from `bass` (negative y) to
/// `treble`.
void write_neck(const std::filesystem::path& file, double length, double bass, double treble);

}  // namespace sagitta::test
