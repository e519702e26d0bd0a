#include "package/ListedFolder.hpp"

#include <iterator>
#include <nlohmann/json.hpp>

#include "board/Writer.hpp"
#include "folder/Digest.hpp"
#include "package/BoardSources.hpp"
#include "package/Report.hpp"

namespace sagitta {

ManifestFile& ListedFolder::add(const std::string& file, const std::string& stage, const std::string& kind,
                                const std::string& bytes, std::vector<ManifestBody> bodies) {
  folder_.add(file, bytes);
  return files_.emplace_back(ManifestFile{file, stage, kind, bytes.size(), sha256(bytes), std::move(bodies), {}, {}});
}

void ListedFolder::append(ListedFolder other) {
  files_.insert(files_.end(), std::make_move_iterator(other.files_.begin()),
                std::make_move_iterator(other.files_.end()));
}

void ListedFolder::finish(const Board& board, const std::vector<Finding>& findings, const std::string& options) {
  const BoardSources sources = sources_of(board);
  for (const auto& [file, bytes] : sources.copies) add(file, "", source_kind, bytes);
  folder_.add(manifest_name,
              manifest_text({SAGITTA_VERSION, write_board(sources.board), files_, options,
                             findings_json(findings).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace),
                             board.measured.serial}));
}

}  // namespace sagitta
