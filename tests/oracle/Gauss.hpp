#pragma once

#include <functional>

namespace sagitta::oracle {

/// Sum and |change| of an adaptive integral.
struct Integral {
  double value = 0, change = 0;
};

/// Integral of f from a to b; f is smooth inside and may have square-root ends. Halves a stretch until the change is
/// under `tolerance` (absolute).
Integral integral(const std::function<double(double)>& f, double a, double b, double tolerance);

}  // namespace sagitta::oracle
