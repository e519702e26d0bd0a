#include "folder/TemporaryFolder.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <random>
#include <set>
#include <vector>

#include "files/ReadFile.hpp"
#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"
#include "folder/FolderState.hpp"
#include "folder/Manifest.hpp"

namespace fs = std::filesystem;

namespace sagitta {
namespace {

constexpr const char* marker_name = "sagitta-temporary.json";
constexpr const char* new_name = "new";
constexpr const char* old_name = "old";
constexpr std::string_view infix = ".sagitta-";
constexpr std::size_t digits = 16;
constexpr std::size_t most_of_name = 200;  ///< bytes; with the rest no more than a file system allows
constexpr std::size_t largest_marker = 4096;
constexpr int attempts = 16;

/// `name`: of the wanted folder.
std::string marker_text(const std::string& name) {
  const nlohmann::ordered_json marker = {{"program", manifest_program}, {"temporary", name}};
  return marker.dump(-1, ' ', true, nlohmann::json::error_handler_t::replace) + "\n";
}

fs::path chosen_path(const fs::path& wanted) {
  std::random_device chance;
  char number[digits + 1];
  std::snprintf(number, sizeof number, "%08x%08x", chance(), chance());
  const std::string name = wanted.filename().string().substr(0, most_of_name);
  return wanted.parent_path() / ("." + name + std::string(infix) + number);
}

bool named_like_one(const std::string& name) {
  const std::size_t at = name.rfind(infix);
  return name.starts_with('.') && at != std::string::npos && name.size() == at + infix.size() + digits &&
         name.find_first_not_of("0123456789abcdef", at + infix.size()) == std::string::npos;
}

/// All that is in it, then itself. A removal that is broken off can be gone on with: the marker goes last, and the old
/// folder is taken apart under the name of the new one, where a folder without its manifest is known for a rest.
void remove_folder(const fs::path& path) {
  std::error_code ignored;
  fs::remove_all(path / new_name, ignored);
  if (::rename((path / old_name).c_str(), (path / new_name).c_str()) == 0) fs::remove_all(path / new_name, ignored);
  if (fs::exists(fs::symlink_status(path / new_name, ignored)) ||
      fs::exists(fs::symlink_status(path / old_name, ignored)))
    return;
  ::unlink((path / marker_name).c_str());
  ::rmdir(path.c_str());
}

/// A temporary folder that nobody uses any more.
class Left {
 public:
  explicit Left(const fs::path& path) : path_(path) {}
  ~Left() {
    if (marker_ >= 0) ::close(marker_);
  }
  Left(const Left&) = delete;
  Left& operator=(const Left&) = delete;

  void clear() {
    if (!is_own()) return;
    if (!lock()) return;
    if (!is_marked() || !holds_nothing_else()) return;
    put_back();
    if (is_disposable(path_ / new_name) && is_disposable(path_ / old_name)) remove_folder(path_);
  }

 private:
  /// This user's own folder, no link to one.
  bool is_own() const {
    struct stat found {};
    return ::lstat(path_.c_str(), &found) == 0 && S_ISDIR(found.st_mode) && found.st_uid == ::geteuid();
  }

  /// Nobody else holds it from now on. Without a marker it is removed if it is empty: a program that was killed at its
  /// very first step.
  bool lock() {
    marker_ = ::open((path_ / marker_name).c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (marker_ < 0 && errno == ENOENT) ::rmdir(path_.c_str());
    return marker_ >= 0 && ::flock(marker_, LOCK_EX | LOCK_NB) == 0;
  }

  bool is_marked() {
    const auto text = read_file(path_ / marker_name, largest_marker);
    if (!std::holds_alternative<std::string>(text)) return false;
    const std::string& found = std::get<std::string>(text);
    const auto marker = nlohmann::json::parse(found, nullptr, false);
    if (!marker.is_object() || !marker.contains("temporary") || !marker["temporary"].is_string()) return false;
    const std::string name = marker["temporary"].get<std::string>();
    if (found != marker_text(name) || fs::path(name).filename() != name) return false;
    wanted_ = path_.parent_path() / name;
    return true;
  }

  bool holds_nothing_else() const {
    static const std::set<std::string> known = {marker_name, new_name, old_name};
    std::error_code error;
    fs::directory_iterator entry(path_, error), end;
    for (; !error && entry != end; entry.increment(error)) {
      const bool folder = entry->path().filename() != marker_name;
      if (!known.contains(entry->path().filename().string())) return false;
      if (folder && entry->symlink_status(error).type() != fs::file_type::directory) return false;
    }
    return !error;
  }

  void put_back() const {
    std::error_code error;
    if (fs::symlink_status(wanted_, error).type() != fs::file_type::not_found) return;
    if (look_at_folder(path_ / old_name, {}).kind == FolderState::Kind::ours)
      ::rename((path_ / old_name).c_str(), wanted_.c_str());
  }

  /// Absent, or without a manifest (files that were never finished), or a whole folder of ours.
  static bool is_disposable(const fs::path& folder) {
    std::error_code error;
    const FolderState state = look_at_folder(folder, {});
    if (state.free() || state.replaceable()) return true;
    return folder.filename() == new_name && state.kind == FolderState::Kind::foreign &&
           fs::symlink_status(folder / manifest_name, error).type() == fs::file_type::not_found;
  }

  fs::path path_, wanted_;
  int marker_ = -1;
};

}  // namespace

TemporaryFolder::TemporaryFolder(const fs::path& wanted) {
  int error = ENOENT;
  for (int i = 0; i < attempts && (error == ENOENT || error == EEXIST); ++i) error = make(wanted);
  if (error != 0) fail_folder(wanted, system_reason(error));
}

int TemporaryFolder::make(const fs::path& wanted) {
  const fs::path path = chosen_path(wanted);
  if (::mkdir(path.c_str(), 0700) != 0) return errno;
  int error = make_file(path / marker_name, marker_text(wanted.filename().string()));
  if (error == 0) error = lock(path / marker_name);
  if (error == 0 && ::mkdir((path / new_name).c_str(), 0777) != 0) error = errno;
  path_ = path;
  if (error != 0) remove();
  return error;
}

int TemporaryFolder::lock(const fs::path& marker) {
  marker_ = ::open(marker.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
  if (marker_ < 0) return errno;
  ::flock(marker_, LOCK_EX);  // where there are no locks, nothing is ever cleared either
  struct stat found {};
  if (::fstat(marker_, &found) != 0) return errno;
  return found.st_nlink > 0 ? 0 : ENOENT;
}

void TemporaryFolder::remove() {
  if (path_.empty()) return;
  remove_folder(path_);
  leave();
}

void TemporaryFolder::leave() {
  if (marker_ >= 0) ::close(marker_);
  marker_ = -1;
  path_.clear();
}

TemporaryFolder::~TemporaryFolder() { remove(); }

fs::path TemporaryFolder::made() const { return path_ / new_name; }
fs::path TemporaryFolder::aside() const { return path_ / old_name; }

void clear_left_folders(const fs::path& parent) {
  std::vector<fs::path> left;
  std::error_code error;
  fs::directory_iterator entry(parent, error), end;
  for (; !error && entry != end; entry.increment(error))
    if (named_like_one(entry->path().filename().string())) left.push_back(entry->path());
  for (const fs::path& path : left) Left(path).clear();
}

}  // namespace sagitta
