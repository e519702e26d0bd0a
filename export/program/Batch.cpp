#include "program/Batch.hpp"

#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>
#include <stdexcept>
#include <thread>

#include "package/Repeat.hpp"
#include "program/Command.hpp"

extern char** environ;

namespace sagitta {
namespace {

using OpenFile = std::unique_ptr<FILE, int (*)(FILE*)>;

OpenFile scratch_file() {
  OpenFile file(std::tmpfile(), std::fclose);
  if (!file) throw std::runtime_error("there is no room for temporary files");
  return file;
}

std::string text_in(FILE* file) {
  std::rewind(file);
  std::string text;
  std::array<char, 4096> part{};
  for (std::size_t read; (read = std::fread(part.data(), 1, part.size(), file)) > 0;) text.append(part.data(), read);
  return text;
}

/// One run that has begun.
struct Run {
  std::size_t number = 0;
  OpenFile out = scratch_file(), err = scratch_file();
};

pid_t start(const std::vector<std::string>& words, const Run& run) {
  std::vector<char*> arguments{const_cast<char*>("sagitta")};
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, fileno(run.out.get()), STDOUT_FILENO);
  posix_spawn_file_actions_adddup2(&actions, fileno(run.err.get()), STDERR_FILENO);
  pid_t process = 0;
  const int error = posix_spawn(&process, "/proc/self/exe", &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  if (error != 0) throw std::runtime_error("a run of the program for one of the boards could not be started");
  return process;
}

constexpr std::chrono::milliseconds pause{10};

/// Waits for one of the runs. It looks again and again: a signal does not wake a program that waits for another.
std::pair<pid_t, int> next_end(const std::map<pid_t, Run>& running, const Cancel& cancel) {
  for (bool told = false;; std::this_thread::sleep_for(pause)) {
    int status = 0;
    const pid_t ended = waitpid(-1, &status, WNOHANG);
    if (ended > 0 && running.contains(ended))
      return {ended, WIFEXITED(status) ? WEXITSTATUS(status) : static_cast<int>(exit_fault)};
    if (ended < 0) throw std::runtime_error("the runs of the program cannot be waited for");
    if (told || !cancel.wanted()) continue;
    for (const auto& [process, run] : running) kill(process, SIGTERM);
    told = true;
  }
}

}  // namespace

std::vector<BatchResult> run_side_by_side(const std::vector<std::vector<std::string>>& commands, const Cancel& cancel,
                                          const std::function<void(std::size_t)>& began) {
  std::vector<BatchResult> results(commands.size());
  std::map<pid_t, Run> running;
  // Each waits for the disk a third of its time, as every file is seen onto it: half as many again keep all cores busy.
  const std::size_t at_once = (3 * std::max(1U, std::thread::hardware_concurrency()) + 1) / 2;
  std::size_t next = 0;
  while (next < commands.size() || !running.empty()) {
    while (next < commands.size() && running.size() < at_once && !cancel.wanted()) {
      began(next);
      Run run{next};
      const pid_t process = start(commands[next], run);
      running.emplace(process, std::move(run));
      ++next;
    }
    if (running.empty()) break;
    const auto [process, code] = next_end(running, cancel);
    const Run& run = running.at(process);
    results[run.number] = {code, text_in(run.out.get()), text_in(run.err.get())};
    running.erase(process);
  }
  return results;
}

std::vector<std::string> repeated_options(const CLI::App& app, const std::set<std::string>& without) {
  std::vector<std::string> words;
  for (const CLI::Option* option : app.get_options()) {
    const std::string name = option->get_name();
    if (option->count() == 0 || without.contains(name)) continue;
    const bool flag = option->get_expected_max() == 0;
    if (flag) words.push_back(name);
    for (const std::string& value : option->results())
      if (!flag) words.insert(words.end(), {name, value});
  }
  return words;
}

std::string folder_name(const std::string& board) {
  const std::filesystem::path path(board);
  if (names_manifest(board)) return std::filesystem::absolute(path).parent_path().filename().string();
  std::string name = path.stem().string();
  if (name.ends_with(".board")) name.resize(name.size() - std::string_view(".board").size());
  return name;
}

int worse_of(int a, int b) {
  const auto rank = [](int code) {
    constexpr std::array order{exit_good, exit_changed, exit_stop, exit_input, exit_failed, exit_fault};
    return std::ranges::find(order, code) - order.begin();
  };
  return rank(a) < rank(b) ? b : a;
}

}  // namespace sagitta
