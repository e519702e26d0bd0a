#include "campaign/Campaign.hpp"

#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "board/Writer.hpp"
#include "random/Dice.hpp"
#include "random/Shrink.hpp"

namespace sagitta::campaign {
namespace {

namespace fs = std::filesystem;
using random_boards::Space;
using random_boards::Verdict;

constexpr std::array<std::pair<Space, std::string_view>, 5> names{{{Space::core, "core"},
                                                                   {Space::whole, "whole"},
                                                                   {Space::near, "near"},
                                                                   {Space::ends, "ends"},
                                                                   {Space::kinds, "kinds"}}};

/// The records of a log. Half a line, left by a process that was stopped, is cut off.
std::vector<Record> read_log(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::vector<Record> records;
  std::uintmax_t whole = 0;
  for (std::string text; std::getline(file, text) && !file.eof();) {
    const auto one = record_from(text);
    if (!one) throw std::runtime_error(path.string() + " is not the log of a campaign");
    records.push_back(*one);
    whole += text.size() + 1;
  }
  file.close();
  if (fs::exists(path) && fs::file_size(path) != whole) fs::resize_file(path, whole);
  return records;
}

void append(const fs::path& path, const Record& record) {
  std::ofstream(path, std::ios::binary | std::ios::app) << line(record) << "\n" << std::flush;
}

/// The kernel ends a process that has used so much of the processor's time from now on.
void end_after(double seconds) {
  itimerval timer{};
  timer.it_value.tv_sec = static_cast<time_t>(std::ceil(seconds));
  setitimer(ITIMER_PROF, &timer, nullptr);
}

class Run {
 public:
  Run(const Range& range, fs::path folder, std::ostream& out, const Settings& settings)
      : range_(range), folder_(std::move(folder)), out_(out), settings_(settings) {
    log_ = folder_ / (std::string(name(range.space)) + "-" + std::to_string(range.first) + "-" +
                      std::to_string(range.count) + ".log");
  }

  std::vector<Record> all() {
    fs::create_directories(folder_);
    std::vector<Record> records = read_log(log_);
    while (static_cast<int>(records.size()) < range_.count) {
      const std::uint64_t next = range_.first + records.size();
      const int status = apart([&] {
        for (auto number = next; number < range_.first + static_cast<std::uint64_t>(range_.count); ++number)
          judge(number);
      });
      records = read_log(log_);
      if (status == 0 || static_cast<int>(records.size()) >= range_.count) continue;
      bury(range_.first + records.size(), status);
      records = read_log(log_);
    }
    return records;
  }

 private:
  /// Does the job in a process of its own; what ended it, 0 when it came to the end.
  template <class Job>
  int apart(const Job& job) const {
    out_.flush();
    const pid_t child = fork();
    if (child < 0) throw std::runtime_error("no process can be started");
    if (child == 0) {
      job();
      out_.flush();
      _exit(0);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return status;
  }

  void judge(std::uint64_t number) const {
    end_after(settings_.most_seconds);
    const Board board = random_boards::random_board(number, range_.space).board;
    const Verdict verdict = settings_.judge(number, board, {});
    const Record record = record_of(number, verdict);
    if (record.outcome != Outcome::sound) {
      end_after(settings_.most_seconds * 10);
      keep(number, smaller(board, record.outcome, verdict, number), verdict.trouble);
    }
    append(log_, record);
  }

  /// Drawing the board may be what ends a process.
  void bury(std::uint64_t number, int status) const {
    const std::string how = WIFSIGNALED(status) ? "signal " + std::to_string(WTERMSIG(status))
                                                : "exit " + std::to_string(WEXITSTATUS(status));
    apart([&] {
      end_after(settings_.most_seconds);
      keep(number, random_boards::random_board(number, range_.space).board, "the process ended: " + how + "\n");
    });
    append(log_, {number, Outcome::died, 0, 0, 0, {}});
  }

  /// A smaller board with the same outcome, at the first of the stages that failed.
  Board smaller(const Board& board, Outcome outcome, const Verdict& verdict, std::uint64_t number) const {
    const std::vector<Stage> stages(verdict.failed.begin(), verdict.failed.begin() + !verdict.failed.empty());
    int left = settings_.shrinking;
    return random_boards::shrink(board, [&](const Board& one) {
      return left-- > 0 && record_of(number, settings_.judge(number, one, stages)).outcome == outcome;
    });
  }

  void keep(std::uint64_t number, const Board& board, const std::string& trouble) const {
    const std::string file = std::string(name(range_.space)) + "-" + std::to_string(number);
    std::istringstream lines(trouble);
    std::ofstream out(folder_ / (file + ".toml"));
    for (std::string text; std::getline(lines, text);) out << "# " << text << "\n";
    out << write_board(board);
    out_ << file << ": " << trouble.substr(0, trouble.find('\n')) << std::endl;
  }

  Range range_;
  fs::path folder_, log_;
  std::ostream& out_;
  const Settings& settings_;
};

}  // namespace

std::string_view name(Space space) {
  return std::find_if(names.begin(), names.end(), [&](const auto& n) { return n.first == space; })->second;
}

std::optional<Space> space_named(std::string_view text) {
  for (const auto& [space, word] : names)
    if (word == text) return space;
  return std::nullopt;
}

Verdict judged(std::uint64_t number, const Board& board, const std::vector<Stage>& stages) {
  random_boards::Asked asked = random_boards::everything(board);
  asked.stages = stages;
  asked.figures = false;  // a third of the time
  asked.confirm = false;  // booleans of many arcs take minutes
  random_boards::Dice dice(number);
  asked.step = {dice.one_of(stages_of(board))};
  return random_boards::tried(board, asked);
}

std::vector<Record> run(const Range& range, const fs::path& folder, std::ostream& out, const Settings& settings) {
  return Run(range, folder, out, settings).all();
}

void print(const std::vector<Record>& records, std::ostream& out) {
  std::map<std::string_view, int> outcomes;
  std::map<std::string, int> refusals;
  int stages = 0;
  Record slowest, worst;
  for (const Record& record : records) {
    ++outcomes[name(record.outcome)];
    for (const auto& [key, count] : record.refusals) refusals[key] += count;
    stages += record.stages;
    if (record.seconds > slowest.seconds) slowest = record;
    if (record.outcome == Outcome::sound && record.worst > worst.worst) worst = record;
  }
  out << records.size() << " boards, " << stages << " stages\n";
  for (const auto& [outcome, count] : outcomes) out << "  " << outcome << ": " << count << "\n";
  for (const auto& [key, count] : refusals) out << "  stages refused by " << key << ": " << count << "\n";
  out << "slowest stage: " << slowest.seconds << " s, board " << slowest.number << "\n"
      << "largest difference of a sound board's volume from quadrature: " << worst.worst << ", board " << worst.number
      << "\n";
}

}  // namespace sagitta::campaign
