#include "document/FileStamp.hpp"

#include <sys/stat.h>

namespace sagitta::viewer {

std::string stamp_of(const std::filesystem::path& path) {
  struct stat found {};
  if (path.empty() || ::stat(path.c_str(), &found) != 0) return "";
  const auto time = [](const timespec& t) { return std::to_string(t.tv_sec) + "." + std::to_string(t.tv_nsec); };
  return std::to_string(found.st_ino) + " " + std::to_string(found.st_size) + " " + time(found.st_mtim) + " " +
         time(found.st_ctim);
}

}  // namespace sagitta::viewer
