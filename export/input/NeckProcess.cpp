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
#include "input/NeckJson.hpp"
#include "input/NeckReply.hpp"

namespace sagitta {
namespace {

using Clock = std::chrono::steady_clock;

/// An answer larger than this is no answer. Bytes.
constexpr std::size_t most_answer = 16U << 20;

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

/// What the reader said, or why it said nothing.
struct Answer {
  std::string text, failure;
};

Answer ask(const std::vector<std::string>& words, const NeckLimits& limits) {
  int ends[2];
  if (pipe2(ends, O_CLOEXEC) != 0) return {"", "the system gives no pipe to read the neck through"};
  const pid_t reader = fork();
  if (reader == 0) become_reader(words, ends[1], limits);
  close(ends[1]);
  if (reader < 0) {
    close(ends[0]);
    return {"", "the system starts no process to read the neck in"};
  }
  const auto text = listen_to(ends[0], limits.seconds);
  close(ends[0]);
  if (!text) kill(reader, SIGKILL);
  int status = 0;
  while (waitpid(reader, &status, 0) < 0 && errno == EINTR) {
  }
  if (!text)
    return {"", "the neck's file was not read within " + decimal(limits.seconds) + " s: it is too large or never ends"};
  if (text->empty() && WIFSIGNALED(status))
    return {"", "the neck's file ended its reader: it needs too much time or memory, or is damaged"};
  return {*text, ""};
}

/// Where the neck's file lies, or why it is not read.
struct Located {
  std::string path, failure;
};

Located located(const PreparedBoard& ready, const NeckLimits& limits) {
  const Board& board = ready.board();
  const std::string& file = board.neck->file;
  const auto place = input_path({"neck's file", board.folder, file, board.folder}, ready.outside());
  if (const auto* fault = std::get_if<Fault>(&place)) return {"", fault->message};
  const std::string& path = std::get<std::string>(place);
  // The process that reads it opens it again: here it is only made sure that this is a file, and not too large.
  const auto bytes = read_file(path, limits.bytes);
  if (const auto* why = std::get_if<ReadFailure>(&bytes)) {
    const std::string most =
        why->kind == Unreadable::too_large ? ": at most " + std::to_string(limits.bytes >> 20) + " MiB are read" : "";
    return {"", "the neck's file " + file + " " + reason(*why) + most};
  }
  return {path, ""};
}

bool names_neck(const PreparedBoard& ready) { return ready.board().neck && !ready.board().neck->file.empty(); }

}  // namespace

std::optional<NeckReading> read_neck_apart(const PreparedBoard& ready, const NeckLimits& limits) {
  if (!names_neck(ready)) return {};
  const Located file = located(ready, limits);
  if (!file.failure.empty()) return NeckReading{{}, file.failure};
  const Answer answer = ask({"sagitta", neck_word, file.path, seat_json(board_seat(ready)).dump()}, limits);
  return answer.failure.empty() ? reading_of(answer.text) : NeckReading{{}, answer.failure};
}

std::optional<NeckWood> mesh_neck_apart(const PreparedBoard& ready, const NeckPlace& place, const NeckLimits& limits) {
  if (!names_neck(ready)) return {};
  NeckWood none;
  const Located file = located(ready, limits);
  none.failure = file.failure;
  if (!none.failure.empty()) return none;
  const Answer answer =
      ask({"sagitta", neck_word, file.path, seat_json(board_seat(ready)).dump(), place_json(place).dump()}, limits);
  none.failure = answer.failure;
  return none.failure.empty() ? wood_of(answer.text) : none;
}

}  // namespace sagitta
