#include "export/Folder.hpp"

#include <fcntl.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>

namespace fs = std::filesystem;

namespace sagitta {
namespace {

std::string quoted(const fs::path& path) { return "\"" + path.string() + "\""; }

/// The system's reason in a builder's words, with what to do where that is clear.
std::string reason(int error) {
  switch (error) {
    case ENOSPC:
    case EDQUOT:
      return "the disk is full; make room or name a folder on another disk";
    case EACCES:
    case EPERM:
      return "you may not write there; name a folder of your own";
    case EROFS:
      return "that disk can only be read; name a folder on another disk";
    case EFBIG:
      return "files may not grow that large here; name a folder on another disk";
    case ENAMETOOLONG:
      return "the name is too long";
    case ENOTEMPTY:
    case EEXIST:
      return "something else wrote into it meanwhile; name a new folder";
    case EBUSY:
    case EXDEV:
      return "it is the top folder of a disk; name a folder below it";
    case ENOTDIR:
      return "a part of that path is a file, not a folder";
    default:
      return std::strerror(error);
  }
}

[[noreturn]] void fail(const fs::path& path, const std::string& why) {
  throw FolderError("cannot write the folder " + quoted(path) + ": " + why);
}

bool inside(const fs::path& path, const fs::path& folder) {
  return std::mismatch(folder.begin(), folder.end(), path.begin(), path.end()).first == folder.end();
}

/// Absolute, links resolved, without a slash at the end.
fs::path resolved(const fs::path& path) {
  std::error_code error;
  fs::path result = fs::weakly_canonical(fs::absolute(path, error), error);
  if (error) fail(path, reason(error.value()));
  return result.has_filename() ? result : result.parent_path();
}

/// What a replacement must not throw away: the folder one stands in, one's home, the board file.
void refuse_precious(const fs::path& wanted, const std::vector<fs::path>& sources) {
  std::error_code error;
  const fs::path here = fs::current_path(error);
  if (wanted == wanted.root_path() || inside(here, wanted))
    fail(wanted, "it is the folder that you are working in, or holds it; name a folder below it");
  if (const char* home = std::getenv("HOME"); home && *home && inside(resolved(home), wanted))
    fail(wanted, "it is your home folder, or holds it; name a folder below it");
  for (const fs::path& source : sources)
    if (inside(resolved(source), wanted))
      fail(wanted, "it holds " + quoted(source) + ", which replacing it would throw away; name another folder");
}

/// The mode that a new folder gets from the user's mask.
mode_t usual_mode() {
  const mode_t mask = umask(0);
  umask(mask);
  return 0777 & ~mask;
}

/// Writes all the bytes and sees them onto the disk; 0, or the system's error.
int write_whole(int file, const std::string& bytes) {
  for (std::size_t done = 0; done < bytes.size();) {
    const ssize_t count = ::write(file, bytes.data() + done, bytes.size() - done);
    if (count >= 0)
      done += static_cast<std::size_t>(count);
    else if (errno != EINTR)
      return errno;
  }
  const bool refused = fsync(file) != 0;
  return refused && errno != EINVAL && errno != ENOSYS ? errno : 0;
}

}  // namespace

Folder::Folder(const fs::path& path, bool replace, const std::vector<fs::path>& sources)
    : wanted_(resolved(path)), replace_(replace) {
  std::error_code error;
  const fs::file_status status = fs::status(wanted_, error);
  if (fs::exists(status)) {
    if (!fs::is_directory(status)) fail(wanted_, "there is a file of that name; name a folder");
    const bool empty = fs::is_empty(wanted_, error);
    if (error) fail(wanted_, reason(error.value()));
    if (!empty && !replace)
      fail(wanted_, "it is not empty; name a new folder, or add --replace to put the new files in its place");
    refuse_precious(wanted_, sources);
  }
  make_temporary();
}

Folder::~Folder() { discard(); }

void Folder::make_temporary() {
  std::error_code error;
  for (fs::path parent = wanted_.parent_path(); !fs::exists(parent, error) && parent.has_relative_path();
       parent = parent.parent_path())
    parents_.insert(parents_.begin(), parent);
  for (std::size_t i = 0; i < parents_.size(); ++i)
    if (!fs::create_directory(parents_[i], error)) {
      parents_.resize(i);
      discard();
      fail(wanted_, reason(error.value()));
    }
  std::string pattern = wanted_.parent_path() / ("." + wanted_.filename().string().substr(0, 200) + ".XXXXXX");
  if (!mkdtemp(pattern.data())) {
    const int why = errno;
    discard();
    fail(wanted_, reason(why));
  }
  temporary_ = pattern;
  chmod(temporary_.c_str(), usual_mode());
}

void Folder::discard() noexcept {
  std::error_code ignored;
  if (!temporary_.empty()) fs::remove_all(temporary_, ignored);
  temporary_.clear();
  for (; !parents_.empty(); parents_.pop_back()) fs::remove(parents_.back(), ignored);
}

void Folder::add(const std::string& name, const std::string& bytes) {
  const fs::path path = temporary_ / name;
  std::error_code error;
  fs::create_directories(path.parent_path(), error);
  if (error) fail(wanted_, reason(error.value()));
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (file < 0) fail(wanted_, reason(errno));
  const int wrong = write_whole(file, bytes);
  const int closed = ::close(file) == 0 ? 0 : errno;
  if (wrong != 0 || closed != 0) fail(wanted_, reason(wrong != 0 ? wrong : closed));
}

void Folder::keep() {
  // A rename takes the place of an absent or empty folder in one step, and fails on any other.
  if (::rename(temporary_.c_str(), wanted_.c_str()) == 0)
    temporary_.clear();
  else if (replace_ && (errno == ENOTEMPTY || errno == EEXIST))
    swap();
  else
    fail(wanted_, reason(errno));
  parents_.clear();
  discard();
}

void Folder::swap() {
  if (renameat2(AT_FDCWD, temporary_.c_str(), AT_FDCWD, wanted_.c_str(), RENAME_EXCHANGE) == 0) return;
  if (errno != EINVAL && errno != ENOSYS) fail(wanted_, reason(errno));
  // A file system without the exchange: the old folder steps aside, and comes back if the new one cannot take its
  // place.
  const fs::path aside = temporary_.string() + ".old";
  if (::rename(wanted_.c_str(), aside.c_str()) != 0) fail(wanted_, reason(errno));
  if (::rename(temporary_.c_str(), wanted_.c_str()) != 0) {
    const int why = errno;
    ::rename(aside.c_str(), wanted_.c_str());
    fail(wanted_, reason(why));
  }
  temporary_ = aside;
}

}  // namespace sagitta
