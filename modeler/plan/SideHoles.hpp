#pragma once

/// The holes of the side dots as features of a plan.

#include "plan/Feature.hpp"

namespace sagitta {

/// The side dots' holes as features: from above a rectangle that reaches out of the edge, `bound` the trough. Layout
/// and surface have seen to it that they fit in the edge and keep clear of each other. None for dots in the binding.
std::vector<Feature> side_hole_features(const Board& board, const Layout& layout, const Surface& surface);

/// After the outlines have settled: each hole as wide as its rectangle now is, and smaller again where its crown or its
/// bottom would only touch a level floor or the roof of a pin. Appends a note for each hole drawn back so.
void settle_side_holes(std::vector<Feature>& features, const Surface& surface, double snap, Faults& notes);

}  // namespace sagitta
