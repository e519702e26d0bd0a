#pragma once

/// The families of findings about the wood, the order of work and its cutters.

#include "rules/Judge.hpp"
#include "rules/Subject.hpp"

namespace sagitta {

void judge_wood(const Subject& subject, Judge& judge);      ///< edges, and what is left under the cuts
void judge_cuts(const Subject& subject, Judge& judge);      ///< the builder's own cuts
void judge_forms(const Subject& subject, Judge& judge);     ///< lands of scallops, slots' ends at worked edges
void judge_blank(const Subject& subject, Judge& judge);     ///< what the blank has to spare
void judge_cutters(const Subject& subject, Judge& judge);   ///< what the cutters can do
void judge_ridges(const Subject& subject, Judge& judge);    ///< what the radius cutter leaves on the surface
void judge_order(const Subject& subject, Judge& judge);     ///< order of work, set-ups and their zeros
void judge_movement(const Subject& subject, Judge& judge);  ///< moisture and heat
void judge_cautions(const Subject& subject, Judge& judge);  ///< what belongs to these materials and operations

}  // namespace sagitta
