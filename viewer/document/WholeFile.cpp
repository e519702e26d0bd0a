#include "document/WholeFile.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr std::uintmax_t largest = 16u << 20;

std::string words(const fs::path& path, const std::string& what) {
  return path.string() + " " + what + ": " + std::strerror(errno) + ". Save it in another folder.";
}

bool write_all(int file, const std::string& bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t wrote = ::write(file, bytes.data() + done, bytes.size() - done);
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return false;
    done += static_cast<std::size_t>(wrote);
  }
  return ::fsync(file) == 0;
}

}  // namespace

std::string write_whole(const fs::path& path, const std::string& bytes) {
  std::error_code unresolved;
  fs::path target = fs::weakly_canonical(path, unresolved);
  if (unresolved) target = path;
  std::string beside = target.string() + ".XXXXXX";
  const int file = ::mkstemp(beside.data());
  if (file < 0) return words(path, "cannot be written");
  struct stat old {};
  const mode_t mode = ::stat(target.c_str(), &old) == 0 ? old.st_mode & 07777 : 0644;
  const bool whole = write_all(file, bytes) && ::fchmod(file, mode) == 0;
  const bool closed = ::close(file) == 0;
  if (whole && closed && ::rename(beside.c_str(), target.c_str()) == 0) return "";
  const std::string trouble = words(path, "cannot be written");
  ::unlink(beside.c_str());
  return trouble;
}

std::variant<std::string, Unread> read_whole(const fs::path& path) {
  std::error_code trouble;
  if (fs::is_directory(path, trouble)) return Unread{path.string() + " is a folder, not a file."};
  std::ifstream file(path, std::ios::binary);
  if (!file) return Unread{path.string() + " cannot be read: " + std::strerror(errno) + "."};
  if (fs::file_size(path, trouble) > largest && !trouble)
    return Unread{path.string() + " is too large for a board file."};
  std::ostringstream bytes;
  bytes << file.rdbuf();
  return bytes.str();
}

}  // namespace sagitta::viewer
