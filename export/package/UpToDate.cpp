#include "package/UpToDate.hpp"

#include <map>
#include <nlohmann/json.hpp>

#include "board/Writer.hpp"
#include "files/ReadFile.hpp"
#include "folder/Digest.hpp"
#include "folder/FolderState.hpp"
#include "folder/Manifest.hpp"
#include "package/BoardSources.hpp"
#include "package/Repeat.hpp"

namespace sagitta {
namespace {

nlohmann::json manifest_in(const std::filesystem::path& folder) {
  const auto read = read_file(folder / manifest_name, largest_manifest);
  const auto* text = std::get_if<std::string>(&read);
  return text ? nlohmann::json::parse(*text, nullptr, false) : nlohmann::json();
}

/// Checksums of the copies that the folder holds of what the board was read with.
std::map<std::string, std::string> copies_in(const nlohmann::json& manifest) {
  std::map<std::string, std::string> copies;
  for (const nlohmann::json& file : manifest.value("files", nlohmann::json::array()))
    if (file.value("kind", "") == source_kind) copies[file.value("file", "")] = file.value("sha256", "");
  return copies;
}

}  // namespace

bool is_up_to_date(const std::filesystem::path& folder, const PreparedBoard& ready, const ExportOrder& order) {
  if (look_at_folder(folder, {}).kind != FolderState::Kind::ours) return false;
  const nlohmann::json manifest = manifest_in(folder);
  if (!manifest.is_object() || manifest.value("version", "") != SAGITTA_VERSION) return false;
  const BoardSources sources = sources_of(ready.planned());
  std::map<std::string, std::string> copies;
  for (const auto& [file, bytes] : sources.copies) copies[file] = sha256(bytes);
  return manifest.value("board", "") == write_board(sources.board) &&
         manifest.value("options", nlohmann::json()) == nlohmann::json(options_json(order)) &&
         copies_in(manifest) == copies;
}

}  // namespace sagitta
