#include "files/WriteFile.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <random>
#include <string>

namespace fs = std::filesystem;

namespace sagitta {
namespace {

constexpr mode_t usual_mode = 0666;

int sync(int file) { return ::fsync(file) == 0 || errno == EINVAL || errno == ENOSYS ? 0 : errno; }

/// Writes all the bytes and sees them onto the disk.
int write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t count = ::write(file, bytes.data(), bytes.size());
    if (count < 0 && errno != EINTR) return errno;
    if (count > 0) bytes.remove_prefix(static_cast<std::size_t>(count));
  }
  return sync(file);
}

/// A name beside the file that nothing has.
fs::path passing_name(const fs::path& path) {
  std::random_device chance;
  char digits[17];
  std::snprintf(digits, sizeof digits, "%08x%08x", chance(), chance());
  return path.parent_path() / ("." + path.filename().string().substr(0, 200) + ".sagitta-" + digits);
}

/// A file that has all its bytes before it has its name. Where the file system knows files without a name, a program
/// that is killed leaves nothing behind; elsewhere the file has a passing name until it has its own.
class Draft {
 public:
  explicit Draft(fs::path path) : path_(std::move(path)) {
    const fs::path folder = path_.has_parent_path() ? path_.parent_path() : fs::path(".");
    file_ = ::open(folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, usual_mode);
    if (file_ >= 0) return;
    error_ = errno;
    if (error_ != EOPNOTSUPP && error_ != EISDIR && error_ != EINVAL) return;
    const fs::path passing = passing_name(path_);
    file_ = ::open(passing.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, usual_mode);
    error_ = file_ < 0 ? errno : 0;
    if (file_ >= 0) passing_ = passing;
  }
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  ~Draft() {
    if (file_ >= 0) ::close(file_);
    if (!passing_.empty()) ::unlink(passing_.c_str());
  }

  /// Of opening it; 0 when it is open.
  int error() const { return file_ < 0 ? error_ : 0; }
  int write(std::string_view bytes) const { return write_all(file_, bytes); }
  int set_mode(mode_t mode) const { return ::fchmod(file_, mode) == 0 ? 0 : errno; }

  /// Gives the file its name, which nothing may have yet.
  int name_new() {
    const int error = passing_.empty() ? link_to(path_) : link_passing();
    return error != 0 ? error : close_named(path_);
  }

  /// Gives the file its name, in place of what has it.
  int name_over() {
    if (passing_.empty()) {
      const fs::path passing = passing_name(path_);
      if (const int error = link_to(passing); error != 0) return error;
      passing_ = passing;
    }
    // Closed before it takes the old file's place: some file systems tell of a full disk only then.
    if (const int error = close(); error != 0) return error;
    if (::rename(passing_.c_str(), path_.c_str()) != 0) return errno;
    passing_.clear();
    return 0;
  }

 private:
  int link_to(const fs::path& path) const {
    const std::string self = "/proc/self/fd/" + std::to_string(file_);
    return ::linkat(AT_FDCWD, self.c_str(), AT_FDCWD, path.c_str(), AT_SYMLINK_FOLLOW) == 0 ? 0 : errno;
  }
  int link_passing() const { return ::link(passing_.c_str(), path_.c_str()) == 0 ? 0 : errno; }
  int close() {
    const int closed = ::close(file_) == 0 ? 0 : errno;
    file_ = -1;
    return closed;
  }
  /// A file that could not be closed does not keep its name.
  int close_named(const fs::path& named) {
    const int error = close();
    if (error != 0) ::unlink(named.c_str());
    return error;
  }

  fs::path path_, passing_;
  int file_ = -1, error_ = 0;
};

}  // namespace

int sync_folder(const fs::path& folder) {
  const int opened = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (opened < 0) return errno == EACCES ? 0 : errno;  // a folder that one may write but not read
  const int error = sync(opened);
  ::close(opened);
  return error;
}

int make_file(const fs::path& path, std::string_view bytes) {
  Draft draft(path);
  if (draft.error() != 0) return draft.error();
  const int error = draft.write(bytes);
  return error != 0 ? error : draft.name_new();
}

int replace_file(const fs::path& path, std::string_view bytes) {
  std::error_code unresolved;
  fs::path target = fs::weakly_canonical(path, unresolved);
  if (unresolved) target = path;
  struct stat old {};
  const bool there = ::stat(target.c_str(), &old) == 0;
  if (there && S_ISDIR(old.st_mode)) return EISDIR;
  if (there && !S_ISREG(old.st_mode)) return EOPNOTSUPP;
  if (is_protected(target)) return EACCES;
  Draft draft(target);
  if (draft.error() != 0) return draft.error();
  if (const int error = draft.write(bytes); error != 0) return error;
  if (there)
    if (const int error = draft.set_mode(old.st_mode & 07777); error != 0) return error;
  if (const int error = draft.name_over(); error != 0) return error;
  return sync_folder(target.has_parent_path() ? target.parent_path() : ".");
}

bool is_protected(const fs::path& path) {
  struct stat found {};
  if (::stat(path.c_str(), &found) != 0) return false;
  return (found.st_mode & 0222) == 0 || ::access(path.c_str(), W_OK) != 0;
}

}  // namespace sagitta
