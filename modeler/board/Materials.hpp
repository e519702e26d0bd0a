#pragma once

/// Materials that a board file may name without describing them.

#include <span>
#include <string>
#include <string_view>

#include "board/Board.hpp"

namespace sagitta {

/// A material as it is used: everything known.
struct MaterialFacts {
  std::string name;
  double density = 0;  ///< kg/m3
  std::string colour;  ///< "#rrggbb"
  MaterialKind kind = MaterialKind::wood;
  bool known = true;    ///< false: neither built in nor described on the board; the facts are then a plain hardwood's
  double modulus = 12;  ///< of elasticity along the grain, GPa
  friend bool operator==(const MaterialFacts&, const MaterialFacts&) = default;
};

/// The built-in materials, by name.
std::span<const std::string_view> built_in_materials();

/// The material of this name: what the board says of it over what is built in.
MaterialFacts material(const Board& board, std::string_view name);

}  // namespace sagitta
