#pragma once

/// Contacts of cuts that have an outline and no shape: ovals, and slots that run through.

#include "plan/Feature.hpp"

namespace sagitta {

/// Whether the cut can be drawn back where it only touches: its outline is one smooth convex chain of arcs, an oval, or
/// it is a slot that runs through.
bool gives_by_outline(const Feature& feature);

/// Draws the cut back where it touches the other from outside, or the stock's outline from within, or misses or
/// overlaps it there by less than the snap: so that the snap is left between them. An oval is made smaller about its
/// middle, its ellipse with it; a slot is made narrower on that side, and gives way only to the stock. Touches of two
/// straight lines are left as they are. True where there was one.
bool draw_back_outline(Feature& feature, const Feature& other, double snap);

/// The furthest that a point where two segments of the outline join was moved, `before` to `after`. mm.
double outline_moved_by(const Loop& before, const Loop& after);

}  // namespace sagitta
