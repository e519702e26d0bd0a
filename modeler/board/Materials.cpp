#include "board/Materials.hpp"

#include <algorithm>
#include <array>

namespace sagitta {
namespace {

struct BuiltIn {
  std::string_view name;
  double density;
  std::string_view colour;
  MaterialKind kind;
  double modulus = 12;
};

/// Densities in kg/m3; where a range is published, its middle. Ebony 800-1160, taken at the quoted 1035; rosewood 830,
/// from memory; hard maple 705 and pau ferro 865 as published for these woods; paper-phenolic 1180-1400, from memory;
/// cast PMMA 1190; mother of pearl 2600-2800, abalone taken as the same; brass 8400-8700 and bone 1800-2000, from
/// memory; walnut 610, from memory. Colours are our own.
/// Moduli of elasticity in GPa: USDA Wood Handbook FPL-GTR-190 (2010), Tables 5-3 and 5-5, at 12 % moisture: sugar
/// maple 12.6, black walnut 11.6, Indian rosewood 12.3. Ebony and pau ferro are not in it and count as the plain
/// hardwood; paper-phenolic 10 and the others from memory.
constexpr BuiltIn built_in[] = {
    {"abalone", 2700, "#6f9aa0", MaterialKind::shell},
    {"acrylic", 1190, "#f4f4ef", MaterialKind::plastic},
    {"bone", 1900, "#efe6cf", MaterialKind::bone},
    {"brass", 8550, "#c9a94b", MaterialKind::metal},
    {"ebony", 1035, "#2a2422", MaterialKind::wood},
    {"maple", 705, "#e3c79a", MaterialKind::wood, 12.6},
    {"paper-phenolic", 1290, "#24262a", MaterialKind::composite, 10},
    {"pau-ferro", 865, "#6b4632", MaterialKind::wood},
    {"rosewood", 830, "#4d3028", MaterialKind::wood, 12.3},
    {"shell", 2700, "#e9e6df", MaterialKind::shell},
    {"walnut", 610, "#5d4331", MaterialKind::wood, 11.6},
};
constexpr BuiltIn unknown{"", 800, "#8a6f55", MaterialKind::wood};

constexpr auto names = [] {
  std::array<std::string_view, std::size(built_in)> result{};
  for (std::size_t i = 0; i < result.size(); ++i) result[i] = built_in[i].name;
  return result;
}();

/// Blanks and underscores are written for hyphens too: "pau ferro".
std::string plain_name(std::string_view name) {
  std::string plain(name);
  std::ranges::replace(plain, ' ', '-');
  std::ranges::replace(plain, '_', '-');
  return plain;
}

}  // namespace

std::span<const std::string_view> built_in_materials() { return names; }

MaterialFacts material(const Board& board, std::string_view name) {
  const auto found = std::ranges::find(built_in, plain_name(name), &BuiltIn::name);
  const bool is_built_in = found != std::end(built_in);
  const BuiltIn& facts = is_built_in ? *found : unknown;
  MaterialFacts result{std::string(name), facts.density, std::string(facts.colour),
                       facts.kind,        is_built_in,   facts.modulus};
  const auto own = board.materials.find(std::string(name));
  if (own == board.materials.end()) return result;
  result.known = true;
  if (own->second.density) result.density = *own->second.density;
  if (!own->second.colour.empty()) result.colour = own->second.colour;
  if (own->second.modulus) result.modulus = *own->second.modulus;
  if (own->second.kind) result.kind = *own->second.kind;
  return result;
}

}  // namespace sagitta
