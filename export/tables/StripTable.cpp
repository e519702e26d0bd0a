#include "tables/StripTable.hpp"

#include <nlohmann/json.hpp>

#include "text/CsvRow.hpp"

namespace sagitta {
namespace {

std::string edge_word(const EdgeStrip& strip) { return strip.side == FeatureId::lower ? "lower" : "upper"; }

std::string strip_word(const EdgeStrip& strip) {
  return strip.line < 0 ? "binding" : "line " + std::to_string(strip.line + 1);
}

}  // namespace

std::string strip_csv(const std::vector<EdgeStrip>& list) {
  std::string text = "edge,strip,material,thickness_mm,height_mm,length_mm\n";
  for (const EdgeStrip& strip : list)
    text += CsvRow()
                .text(edge_word(strip))
                .text(strip_word(strip))
                .text(strip.material)
                .number(strip.thickness)
                .number(strip.height)
                .number(strip.length)
                .line();
  return text;
}

nlohmann::ordered_json strip_json(const std::vector<EdgeStrip>& list) {
  using Json = nlohmann::ordered_json;
  Json strips = Json::array();
  for (const EdgeStrip& strip : list)
    strips.push_back({{"edge", edge_word(strip)},
                      {"strip", strip_word(strip)},
                      {"material", strip.line < 0 ? Json() : Json(strip.material)},
                      {"thickness", strip.thickness},
                      {"height", strip.height},
                      {"length", strip.length}});
  return strips;
}

}  // namespace sagitta
