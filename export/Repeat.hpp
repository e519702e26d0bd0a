#pragma once

#include <nlohmann/json_fwd.hpp>
#include <stdexcept>
#include <string>

#include "export/HandOff.hpp"

namespace sagitta {

/// A manifest that cannot be read; what() says why, in a builder's words.
struct RepeatError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// What a manifest says of how its folder was made.
struct Repeat {
  BoardFile file;  ///< the board in it; its problems, if any, carry the manifest's name
  HandOff order;
};

/// How a folder is made, as a manifest holds it: {only, stages, deviation, paper, dowels, step, step_units}.
nlohmann::ordered_json options_json(const HandOff& order);

/// Whether a path names a manifest rather than a board file: it ends in ".json".
bool names_manifest(const std::string& path);

/// Reads the manifest of a hand-off folder. Throws RepeatError.
Repeat read_manifest(const std::string& path);

/// The board of a board file or of a manifest. Throws RepeatError.
BoardFile read_board_or_manifest(const std::string& path);

}  // namespace sagitta
