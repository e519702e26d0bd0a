#pragma once

/// The folders of settings and recovered boards.

#include <filesystem>

namespace sagitta::viewer {

/// Where settings are kept: $XDG_CONFIG_HOME/sagitta, else ~/.config/sagitta.
std::filesystem::path settings_folder();
/// Where recovery copies are kept: $XDG_STATE_HOME/sagitta, else ~/.local/state/sagitta.
std::filesystem::path state_folder();
/// The user's own folder, else the root.
std::filesystem::path home_folder();

}  // namespace sagitta::viewer
