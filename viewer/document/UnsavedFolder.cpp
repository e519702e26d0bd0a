#include "document/UnsavedFolder.hpp"

#include <cstdlib>
#include <string>

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

const std::string stem = "unsaved-";

}  // namespace

fs::path make_unsaved_folder(const fs::path& state) {
  std::error_code trouble;
  fs::create_directories(state, trouble);
  std::string name = (fs::absolute(state, trouble) / (stem + "XXXXXX")).string();
  return ::mkdtemp(name.data()) ? fs::path(name) : fs::path();
}

bool is_unsaved_folder(const fs::path& state, const fs::path& folder) {
  std::error_code unknown;
  return !folder.empty() && folder.filename().string().starts_with(stem) && fs::is_directory(folder, unknown) &&
         fs::equivalent(folder.parent_path(), state, unknown);
}

void remove_unsaved_folder(const fs::path& state, const fs::path& folder) {
  std::error_code trouble;
  if (is_unsaved_folder(state, folder)) fs::remove_all(folder, trouble);
}

}  // namespace sagitta::viewer
