#pragma once

/// What the command line says of an export, and the order that follows from it.

#include <optional>
#include <string>
#include <vector>

#include "mesh/Mesh.hpp"
#include "package/ExportOrder.hpp"
#include "program/Command.hpp"

namespace sagitta {

struct ExportOptions {
  std::vector<std::string> boards;
  std::string to, stage, paper = "A4", step = "ap214", step_units = "mm", units;
  std::vector<std::string> only;
  double deviation = default_deviation;
  bool replace = false, refuse_stops = false, dowels = false, if_changed = false;
  bool json = false, quiet = false, verbose = false;
  Outside outside = Outside::refused;
  std::string frets, operation;
  std::vector<std::string> pieces, setups;
  std::optional<double> clearance;
  bool chosen = false;  ///< anything was said about how the folder is to be made
};

/// Adds the options that say what is exported and in which form; `options` must live as long as the command.
void add_export_options(CLI::App& app, ExportOptions& options);

/// Whether one of the options was given whose values a manifest keeps: they do not go with one.
bool says_how(const CLI::App& app);

/// Throws UsageError for a word that names no kind of file.
ExportKinds kinds_named(const std::vector<std::string>& only);

/// Throws UsageError for what the board has not.
ExportOrder order_of(const ExportOptions& options, const PreparedBoard& ready);

}  // namespace sagitta
