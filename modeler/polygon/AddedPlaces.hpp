#pragma once

/// The places where closing a region adds area.

#include "polygon/Region.hpp"

namespace sagitta {

/// The difference `whole` minus `region`, only where the two outlines are further than `by` (mm) apart: elsewhere they
/// differ by the rounding of an offset. `reach` (mm): the largest distance of an added point from `region`. When it is
/// cancelled, the result is unspecified.
Region added_places(const Region& whole, const Region& region, double by, double reach, const Cancel& cancel = {});

}  // namespace sagitta
