#pragma once

/// The outer edge of a program that uses the geometry kernel.

#include <functional>

namespace sagitta {

/// As `guarded`; what the kernel throws is told too.
int kernel_guarded(const std::function<int()>& run);

}  // namespace sagitta
