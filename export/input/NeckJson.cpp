#include "input/NeckJson.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace sagitta {
namespace {

using json = nlohmann::json;

constexpr const char* ended_early = "the neck's file ended its reader before it was done";

json outline_json(const Loop& outline) {
  json pieces = json::array();
  for (const CurveSegment& segment : outline)
    pieces.push_back({segment.a.x, segment.a.y, segment.b.x, segment.b.y, segment.centre.x, segment.centre.y,
                      segment.radius, segment.start, segment.sweep});
  return pieces;
}

Loop outline_of(const json& pieces) {
  Loop outline;
  for (const json& p : pieces) outline.push_back({{p[0], p[1]}, {p[2], p[3]}, {p[4], p[5]}, p[6], p[7], p[8]});
  return outline;
}

template <class Corners>
bool names_points(const Corners& all, std::size_t points) {
  return std::all_of(all.begin(), all.end(), [points](const auto& corners) {
    return std::all_of(corners.begin(), corners.end(), [points](std::uint32_t c) { return c < points; });
  });
}

}  // namespace

json seat_json(const BoardSeat& seat) {
  json j{{"outline", outline_json(seat.outline)},
         {"edge_at_nut", seat.edge_at_nut},
         {"edge_slope", seat.edge_slope},
         {"thickness", seat.thickness},
         {"nut_end", seat.nut_end},
         {"heel_end", seat.heel_end},
         {"nut_slant", seat.nut_slant},
         {"compare_to", seat.compare_to},
         {"joint_given", seat.joint_given},
         {"nut_lines", seat.nut_lines},
         {"heel_lines", seat.heel_lines},
         {"trim", seat.trim},
         {"depth_at", seat.depth_at}};
  if (seat.file_nut) j["file_nut"] = *seat.file_nut;
  if (seat.file_heel) j["file_heel"] = *seat.file_heel;
  return j;
}

BoardSeat seat_of(const json& j) {
  BoardSeat seat{outline_of(j["outline"]),
                 j["edge_at_nut"],
                 j["edge_slope"],
                 j["thickness"],
                 j["nut_end"],
                 j["heel_end"],
                 j["nut_slant"],
                 j["compare_to"],
                 j["joint_given"],
                 j["nut_lines"],
                 j["heel_lines"],
                 j["trim"],
                 j["depth_at"],
                 {},
                 {}};
  if (j.contains("file_nut")) seat.file_nut = j["file_nut"].get<Place3>();
  if (j.contains("file_heel")) seat.file_heel = j["file_heel"].get<Place3>();
  return seat;
}

json place_json(const NeckPlace& place) {
  return {{"origin", place.origin},
          {"along", place.along},
          {"up", place.up},
          {"by", static_cast<int>(place.by)},
          {"fit", place.fit},
          {"second", place.second},
          {"compared", place.compared},
          {"area", place.area},
          {"other_hand", place.other_hand},
          {"sure", place.sure},
          {"chosen", static_cast<int>(place.chosen)}};
}

NeckPlace place_of(const json& j) {
  return {j["origin"],
          j["along"],
          j["up"],
          static_cast<PlacedBy>(j["by"].get<int>()),
          j["fit"],
          j["second"],
          j["compared"],
          j["area"],
          j["other_hand"],
          j["sure"],
          static_cast<ChosenBy>(j["chosen"].get<int>())};
}

json reading_json(const NeckReading& reading) {
  json answer{{"failure", reading.failure}};
  if (const auto& neck = reading.shape)
    answer["neck"] = {{"unit", neck->unit},
                      {"solids", neck->solids},
                      {"faces", neck->faces},
                      {"planar", neck->planar},
                      {"outlines", neck->outlines},
                      {"interference", neck->interference},
                      {"place", place_json(neck->place)},
                      {"edge_rounding", neck->edge_rounding},
                      {"boards", neck->boards},
                      {"depths", neck->depths},
                      {"floors", neck->floors},
                      {"times", neck->times}};
  if (answer.contains("neck") && reading.shape->body_from) answer["neck"]["body_from"] = *reading.shape->body_from;
  return answer;
}

NeckReading reading_of(const std::string& text) {
  const json answer = json::parse(text, nullptr, false);
  if (!answer.is_object()) return {{}, ended_early};
  NeckReading reading{{}, answer.value("failure", "")};
  if (!answer.contains("neck")) return reading;
  const json& neck = answer["neck"];
  reading.shape = NeckShape{neck["unit"],
                            neck["solids"],
                            neck["faces"],
                            neck["planar"],
                            neck["outlines"],
                            neck["interference"],
                            place_of(neck["place"]),
                            neck["edge_rounding"],
                            neck["boards"],
                            neck["depths"],
                            neck["floors"],
                            neck["times"],
                            {}};
  if (neck.contains("body_from")) reading.shape->body_from = neck["body_from"].get<double>();
  return reading;
}

json wood_json(const NeckWood& wood) {
  std::vector<long> points;
  for (const auto& point : wood.points)
    for (const float each : point) points.push_back(std::lround(1000.0 * static_cast<double>(each)));
  return {{"failure", wood.failure}, {"points", points}, {"triangles", wood.triangles}, {"edges", wood.edges}};
}

NeckWood wood_of(const std::string& text) {
  NeckWood wood;
  const json answer = json::parse(text, nullptr, false);
  if (!answer.is_object()) {
    wood.failure = ended_early;
    return wood;
  }
  wood.failure = answer.value("failure", "");
  const std::vector<double> points = answer["points"];
  for (std::size_t i = 0; i + 2 < points.size(); i += 3)
    wood.points.push_back({static_cast<float>(points[i] / 1000), static_cast<float>(points[i + 1] / 1000),
                           static_cast<float>(points[i + 2] / 1000)});
  wood.triangles = answer["triangles"].get<decltype(wood.triangles)>();
  wood.edges = answer["edges"].get<decltype(wood.edges)>();
  if (!names_points(wood.triangles, wood.points.size()) || !names_points(wood.edges, wood.points.size())) {
    wood = {};
    wood.failure = ended_early;
  }
  return wood;
}

}  // namespace sagitta
