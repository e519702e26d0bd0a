#include "document/OnDisk.hpp"

#include "board/SourceText.hpp"
#include "files/ReadFile.hpp"
#include "folder/Digest.hpp"
#include "package/BoardSources.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

OnDisk look_on_disk(const Document& document) {
  if (document.path().empty()) return {};
  auto read = read_file(document.path(), largest_file);
  if (const auto* failure = std::get_if<ReadFailure>(&read)) {
    if (failure->kind == Unreadable::missing) return {OnDisk::Kind::gone, "", "", ""};
    return {OnDisk::Kind::unreadable, "", "", document.path().string() + " " + reason(*failure) + "."};
  }
  std::string& text = std::get<std::string>(read);
  const std::string checksum = sha256(text);
  if (checksum == document.checksum()) return {OnDisk::Kind::same, "", checksum, ""};
  return {OnDisk::Kind::changed, std::move(text), checksum, ""};
}

std::vector<fs::path> inputs(const Document& document) {
  BoardFile file;
  if (!document.path().empty()) file.read_from = read_board(document.path().string()).read_from;
  file.board = document.board();
  return inputs_of(file);
}

fs::path free_name(const fs::path& path) {
  const auto taken = [](const fs::path& name) {
    std::error_code unknown;
    return fs::symlink_status(name, unknown).type() != fs::file_type::not_found;
  };
  const std::string stem = path.stem().string() + "-mine";
  fs::path name = path.parent_path() / (stem + ".toml");
  for (int i = 2; taken(name); ++i) name = path.parent_path() / (stem + "-" + std::to_string(i) + ".toml");
  return name;
}

}  // namespace sagitta::viewer
