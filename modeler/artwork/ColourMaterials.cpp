#include "artwork/ColourMaterials.hpp"

#include <algorithm>

#include "artwork/Colour.hpp"

namespace sagitta {
namespace {

/// A colour as the builder wrote it, as "#rrggbb" where it is one.
std::string plain(const std::string& written) { return read_colour(written).value_or(written); }

std::string listed(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i)
    all += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return all;
}

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

std::vector<std::string> colours_of(const Artwork& artwork) {
  std::vector<std::string> colours;
  for (const DrawnRegion& region : artwork.regions)
    if (!has(colours, region.colour)) colours.push_back(region.colour);
  return colours;
}

std::string material_of(const Inlay& inlay, const std::string& colour) {
  for (const auto& [written, material] : inlay.colours)
    if (plain(written) == colour) return material;
  return inlay.material;
}

Faults material_faults(const Board& board, std::size_t index, const Artwork& artwork) {
  const Inlay& inlay = board.inlays[index];
  const std::string key = "inlays[" + std::to_string(index) + "].colours";
  const std::vector<std::string> found = colours_of(artwork);
  std::vector<std::string> named, missing, without_sheet;
  Faults faults;
  for (const auto& [written, material] : inlay.colours) {
    named.push_back(plain(written));
    if (!has(found, plain(written)))
      faults.push_back({FaultCode::no_such_colour, key,
                        "the drawing has nothing in the colour " + written + "; its colours are " + listed(found),
                        "delete the entry, or write one of these colours"});
  }
  for (const std::string& colour : found) {
    if (!has(named, colour) && (found.size() > 1 || !named.empty())) {
      missing.push_back(colour);
      continue;
    }
    const std::string material = material_of(inlay, colour);
    const bool sheet = std::any_of(board.sheets.begin(), board.sheets.end(),
                                   [&](const Sheet& one) { return one.material == material; });
    if (!board.sheets.empty() && !sheet) without_sheet.push_back(colour + " (" + material + ")");
  }
  if (!missing.empty())
    faults.push_back(
        {FaultCode::no_material, key,
         "no material is named for " + listed(missing) + "; the colours of the drawing are " + listed(found),
         "write colours = { \"" + missing.front() + "\" = \"bone\", .. } with an entry for each"});
  if (!without_sheet.empty())
    faults.push_back(
        {FaultCode::no_sheet, key,
         "there is no sheet for " + listed(without_sheet) + "; the colours of the drawing are " + listed(found),
         "add a [[sheets]] table for the material, or name one that has a sheet"});
  return faults;
}

}  // namespace sagitta
