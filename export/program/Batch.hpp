#pragma once

/// Several runs of the program side by side, one for each board.

#include <CLI/CLI.hpp>
#include <functional>
#include <set>
#include <string>
#include <vector>

#include "plane/Cancel.hpp"

namespace sagitta {

struct BatchResult {
  int code = 0;          ///< exit code; exit_fault when a signal ended the run
  std::string out, err;  ///< what it printed
};

/// Runs the program once with each list of words, so many at a time that all cores are busy, and waits for all. `began`
/// is called with the number of each run that begins. When the token is asked to stop, the runs are asked to stop too.
/// Throws std::runtime_error when a run cannot be started.
std::vector<BatchResult> run_side_by_side(const std::vector<std::vector<std::string>>& commands, const Cancel& cancel,
                                          const std::function<void(std::size_t)>& began);

/// The words of the options that were given, but for those named.
std::vector<std::string> repeated_options(const CLI::App& app, const std::set<std::string>& without);

/// What a board's folder is called: its file's name without .board.toml or .toml; of a manifest, its folder's name.
std::string folder_name(const std::string& board);

/// The exit code that says more: a fault of the program before a failure to write, that before a wrong board, that
/// before a finding that says stop.
int worse_of(int a, int b);

}  // namespace sagitta
