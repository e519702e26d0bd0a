#include "document/Recovery.hpp"

#include <signal.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>

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

bool runs(int process) { return ::kill(process, 0) == 0 || errno == EPERM; }

}  // namespace

fs::path Recovery::copy_path() const { return folder_ / (stem + std::to_string(::getpid()) + ".toml"); }

std::string Recovery::keep(const std::string& text, const fs::path& board, const fs::path& folder) const {
  std::error_code trouble;
  fs::create_directories(folder_, trouble);
  if (trouble) return "No recovery copy can be kept in " + folder_.string() + ": " + trouble.message() + ".";
  const std::string place = write_whole(place_of(copy_path()), board.string() + "\n" + folder.string());
  return place.empty() ? write_whole(copy_path(), text) : place;
}

void Recovery::drop() const {
  std::error_code trouble;
  fs::remove(copy_path(), trouble);
  fs::remove(place_of(copy_path()), trouble);
}

std::optional<Recovered> Recovery::find_left() const {
  std::error_code trouble;
  std::optional<fs::path> newest;
  for (const auto& entry : fs::directory_iterator(folder_, trouble)) {
    const int process = owner(entry.path());
    if (!process || process == ::getpid() || runs(process)) continue;
    if (!newest || fs::last_write_time(entry.path(), trouble) > fs::last_write_time(*newest, trouble))
      newest = entry.path();
  }
  if (!newest) return std::nullopt;
  const auto text = read_whole(*newest), board = read_whole(place_of(*newest));
  if (!std::holds_alternative<std::string>(text)) return std::nullopt;
  const auto* where = std::get_if<std::string>(&board);
  const std::string places = where ? *where : "";
  const auto end = std::min(places.find('\n'), places.size());
  return Recovered{*newest, places.substr(0, end), places.substr(std::min(end + 1, places.size())),
                   std::get<std::string>(text)};
}

void Recovery::discard(const Recovered& left) {
  std::error_code trouble;
  fs::remove(left.copy, trouble);
  fs::remove(place_of(left.copy), trouble);
}

}  // namespace sagitta::viewer
