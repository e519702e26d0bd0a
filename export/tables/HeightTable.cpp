#include "tables/HeightTable.hpp"

#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "text/CsvRow.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

Json number(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

Json degrees(const std::optional<double>& radians) {
  return radians ? Json(*radians * 180 / std::numbers::pi) : Json(nullptr);
}

Json gap_json(const StringGap& gap) {
  return {{"string", gap.string + 1}, {"fretted", gap.fretted}, {"fret", gap.fret}, {"gap", gap.gap}};
}

Json string_json(const StringHeights& string) {
  Json frets = Json::array();
  for (const FretHeight& f : string.frets)
    frets.push_back({{"fret", f.fret},
                     {"at", {f.at.x, f.at.y}},
                     {"top", f.top},
                     {"height", f.height},
                     {"ahead", number(f.ahead)},
                     {"behind", number(f.behind)}});
  return {{"string", string.string + 1},
          {"nut", {string.nut_x, string.nut_z}},
          {"saddle", {string.saddle_x, string.saddle_z}},
          {"action", string.action},
          {"frets", frets}};
}

}  // namespace

std::string height_csv(const HeightChain& chain) {
  std::string text = "fret";
  for (const StringHeights& s : chain.strings) {
    const std::string name = ",string_" + std::to_string(s.string + 1);
    text += name + "_height_mm" + name + "_ahead_mm" + name + "_behind_mm";
  }
  text += "\n";
  for (std::size_t i = 0; i < chain.strings.front().frets.size(); ++i) {
    CsvRow row;
    row.whole(chain.strings.front().frets[i].fret);
    for (const StringHeights& s : chain.strings)
      row.number(s.frets[i].height).number(s.frets[i].ahead).number(s.frets[i].behind);
    text += row.line();
  }
  return text;
}

Json height_json(const HeightChain& chain) {
  Json strings = Json::array();
  for (const StringHeights& s : chain.strings) strings.push_back(string_json(s));
  return {{"relief", chain.relief},
          {"relief_range", {chain.least_relief, chain.most_relief}},
          {"action", chain.action},
          {"saddle", chain.saddle_z},
          {"bridge", number(chain.bridge)},
          {"needed_bridge", number(chain.needed_bridge)},
          {"angle", degrees(chain.angle)},
          {"needed_angle", degrees(chain.needed_angle)},
          {"bridge_action", number(chain.bridge_action)},
          {"plane_at_saddle", chain.body ? Json(chain.plane_at_saddle) : Json(nullptr)},
          {"least_gap", gap_json(chain.least_ahead)},
          {"least_gap_behind", chain.least_behind ? gap_json(*chain.least_behind) : Json(nullptr)},
          {"strings", strings}};
}

}  // namespace sagitta
