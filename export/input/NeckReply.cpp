#include "input/NeckReply.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <nlohmann/json.hpp>
#include <string>

#include "input/NeckJson.hpp"
#include "solid/NeckFile.hpp"
#include "solid/NeckMesher.hpp"

namespace sagitta {
namespace {

using json = nlohmann::json;

/// What the words ask for: the reading, or with a place behind the seat the wood.
std::optional<json> answer_to(int argc, char** argv) {
  const json seat = json::parse(argv[3], nullptr, false);
  if (!seat.is_object()) return {};
  if (argc == 4) return reading_json(read_neck(argv[2], seat_of(seat)));
  const json place = json::parse(argv[4], nullptr, false);
  if (!place.is_object()) return {};
  return wood_json(mesh_neck(argv[2], seat_of(seat), place_of(place)));
}

}  // namespace

std::optional<int> run_as_neck_reader(int argc, char** argv) {
  if (argc < 4 || argc > 5 || std::string(argv[1]) != neck_word) return {};
  // The kernel talks on standard output, where only the answer belongs.
  const int answer = dup(STDOUT_FILENO), nowhere = open("/dev/null", O_WRONLY);
  dup2(nowhere, STDOUT_FILENO);
  const auto said = answer_to(argc, argv);
  if (!said) return 2;
  const std::string text = said->dump(-1, ' ', true, json::error_handler_t::replace);
  std::size_t written = 0;
  while (written < text.size()) {
    const ssize_t step = write(answer, text.data() + written, text.size() - written);
    if (step <= 0) return 3;
    written += static_cast<std::size_t>(step);
  }
  return 0;
}

}  // namespace sagitta
