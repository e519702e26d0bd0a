#include "input/NeckProcess.hpp"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <nlohmann/json.hpp>
#include <vector>

#include "board/BoardFile.hpp"
#include "board/Length.hpp"
#include "files/ReadFile.hpp"
#include "input/NeckReply.hpp"
#include "neck/BoardSeat.hpp"

namespace sagitta {
namespace {

using json = nlohmann::json;
using Clock = std::chrono::steady_clock;

/// An answer larger than this is no answer. Bytes.
constexpr std::size_t most_answer = 16U << 20;

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

NeckReading reading_of(const std::string& text) {
  const json answer = json::parse(text, nullptr, false);
  if (!answer.is_object()) return {{}, "the neck's file ended its reader before it was done"};
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

json outline_json(const Loop& outline) {
  json pieces = json::array();
  for (const CurveSegment& segment : outline)
    pieces.push_back({segment.a.x, segment.a.y, segment.b.x, segment.b.y, segment.centre.x, segment.centre.y,
                      segment.radius, segment.start, segment.sweep});
  return pieces;
}

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

void set_limit(int what, rlim_t most) {
  const rlimit limit{most, most};
  setrlimit(what, &limit);
}

/// Never returns: becomes the reader.
[[noreturn]] void become_reader(const std::vector<std::string>& words, int answer, const NeckLimits& limits) {
  dup2(answer, STDOUT_FILENO);
  const int nowhere = open("/dev/null", O_RDWR);
  dup2(nowhere, STDIN_FILENO);
  dup2(nowhere, STDERR_FILENO);
  set_limit(RLIMIT_AS, static_cast<rlim_t>(limits.memory));
  set_limit(RLIMIT_CPU, static_cast<rlim_t>(limits.seconds + 1));
  set_limit(RLIMIT_CORE, 0);
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  execv("/proc/self/exe", arguments.data());
  _exit(127);
}

/// What the reader says before it closes its end or its time is up; nothing when the time was up.
std::optional<std::string> listen_to(int answer, double seconds) {
  const auto end = Clock::now() + std::chrono::duration<double>(seconds);
  std::string text;
  char piece[65536];
  while (text.size() < most_answer) {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
    if (left <= 0) return {};
    pollfd ready{answer, POLLIN, 0};
    const int woken = poll(&ready, 1, static_cast<int>(left));
    if (woken < 0 && errno == EINTR) continue;
    if (woken <= 0) return {};
    const ssize_t got = read(answer, piece, sizeof piece);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return text;
    text.append(piece, static_cast<std::size_t>(got));
  }
  return text;
}

NeckReading ask(const std::vector<std::string>& words, const NeckLimits& limits) {
  int ends[2];
  if (pipe2(ends, O_CLOEXEC) != 0) return {{}, "the system gives no pipe to read the neck through"};
  const pid_t reader = fork();
  if (reader == 0) become_reader(words, ends[1], limits);
  close(ends[1]);
  if (reader < 0) {
    close(ends[0]);
    return {{}, "the system starts no process to read the neck in"};
  }
  const auto text = listen_to(ends[0], limits.seconds);
  close(ends[0]);
  if (!text) kill(reader, SIGKILL);
  int status = 0;
  while (waitpid(reader, &status, 0) < 0 && errno == EINTR) {
  }
  if (!text)
    return {{}, "the neck's file was not read within " + decimal(limits.seconds) + " s: it is too large or never ends"};
  if (text->empty() && WIFSIGNALED(status))
    return {{}, "the neck's file ended its reader: it needs too much time or memory, or is damaged"};
  return reading_of(*text);
}

}  // namespace

std::optional<NeckReading> read_neck_apart(const PreparedBoard& ready, const NeckLimits& limits) {
  const Board& board = ready.board();
  if (!board.neck || board.neck->file.empty()) return {};
  const std::string& file = board.neck->file;
  const auto place = input_path({"neck's file", board.folder, file, board.folder}, ready.outside());
  if (const auto* fault = std::get_if<Fault>(&place)) return NeckReading{{}, fault->message};
  const std::string& path = std::get<std::string>(place);
  // The process that reads it opens it again: here it is only made sure that this is a file, and not too large.
  const auto bytes = read_file(path, limits.bytes);
  if (const auto* why = std::get_if<ReadFailure>(&bytes)) {
    const std::string most =
        why->kind == Unreadable::too_large ? ": at most " + std::to_string(limits.bytes >> 20) + " MiB are read" : "";
    return NeckReading{{}, "the neck's file " + file + " " + reason(*why) + most};
  }
  return ask({"sagitta", neck_word, path, seat_json(board_seat(ready)).dump()}, limits);
}

}  // namespace sagitta
