#pragma once

/// Places of a region that are too narrow for the cutter, and how each is made wide enough.

#include "inlay/FitTolerance.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// What may be done about a gap of a piece that is too narrow for the cutter.
enum class Remedy {
  either,  ///< the gap is widened, or it is filled and the neck there thickened: whichever changes less area
  widen    ///< the gap is widened
};

/// The parts of a region that are on the average thicker than `thin`; of the others, what a disc so wide leaves. The
/// default is more than whole numbers and chords leave along outlines. mm.
std::vector<Region> true_parts(const Region& region, double thin = tolerance::offset_sliver);

/// A piece with each of its gaps made as wide as a disc of `radius`, or filled with a neck as wide as it. `gaps` are
/// the true parts of what closing adds to the piece and opening would take away again. Nothing is filled where `taken`
/// lies. The outcome is opened by `opening`, a little less than the radius; it may have other gaps. mm.
Region with_room(const Region& piece, const std::vector<Region>& gaps, double radius, double opening,
                 const Region& taken, Remedy remedy, const Cancel& cancel);

}  // namespace sagitta
