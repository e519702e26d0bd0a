#include "files/ReadFile.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

namespace sagitta {
namespace {

ReadFailure failure_of(int error) {
  if (error == ENOENT || error == ENOTDIR) return {Unreadable::missing, error};
  if (error == EACCES || error == EPERM) return {Unreadable::forbidden, error};
  if (error == ENXIO || error == ENODEV) return {Unreadable::special, error};
  return {Unreadable::failed, error};
}

/// Nothing when it is a regular file of an allowed size.
ReadFailure* refusal(const struct stat& found, std::size_t most, ReadFailure& why) {
  if (S_ISDIR(found.st_mode)) return why = {Unreadable::folder, EISDIR}, &why;
  if (!S_ISREG(found.st_mode)) return why = {Unreadable::special, 0}, &why;
  if (static_cast<unsigned long long>(found.st_size) > most) return why = {Unreadable::too_large, EFBIG}, &why;
  return nullptr;
}

/// Reads to the end, at most one byte more than allowed: files of /proc have no size, and others grow. 0 or the error.
int read_to_end(int file, std::size_t size, std::size_t most, std::string& bytes) {
  bytes.resize(std::min(size, most) + 1);
  std::size_t done = 0;
  while (done <= most) {
    if (done == bytes.size()) bytes.resize(std::min(2 * done, most + 1));
    const ssize_t got = ::read(file, bytes.data() + done, bytes.size() - done);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return errno;
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  bytes.resize(done);
  return 0;
}

}  // namespace

std::variant<std::string, ReadFailure> read_file(const std::filesystem::path& path, std::size_t most) {
  struct stat found {};
  ReadFailure why;
  // Looked at before it is opened, because opening alone makes some devices act; and after, because the name may have
  // been given to another file meanwhile.
  if (::stat(path.c_str(), &found) != 0) return failure_of(errno);
  if (refusal(found, most, why)) return why;
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  if (file < 0) return failure_of(errno);
  std::string bytes;
  if (::fstat(file, &found) != 0)
    why = failure_of(errno);
  else if (!refusal(found, most, why)) {
    const int error = read_to_end(file, static_cast<std::size_t>(found.st_size), most, bytes);
    why = error != 0 ? failure_of(error) : ReadFailure{Unreadable::too_large, EFBIG};
    if (error == 0 && bytes.size() <= most) {
      ::close(file);
      return bytes;
    }
  }
  ::close(file);
  return why;
}

std::string reason(const ReadFailure& failure) {
  switch (failure.kind) {
    case Unreadable::missing:
      return "is not there";
    case Unreadable::folder:
      return "is a folder, not a file";
    case Unreadable::special:
      return "is a pipe or a device, not a file";
    case Unreadable::forbidden:
      return "may not be read by you";
    case Unreadable::too_large:
      return "is too large";
    case Unreadable::failed:
      break;
  }
  return std::string("cannot be read: ") + std::strerror(failure.error);
}

}  // namespace sagitta
