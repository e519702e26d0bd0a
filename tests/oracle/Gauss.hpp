#pragma once

#include <functional>

namespace sagitta::oracle {

/// Sum and |change| of an adaptive integral.
struct Integral {
  double value = 0, change = 0;
};

/// Integral of f from a to b; f is smooth inside and may have square-root ends. The part that changes most when it is
/// halved is halved next, until the changes sum to less than `tolerance` (absolute) or to a part in 1e12 of the
/// integral of |f|, which is rounding, or until there are `most_parts` of them: it ends whatever f is. `change` says
/// how far it came.
Integral integral(const std::function<double(double)>& f, double a, double b, double tolerance);

inline constexpr int most_parts = 400;

}  // namespace sagitta::oracle
