#pragma once

/// Roots of a function on an interval.

#include <functional>
#include <optional>
#include <vector>

namespace sagitta {

/// Parameters strictly inside (0, 1), rising, where f changes sign or touches zero. A stretch with |f| <= small counts
/// as zero: it gives one parameter where f passes through it, or where it turns back; none at the ends of [0, 1], where
/// |f| <= small is left to the caller. `samples` must be enough to part f's extrema.
std::vector<double> contacts_of(const std::function<double(double)>& f, double small, int samples);

/// Where f is zero between low and high, at whose ends its signs differ or it is zero; none where they do not.
std::optional<double> root_between(const std::function<double(double)>& f, double low, double high);

}  // namespace sagitta
