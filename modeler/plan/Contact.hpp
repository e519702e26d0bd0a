#pragma once

/// Contacts between whole cuts that are not meant.

#include "plan/Feature.hpp"

namespace sagitta {

/// Decides contacts of whole cuts that are not intended, before any intersection; the rounding of the arrangement
/// (Rounding.hpp) decides the others. Cuts that only touch, miss or overlap a neighbour by less than the snap are drawn
/// back so that tolerance::snap of wood stays; sides that run within the snap of a line are moved onto it; a disc about
/// the centre of another, or of a corner of the outline, and as large becomes that one; a disc that touches another, or
/// a pin that touches a straight side, from inside leaves a ledge of the snap; other shapes that touch a line from
/// inside are made to touch it exactly. Ovals and through slots have no shape: they are drawn back by OutlineContact.
/// The lesser feature gives way: a pin to an inlay, an inlay to a slot, a slot to the outline. Returns a note for each
/// cut drawn back.
Faults settle_contacts(std::vector<Feature>& features, double snap);

/// max(tolerance::snap, two steps of a 32-bit float at the largest coordinate). mm.
double snap_for(const Box& extent);

}  // namespace sagitta
