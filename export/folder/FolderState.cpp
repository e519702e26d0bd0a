#include "folder/FolderState.hpp"

#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <utility>

#include "board/BoardFile.hpp"
#include "files/ReadFile.hpp"
#include "files/SystemError.hpp"
#include "folder/Digest.hpp"
#include "folder/Manifest.hpp"

namespace fs = std::filesystem;

namespace sagitta {
namespace {

using Kind = FolderState::Kind;
using Json = nlohmann::json;

struct ListedFile {
  std::size_t bytes = 0;
  std::string sha256;
};

/// What a manifest of ours says.
struct Listing {
  std::map<std::string, ListedFile> files;  ///< by name below the folder
  std::string board;
  bool trial = false;
};

std::optional<Listing> listing_in(const fs::path& folder) try {
  const auto text = read_file(folder / manifest_name, largest_manifest);
  if (!std::holds_alternative<std::string>(text)) return {};
  const Json manifest = Json::parse(std::get<std::string>(text));
  if (manifest.at("program") != manifest_program || manifest.at("format") != manifest_format) return {};
  Listing listing;
  for (const Json& file : manifest.at("files"))
    listing.files[file.at("file").get<std::string>()] = {file.at("bytes").get<std::size_t>(),
                                                         file.at("sha256").get<std::string>()};
  listing.board = read_board_text(manifest.at("board").get<std::string>(), manifest_name, folder.string()).board.name;
  listing.trial = manifest.at("options").contains("trial");
  return listing;
} catch (const Json::exception&) {
  return {};
}

/// A file whatever its name: device and number.
using Identity = std::pair<dev_t, ino_t>;

std::optional<Identity> identity(const fs::path& path) {
  struct stat found {};
  if (::stat(path.c_str(), &found) != 0) return {};
  return Identity(found.st_dev, found.st_ino);
}

bool inside(const fs::path& path, const fs::path& folder) {
  return std::mismatch(folder.begin(), folder.end(), path.begin(), path.end()).first == folder.end();
}

/// Absolute, links resolved as far as the path exists.
fs::path resolved(const fs::path& path) {
  std::error_code error;
  const fs::path result = fs::weakly_canonical(fs::absolute(path, error), error);
  return error ? path : result;
}

bool holds_work(const fs::path& folder) {
  std::error_code error;
  const fs::path here = fs::current_path(error);
  if (folder == folder.root_path() || (!error && inside(here, folder))) return true;
  const char* home = std::getenv("HOME");
  return home && *home && inside(resolved(home), folder);
}

/// One look at a folder that exists, resolved, with something in it.
class Look {
 public:
  Look(fs::path folder, const std::vector<fs::path>& inputs) : folder_(std::move(folder)) {
    for (const fs::path& input : inputs) {
      if (const auto known = identity(input)) inputs_.insert(*known);
      const fs::path where = resolved(input);
      std::error_code error;
      if (inside(where, folder_) && fs::exists(where, error)) held_.insert(where.lexically_relative(folder_).string());
    }
  }

  FolderState state() {
    const auto listing = listing_in(folder_);
    if (!walk(listing)) return {Kind::unreadable, {}, system_reason(error_.value()), "", false, 0};
    if (!held_.empty()) return told(Kind::input, held_, listing);
    if (!listing) return told(Kind::foreign, extra_, listing);
    if (!extra_.empty()) return told(Kind::extra, extra_, listing);
    const std::set<std::string> changed = changed_files(*listing);
    return told(changed.empty() ? Kind::ours : Kind::changed, changed, listing);
  }

 private:
  FolderState told(Kind kind, const std::set<std::string>& found, const std::optional<Listing>& listing) const {
    FolderState state{kind, {found.begin(), found.end()}};
    if (listing) state.board = listing->board, state.trial = listing->trial;
    state.files = files_;
    return state;
  }

