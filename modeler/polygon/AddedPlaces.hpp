#pragma once

/// The places where closing a region adds area.

#include "polygon/Region.hpp"

namespace sagitta {

/// What `whole` has and `region` has not, where one's outline lies further than `by` from the other's: an offset is
/// moved by less all along an outline, and there nothing is clipped. `reach` (mm): no point that is added lies further
/// from the region. When it is cancelled, the result is unspecified.
Region added_places(const Region& whole, const Region& region, double by, double reach, const Cancel& cancel = {});

}  // namespace sagitta
