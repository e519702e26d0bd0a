#include "document/Recovery.hpp"

#include <signal.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <sstream>
#include <vector>

#include "document/WholeFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

const std::string stem = "recovery-";

fs::path place_of(const fs::path& copy) { return fs::path(copy).replace_extension(".path"); }

/// The process that a copy belongs to; 0 for other files.
int owner(const fs::path& copy) {
  const std::string name = copy.filename().string();
  if (name.rfind(stem, 0) != 0 || copy.extension() != ".toml") return 0;
  int process = 0;
  std::from_chars(name.data() + stem.size(), name.data() + name.size(), process);
  return process;
}

/// The copy with the lines of the file beside it: the board's file, its folder, its checksum.
Recovered with_places(const fs::path& copy, std::string text) {
  Recovered left;
  left.copy = copy, left.text = std::move(text);
  const auto read = read_whole(place_of(copy));
  if (!std::holds_alternative<std::string>(read)) return left;
  std::istringstream lines(std::get<std::string>(read));
  std::string board, folder;
  std::getline(lines, board), std::getline(lines, folder), std::getline(lines, left.checksum);
  left.board = board, left.folder = folder;
  return left;
}

bool runs(int process) { return ::kill(process, 0) == 0 || errno == EPERM; }

}  // namespace

fs::path Recovery::copy_path() const { return folder_ / (stem + std::to_string(::getpid()) + ".toml"); }

std::string Recovery::keep(const std::string& text, const fs::path& board, const fs::path& folder,
                           const std::string& checksum) const {
  std::error_code trouble;
  fs::create_directories(folder_, trouble);
  if (trouble) return "No recovery copy can be kept in " + folder_.string() + ": " + trouble.message() + ".";
  const std::string place =
      write_whole(place_of(copy_path()), board.string() + "\n" + folder.string() + "\n" + checksum);
  return place.empty() ? write_whole(copy_path(), text) : place;
}

void Recovery::drop() const {
  std::error_code trouble;
  fs::remove(copy_path(), trouble);
  fs::remove(place_of(copy_path()), trouble);
}

std::optional<Recovered> Recovery::find_left() const {
  std::error_code trouble;
  std::vector<std::pair<fs::file_time_type, fs::path>> copies;
  fs::directory_iterator entry(folder_, trouble), end;
  for (; !trouble && entry != end; entry.increment(trouble)) {
    const int process = owner(entry->path());
    std::error_code unknown;
    if (process && process != ::getpid() && !runs(process))
      copies.emplace_back(fs::last_write_time(entry->path(), unknown), entry->path());
  }
  std::sort(copies.rbegin(), copies.rend());
  for (const auto& [time, copy] : copies)
    if (auto text = read_whole(copy); std::holds_alternative<std::string>(text))
      return with_places(copy, std::move(std::get<std::string>(text)));
  return std::nullopt;
}

void Recovery::discard(const Recovered& left) {
  std::error_code trouble;
  fs::remove(left.copy, trouble);
  fs::remove(place_of(left.copy), trouble);
}

}  // namespace sagitta::viewer
