// How time and memory grow with the number of pieces, and with the length of one jagged outline: over a check, over
// plan, lift, solid and mesh of each stage, over the STEP files alone, and over the whole export folder. Each size runs
// in a process of its own; time is the processor's, memory the most that the process held. The fit is t = a n^e by
// least squares of the logarithms; the last step is the exponent from the last size but one to the last.
//
//     bench_growth [dots | leaves | rosettes | jagged]..

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "Places.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "lift/Shell.hpp"
#include "made/Growing.hpp"
#include "mesh/Mesh.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

struct Cost {
  double seconds = 0, megabytes = 0;
  bool done = false;
};

struct Kind {
  const char* name;
  test::Growing kind;
  std::vector<int> counts;
};

const std::vector<Kind> kinds{{"dots", test::Growing::dots, {110, 220, 440, 660, 1012}},
                              {"leaves", test::Growing::leaves, {125, 250, 500, 1000}},
                              {"rosettes", test::Growing::rosettes, {62, 125, 250, 500}},
                              {"jagged", test::Growing::jagged, {6250, 12500, 25000, 50000}}};

PreparedBoard made_ready(const std::string& path) {
  auto ready = prepare(path, Outside::refused);
  if (const auto* problems = std::get_if<Problems>(&ready)) throw std::runtime_error(problems->front().message);
  return std::get<PreparedBoard>(std::move(ready));
}

void check(const std::string& path) { board_findings(made_ready(path)); }

void stages(const std::string& path) {
  const PreparedBoard ready = made_ready(path);
  for (const Stage stage : stages_of(ready.board())) {
    const Shell& shell = ready.shell(stage);
    make_solid(shell);
    make_mesh(shell);
  }
}

/// By the program: the process becomes it. `only`: kinds of file; null: all.
void export_of(const std::string& path, const char* only) {
  const std::string to = (std::filesystem::path(path).parent_path() / "out").string();
  ::execl(places::program().c_str(), "sagitta", "export", path.c_str(), "--to", to.c_str(),
          only ? "--only" : static_cast<const char*>(nullptr), only, static_cast<char*>(nullptr));
  throw std::runtime_error("the program did not start");
}
void step_export(const std::string& path) { export_of(path, "step"); }
void whole_export(const std::string& path) { export_of(path, nullptr); }

/// What a job costs in a process of its own.
Cost cost_of(const std::function<void()>& job) {
  std::fflush(stdout);
  const pid_t child = ::fork();
  if (child == 0) {
    try {
      if (!std::freopen("/dev/null", "w", stdout)) ::_exit(1);
      job();
    } catch (const std::exception& error) {
      std::fprintf(stderr, "%s\n", error.what());
      ::_exit(1);
    }
    ::_exit(0);
  }
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  return {seconds(used.ru_utime) + seconds(used.ru_stime), static_cast<double>(used.ru_maxrss) / 1024,
          WIFEXITED(status) && WEXITSTATUS(status) == 0};
}

double slope(const std::vector<int>& n, const std::vector<double>& of) {
  double x = 0, y = 0, xx = 0, xy = 0;
  const auto count = static_cast<double>(n.size());
  for (std::size_t i = 0; i < n.size(); ++i) {
    const double a = std::log(n[i]), b = std::log(of[i]);
    x += a, y += b, xx += a * a, xy += a * b;
  }
  return (count * xy - x * y) / (count * xx - x * x);
}

void measure(const Kind& kind, const char* what, const std::function<void(const std::string&)>& job) {
  const std::string root = (std::filesystem::temp_directory_path() / ("growth-" + std::to_string(::getpid()))).string();
  std::vector<double> seconds, megabytes;
  for (const int count : kind.counts) {
    const std::string path = test::write_growing(kind.kind, count, root);
    const Cost cost = cost_of([&] { job(path); });
    std::filesystem::remove_all(root);
    if (!cost.done) return;
    seconds.push_back(cost.seconds), megabytes.push_back(cost.megabytes);
    std::printf("%-8s %-7s %6d  %8.2f s  %7.0f MB\n", kind.name, what, count, cost.seconds, cost.megabytes);
    std::fflush(stdout);
  }
  const std::vector<int> last(kind.counts.end() - 2, kind.counts.end());
  const auto end = [](const std::vector<double>& of) { return std::vector<double>(of.end() - 2, of.end()); };
  std::printf("%-8s %-7s exponent of time %.2f, last step %.2f; of memory %.2f, last step %.2f\n", kind.name, what,
              slope(kind.counts, seconds), slope(last, end(seconds)), slope(kind.counts, megabytes),
              slope(last, end(megabytes)));
  std::fflush(stdout);
}

}  // namespace
}  // namespace sagitta

int main(int argc, char** argv) {
  using namespace sagitta;
  const std::vector<std::string> wanted(argv + 1, argv + argc);
  for (const Kind& kind : kinds) {
    if (!wanted.empty() && std::find(wanted.begin(), wanted.end(), kind.name) == wanted.end()) continue;
    measure(kind, "check", check);
    measure(kind, "stages", stages);
    measure(kind, "step", step_export);
    measure(kind, "export", whole_export);
  }
}
