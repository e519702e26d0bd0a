#pragma once

/// The narrowest gap of a drawing that the cutter must pass.

#include "inlay/Narrowest.hpp"

namespace sagitta {

/// The narrowest gap of a drawn island that a cutter as wide as `cut` must pass and cannot: between two stretches of
/// outline that face each other across what is outside, or a hole that the cutter does not enter anywhere (its width is
/// then that of the largest disc in it). What tapers to a corner is no gap. Wider ones have the width 1e300. mm.
Narrowest drawn_gap(const Region& island, double cut);

}  // namespace sagitta
