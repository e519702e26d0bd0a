#include "document/Folders.hpp"

#include <cstdlib>

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {
/// As the XDG base directory specification has it: the variable counts only when it holds an absolute path.
fs::path base(const char* variable, const char* beneath_home) {
  const char* given = std::getenv(variable);
  if (given && fs::path(given).is_absolute()) return fs::path(given) / "sagitta";
  return home_folder() / beneath_home / "sagitta";
}
}  // namespace

fs::path settings_folder() { return base("XDG_CONFIG_HOME", ".config"); }
fs::path state_folder() { return base("XDG_STATE_HOME", ".local/state"); }
fs::path home_folder() {
  const char* home = std::getenv("HOME");
  return home && *home ? fs::path(home) : fs::path("/");
}

}  // namespace sagitta::viewer
