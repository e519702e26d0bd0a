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

/// Densities in kg/m3, air-dry. Ebony: 63 lb/ft3 (Chudnoff, Tropical Timbers of the World, USDA Agriculture Handbook
/// 607, 1984); other sources give 1035, and 800 to 1160 as the range. Ash, beech, birch, cherry, hickory (pecan),
/// locust, the maples and the oaks: specific gravity at 12 % of the Wood Handbook (FPL-GTR-190, 2010, table 5-3)
/// x 1.12. Pau ferro 865 as published; cast PMMA 1190; mother of pearl 2600-2800, its middle, the other shells taken as
/// the same. From memory: rosewood, walnut, bubinga, mahogany, padauk, purpleheart, teak, wenge; phenolics 1180-1400;
/// brass 8400-8700, bone 1800-2000, horn 1300, celluloid 1380. Colours are our own.
/// Moduli of elasticity in GPa: USDA Wood Handbook FPL-GTR-190 (2010), Tables 5-3 and 5-5, at 12 % moisture: sugar
/// maple 12.6, black walnut 11.6, Indian rosewood 12.3. Ebony and pau ferro are not in it and count as the plain
/// hardwood; paper-phenolic 10 and the others from memory.
constexpr BuiltIn built_in[] = {
    {"abalone", 2700, "#6f9aa0", MaterialKind::shell},
    {"acrylic", 1190, "#f4f4ef", MaterialKind::plastic},
    {"ash", 672, "#d9c39c", MaterialKind::wood},
    {"beech", 717, "#d2ab7e", MaterialKind::wood},
    {"birch", 694, "#dcc08e", MaterialKind::wood},
    {"bone", 1900, "#efe6cf", MaterialKind::bone},
    {"brass", 8550, "#c9a94b", MaterialKind::metal},
    {"bubinga", 890, "#8a4a33", MaterialKind::wood},
    {"celluloid", 1380, "#efe3c4", MaterialKind::plastic},
    {"cherry", 560, "#b5764c", MaterialKind::wood},
    {"ebony", 1009, "#2a2422", MaterialKind::wood},
    {"hickory", 739, "#c9a676", MaterialKind::wood},
    {"horn", 1300, "#3d352d", MaterialKind::bone},
    {"locust", 773, "#a98b4d", MaterialKind::wood},
    {"mahogany", 590, "#8f5136", MaterialKind::wood},
    {"maple", 705, "#e3c79a", MaterialKind::wood, 12.6},
    {"mother-of-pearl", 2700, "#e9e6df", MaterialKind::shell},
    {"padauk", 745, "#a4472b", MaterialKind::wood},
    {"paper-phenolic", 1290, "#24262a", MaterialKind::composite, 10},
    {"pau-ferro", 865, "#6b4632", MaterialKind::wood},
    {"pearl", 2700, "#e9e6df", MaterialKind::shell},
    {"phenolic", 1290, "#24262a", MaterialKind::composite, 10},
    {"purpleheart", 905, "#6d3a5c", MaterialKind::wood},
    {"red-maple", 605, "#dcbc90", MaterialKind::wood},
    {"red-oak", 706, "#c09468", MaterialKind::wood},
    {"rosewood", 830, "#4d3028", MaterialKind::wood, 12.3},
    {"shell", 2700, "#e9e6df", MaterialKind::shell},
    {"teak", 655, "#9c6f42", MaterialKind::wood},
    {"walnut", 610, "#5d4331", MaterialKind::wood, 11.6},
    {"wenge", 870, "#3b2a21", MaterialKind::wood},
    {"white-oak", 762, "#b8976a", MaterialKind::wood},
};
constexpr BuiltIn unknown{"", 800, "#8a6f55", MaterialKind::wood};

/// A composite that is named but not built in: taken as paper-phenolic.
constexpr BuiltIn some_composite{"", 1290, "#24262a", MaterialKind::composite};

/// Phenolic, resin and paper composites are called by what they are made of: "linen phenolic", "paper composite".
bool is_composite(std::string_view plain) {
  for (const std::string_view word : {"phenolic", "resin", "composite", "paper"})
    if (plain.find(word) != std::string_view::npos) return true;
  return false;
}

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
  const bool composite = !is_built_in && is_composite(plain_name(name));
  const BuiltIn& facts = is_built_in ? *found : composite ? some_composite : unknown;
  MaterialFacts result{std::string(name),        facts.density, std::string(facts.colour), facts.kind,
                       is_built_in || composite, facts.modulus};
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
