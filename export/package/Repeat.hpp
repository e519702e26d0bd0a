#pragma once

/// The order for an export read back from a manifest, and written into one.

#include <nlohmann/json_fwd.hpp>
#include <stdexcept>
#include <string>
#include <string_view>

#include "board/BoardFile.hpp"
#include "drawing/Paper.hpp"
#include "package/ExportOrder.hpp"

namespace sagitta {

/// A manifest that cannot be read; what() says why, in a builder's words.
struct RepeatError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// What a manifest says of how its folder was made.
struct Repeat {
  BoardFile file;  ///< the board in it; its problems, if any, carry the manifest's name
  ExportOrder order;
};

/// The same of a trial strip's folder.
struct TrialRepeat {
  BoardFile file;
  Paper paper;
};

/// Adds a kind by its name, "step" or "3mf"; false when there is none of that name.
bool add_kind(ExportKinds& kinds, const std::string& name);

/// How a folder is made, as a manifest holds it: {only, stages, deviation, paper, dowels, step, step_units}.
nlohmann::ordered_json options_json(const ExportOrder& order);
/// The same of a trial strip: {trial, paper}.
nlohmann::ordered_json trial_options_json(const Paper& paper);

/// Whether a path names a manifest rather than a board file: it ends in ".json".
bool names_manifest(const std::string& path);

/// Reads the manifest of a hand-off folder, of which a stranger may have written every word; the board's drawings are
/// the copies beside it. Throws RepeatError, also where one of the copies is missing or no longer what the manifest
/// says, or the folder is a trial strip's, or a later program's. What the board has not is for judge_order to refuse.
/// `outside`: whether the board's files may lie outside the folder.
Repeat read_manifest(const std::string& path, Outside outside = Outside::refused);
/// The same of a text, as if it stood in the file `path`.
Repeat read_manifest_text(std::string_view text, const std::string& path, Outside outside = Outside::refused);

/// Reads the manifest of a trial strip's folder. Throws RepeatError as read_manifest does.
TrialRepeat read_trial_manifest(const std::string& path, Outside outside = Outside::refused);

/// The board of a board file or of a manifest of either kind. Throws RepeatError.
BoardFile read_board_or_manifest(const std::string& path, Outside outside = Outside::refused);

}  // namespace sagitta