  /// Without a listing only the names on top are gathered: a stranger's folder may be large. False for an error.
  bool walk(const std::optional<Listing>& listing) {
    std::set<std::string> folders;
    if (listing)
      for (const auto& [name, file] : listing->files)
        for (fs::path above = fs::path(name).parent_path(); !above.empty() && above != above.root_path();
             above = above.parent_path())
          folders.insert(above.string());
    fs::recursive_directory_iterator entry(folder_, error_), end;
    for (; !error_ && entry != end; entry.increment(error_)) {
      const std::string name = entry->path().lexically_relative(folder_).string();
      std::error_code unknown;
      const fs::file_type type = entry->symlink_status(unknown).type();
      if (type == fs::file_type::regular) see_file(entry->path(), name, listing);
      if (type != fs::file_type::regular && !(type == fs::file_type::directory && folders.contains(name))) {
        extra_.insert(name);
        if (type == fs::file_type::directory) entry.disable_recursion_pending();
      }
    }
    return !error_;
  }

  void see_file(const fs::path& path, const std::string& name, const std::optional<Listing>& listing) {
    ++files_;
    if (const auto known = identity(path); known && inputs_.contains(*known)) held_.insert(name);
    if (!listing || (name != manifest_name && !listing->files.contains(name))) extra_.insert(name);
  }

  std::set<std::string> changed_files(const Listing& listing) const {
    std::set<std::string> changed;
    for (const auto& [name, listed] : listing.files) {
      const auto bytes = read_file(folder_ / name, listed.bytes);
      const auto* failure = std::get_if<ReadFailure>(&bytes);
      if (failure && failure->kind == Unreadable::missing) continue;
      if (failure || sha256(std::get<std::string>(bytes)) != listed.sha256) changed.insert(name);
    }
    return changed;
  }

  fs::path folder_;
  std::set<Identity> inputs_;
  std::set<std::string> held_, extra_;  ///< inputs in the folder, and what no manifest lists
  std::size_t files_ = 0;
  std::error_code error_;
};

/// The first few names.
std::string some(const std::vector<std::string>& names) {
  constexpr std::size_t most = 3;
  std::string text;
  for (std::size_t i = 0; i < std::min(names.size(), most); ++i) text += (i ? ", \"" : "\"") + names[i] + "\"";
  return names.size() > most ? text + " and " + std::to_string(names.size() - most) + " more" : text;
}

}  // namespace

FolderState look_at_folder(const fs::path& path, const std::vector<fs::path>& inputs) {
  const fs::path folder = resolved(path);
  std::error_code error;
  const fs::file_status status = fs::status(folder, error);
  if (status.type() == fs::file_type::not_found) return {Kind::absent};
  if (status.type() == fs::file_type::none) return {Kind::unreadable, {}, system_reason(error.value())};
  if (!fs::is_directory(status)) return {Kind::file};
  if (holds_work(folder.has_filename() ? folder : folder.parent_path())) return {Kind::working};
  const bool empty = fs::is_empty(folder, error);
  if (error) return {Kind::unreadable, {}, system_reason(error.value())};
  return empty ? FolderState{Kind::empty} : Look(folder, inputs).state();
}

std::string why_left_alone(const FolderState& state) {
  switch (state.kind) {
    case Kind::file:
      return "there is a file of that name; name a folder";
    case Kind::working:
      return "it is the folder that you are working in, or your home, or holds one of them; name a folder below it";
    case Kind::input:
      return "it holds " + some(state.found) + ", which this board is made from; name another folder";
    case Kind::foreign:
      return "it is not empty: it holds " + some(state.found) +
             " and no manifest.json of Sagitta's; name another folder";
    case Kind::extra:
      return "it holds " + some(state.found) + ", which Sagitta did not write; move that away, or name another folder";
    case Kind::changed:
      return some(state.found) + " was changed after Sagitta wrote it; move it away, or name another folder";
    case Kind::unreadable:
      return state.reason;
    case Kind::absent:
    case Kind::empty:
    case Kind::ours:
      break;
  }
  return "";
}

}  // namespace sagitta
