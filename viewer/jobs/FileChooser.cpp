#include "jobs/FileChooser.hpp"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <utility>

#include "jobs/OtherProgram.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t longest_answer = 8192;  ///< bytes

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

/// Reads to the end of the pipe, or as much as a path may have.
std::string read_answer(int pipe) {
  std::string text;
  std::array<char, 512> bytes{};
  for (;;) {
    const ssize_t count = ::read(pipe, bytes.data(), bytes.size());
    if (count <= 0) break;
    if (text.size() < longest_answer) text.append(bytes.data(), static_cast<std::size_t>(count));
  }
  if (!text.empty() && text.back() == '\n') text.pop_back();
  return text;
}

}  // namespace

std::vector<std::string> zenity_arguments(const FileQuestion& question) {
  std::vector<std::string> words{"--file-selection", "--title=" + question.title,
                                 "--filename=" + question.start.string(),
                                 "--file-filter=" + question.kind + " | " + joined(question.patterns)};
  if (question.saving) words.insert(words.begin() + 1, {"--save", "--confirm-overwrite"});
  return words;
}

std::vector<std::string> kdialog_arguments(const FileQuestion& question) {
  return {"--title", question.title, question.saving ? "--getsavefilename" : "--getopenfilename",
          question.start.string(), question.kind + " (" + joined(question.patterns) + ")"};
}

FileChooser::~FileChooser() { close(); }

bool FileChooser::available() { return !find_program("zenity").empty() || !find_program("kdialog").empty(); }

bool FileChooser::ask(const FileQuestion& question, std::function<void()> wake) {
  close();
  const fs::path zenity = find_program("zenity"), program = zenity.empty() ? find_program("kdialog") : zenity;
  int ends[2];
  if (program.empty() || ::pipe2(ends, O_CLOEXEC) != 0) return false;
  const pid_t child =
      started(program, zenity.empty() ? kdialog_arguments(question) : zenity_arguments(question), ends[1]).child;
  ::close(ends[1]);
  if (child == 0) return ::close(ends[0]), false;
  {
    const std::lock_guard lock(mutex_);
    child_ = child, answer_.reset();
  }
  thread_ = std::thread([this, child, pipe = ends[0], told = std::move(wake)] {
    const std::string text = read_answer(pipe);
    ::close(pipe);
    int status = 0;
    ::waitpid(child, &status, 0);
    const bool chosen = WIFEXITED(status) && WEXITSTATUS(status) == 0 && text.size() < longest_answer;
    {
      const std::lock_guard lock(mutex_);
      child_ = 0;
      answer_ = chosen ? fs::path(text) : fs::path();
    }
    if (told) told();
  });
  return true;
}

bool FileChooser::asking() const {
  const std::lock_guard lock(mutex_);
  return child_ != 0;
}

std::optional<fs::path> FileChooser::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(answer_, std::nullopt);
}

void FileChooser::close() {
  {
    const std::lock_guard lock(mutex_);
    if (child_ != 0) ::kill(child_, SIGTERM);
  }
  if (thread_.joinable()) thread_.join();
  const std::lock_guard lock(mutex_);
  answer_.reset();
}

}  // namespace sagitta::viewer
