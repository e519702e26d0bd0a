#pragma once

/// How far wood moves with moisture and heat.

#include <optional>
#include <string>

#include "board/Board.hpp"
#include "board/Materials.hpp"

namespace sagitta {

/// Change of a width across the grain, mm.
struct MoistureChange {
  double flat_sawn = 0, quartered = 0;
};

/// For a change of moisture content in per cent, between 6 and 14 %: width x coefficient x change (Wood Handbook,
/// FPL-GTR-190, 2010, chapter 13). What the board says of the material comes before what is known of it; of one
/// direction only, it counts for both. Nothing for a wood whose coefficients are not known, or for what is no wood.
std::optional<MoistureChange> moisture_change(const Board& board, const std::string& wood, double width,
                                              double percent);

/// Change of a length for a change of temperature, mm; 0 for wood, shell and bone, where it is negligible.
double heat_change(const Board& board, const std::string& material, double length, double kelvin);

}  // namespace sagitta
