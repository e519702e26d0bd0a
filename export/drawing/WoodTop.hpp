#pragma once

/// How high the wood stands while a board is made.

#include "drawing/ResolvedSetup.hpp"

namespace sagitta {

/// Height of the wood on the centre line when the operation begins: the blank's, or what milling it flat or cutting the
/// radius has left. mm above the glue face.
double wood_top_before(const PreparedBoard& ready, Operation operation);
/// The same when the set-up's first operation begins.
double wood_top_before(const PreparedBoard& ready, const ResolvedSetup& setup);

}  // namespace sagitta
