#include "tables/StringTable.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "text/CsvRow.hpp"

namespace sagitta {
namespace {

struct StringPlace {
  int string = 0, course = 0;
  std::optional<double> gauge;
  double at_nut = 0, at_saddle = 0;
};

std::vector<StringPlace> places_of(const PreparedBoard& ready) {
  const Strings& strings = ready.board().strings;
  const std::vector<LineSegment>& lines = ready.layout().strings;
  std::vector<StringPlace> places;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const int index = static_cast<int>(i);
    StringPlace place{index + 1, index / strings.course + 1, {}, 0, 0};
    if (i < strings.gauges.size()) place.gauge = strings.gauges[i];
    place.at_nut = std::abs(lines[i].a.y - lines[0].a.y);
    place.at_saddle = std::abs(lines[i].b.y - lines[0].b.y);
    places.push_back(place);
  }
  return places;
}

}  // namespace

std::string string_csv(const PreparedBoard& ready) {
  std::string text = "string,course,gauge_mm,at_nut_mm,at_saddle_mm\n";
  for (const StringPlace& place : places_of(ready))
    text += CsvRow()
                .whole(place.string)
                .whole(place.course)
                .number(place.gauge)
                .number(place.at_nut)
                .number(place.at_saddle)
                .line();
  return text;
}

nlohmann::ordered_json string_json(const PreparedBoard& ready) {
  using Json = nlohmann::ordered_json;
  Json rows = Json::array();
  for (const StringPlace& place : places_of(ready))
    rows.push_back({{"string", place.string},
                    {"course", place.course},
                    {"gauge", place.gauge ? Json(*place.gauge) : Json()},
                    {"at_nut", place.at_nut},
                    {"at_saddle", place.at_saddle}});
  return rows;
}

}  // namespace sagitta
