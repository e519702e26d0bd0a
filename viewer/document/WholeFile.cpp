#include "document/WholeFile.hpp"

#include "files/ReadFile.hpp"
#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {
constexpr std::size_t largest = 16U << 20;
}

std::string write_whole(const fs::path& path, std::string_view bytes) {
  const int error = replace_file(path, bytes);
  return error == 0 ? "" : path.string() + " cannot be written: " + system_reason(error) + ".";
}

std::variant<std::string, Unread> read_whole(const fs::path& path) {
  auto read = read_file(path, largest);
  if (const auto* failure = std::get_if<ReadFailure>(&read))
    return Unread{path.string() + " " + reason(*failure) + "."};
  return std::get<std::string>(std::move(read));
}

}  // namespace sagitta::viewer
