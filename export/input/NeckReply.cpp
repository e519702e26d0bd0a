#include "input/NeckReply.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <nlohmann/json.hpp>
#include <string>

#include "solid/NeckFile.hpp"

namespace sagitta {
namespace {

using json = nlohmann::json;

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

json answer_json(const NeckReading& reading) {
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

Loop outline_of(const json& pieces) {
  Loop outline;
  for (const json& p : pieces) outline.push_back({{p[0], p[1]}, {p[2], p[3]}, {p[4], p[5]}, p[6], p[7], p[8]});
  return outline;
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

}  // namespace

std::optional<int> run_as_neck_reader(int argc, char** argv) {
  if (argc != 4 || std::string(argv[1]) != neck_word) return {};
  // The kernel talks on standard output, where only the answer belongs.
  const int answer = dup(STDOUT_FILENO), nowhere = open("/dev/null", O_WRONLY);
  dup2(nowhere, STDOUT_FILENO);
  const json seat = json::parse(argv[3], nullptr, false);
  if (!seat.is_object()) return 2;
  const std::string text =
      answer_json(read_neck(argv[2], seat_of(seat))).dump(-1, ' ', true, json::error_handler_t::replace);
  std::size_t written = 0;
  while (written < text.size()) {
    const ssize_t step = write(answer, text.data() + written, text.size() - written);
    if (step <= 0) return 3;
    written += static_cast<std::size_t>(step);
  }
  return 0;
}

}  // namespace sagitta
