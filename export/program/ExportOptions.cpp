#include "program/ExportOptions.hpp"

#include <algorithm>

#include "drawing/BoardDrawing.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "jobsheet/JobSteps.hpp"
#include "package/OrderRules.hpp"
#include "package/Repeat.hpp"

namespace sagitta {
namespace {

constexpr const char* kind_list = "step, stl, 3mf, dxf, svg, pdf, csv, png and html";

JobPart part_wanted(const ExportOptions& options) {
  JobPart part;
  if (!options.frets.empty()) part.frets = frets_in(options.frets);
  if (!options.operation.empty()) part.operation = operation_named(options.operation);
  part.pieces.insert(options.pieces.begin(), options.pieces.end());
  if (options.clearance && part.pieces.empty())
    throw UsageError("--clearance goes with --pieces: the pockets are cut, and only the pieces named are made again");
  part.clearance = options.clearance;
  if (!part.pieces.empty() && !part.operation && part.frets.empty()) part.operation = Operation::inlay;
  return part;
}

/// The wood after the part's operation; the pieces alone where only they are made again.
void choose_stages(const PreparedBoard& ready, const JobPart& part, ExportOrder& order) {
  const std::vector<Assembly> all = assemblies_of(ready);
  if (part.operation == Operation::inlay) {
    if (all.empty()) throw UsageError("the board has no inlay pieces");
    order.assemblies = {Assembly::pieces};
  } else if (part.operation) {
    order.stages = {*stage_named(stage_after(*part.operation))};
  } else {
    order.stages = stages_of(ready.board());
    order.assemblies = all;
  }
}

/// The stage or assembly of that name alone.
void choose_stage(const std::string& wanted, ExportOrder& order) {
  if (const auto assembly = assembly_named(wanted)) {
    order.assemblies = {*assembly};
  } else if (const auto stage = stage_named(wanted)) {
    order.stages = {*stage};
  } else {
    throw UsageError("--stage " + wanted + ": there is no such stage; sagitta export --help names them");
  }
}

/// The set-up whose name or folder the words begin with, up to a comma or their end; the longest such name.
const ResolvedSetup* first_setup(const std::vector<ResolvedSetup>& all, std::string_view words, std::size_t& taken) {
  const ResolvedSetup* found = nullptr;
  taken = 0;
  for (const ResolvedSetup& setup : all)
    for (const std::string_view name : {std::string_view(setup.name), std::string_view(setup.folder)}) {
      const bool whole = words.size() == name.size() || (words.size() > name.size() && words[name.size()] == ',');
      if (words.starts_with(name) && whole && name.size() > taken) found = &setup, taken = name.size();
    }
  return found;
}

/// The folders of the set-ups named, by their name, which may hold a comma, or their folder's.
std::set<std::string> setups_wanted(const ExportOptions& options, const PreparedBoard& ready) {
  const std::vector<ResolvedSetup> all = setups_of(ready);
  std::set<std::string> folders;
  for (const std::string& list : options.setups) {
    for (std::string_view rest = list; !rest.empty();) {
      std::size_t taken = 0;
      const ResolvedSetup* found = first_setup(all, rest, taken);
      if (!found) {
        std::string message = "--setups " + std::string(rest) + ": the board has no such set-up; it has";
        for (const ResolvedSetup& setup : all)
          message += (setup.folder == all.front().folder ? " " : ", ") + setup.folder;
        throw UsageError(message);
      }
      folders.insert(found->folder);
      rest.remove_prefix(std::min(rest.size(), taken + 1));
    }
  }
  return folders;
}

/// The options whose values a manifest keeps: they do not go with one.
constexpr const char* kept_by_manifest[] = {"--only",      "--stage",  "--deviation", "--step",   "--step-units",
                                            "--paper",     "--dowels", "--frets",     "--pieces", "--clearance",
                                            "--operation", "--setups", "--units"};

/// What of the board is exported.
void add_choice(CLI::App& app, ExportOptions& options) {
  app.add_option("--only", options.only,
                 "Only these kinds of file: step (exact solids for CAM), stl and 3mf (triangles), dxf and svg "
                 "(outlines in true size), pdf (drawings and the job sheet, to print), csv (tables, as JSON too), png "
                 "(pictures of each stage), html (the job sheet); with commas between")
      ->type_name("KINDS")
      ->delimiter(',')
      ->allow_extra_args(false);
  app.add_option(
         "--stage", options.stage,
         "Only this stage: blank, thicknessed, pocketed, radiused, slotted, board, finished; or pieces, inlaid, job")
      ->type_name("NAME");
  app.add_option("--frets", options.frets,
                 "Only the slots of these frets and the inlays of these spaces: 9-22, or 1,3,9-12")
      ->type_name("LIST");
  app.add_option("--pieces", options.pieces, "Only these pieces: shell-03,bone-01")
      ->type_name("NAMES")
      ->delimiter(',')
      ->allow_extra_args(false);
  app.add_option("--clearance", options.clearance,
                 "With --pieces: how much room they have in their pockets, which are cut already, mm")
      ->type_name("MM")
      ->check(CLI::Range(least_clearance_again, most_clearance_again));
  app.add_option("--operation", options.operation, "Only this operation: pockets, inlay, radius, slots, outline")
      ->type_name("NAME");
  app.add_option("--setups", options.setups, "Only the papers of these set-ups, by name or folder, with commas between")
      ->type_name("NAMES")
      ->allow_extra_args(false);
}

/// How the files are written.
void add_forms(CLI::App& app, ExportOptions& options) {
  app.add_option("--deviation", options.deviation,
                 "How far the triangles of an STL may stray from the exact surface, mm")
      ->type_name("MM")
      ->check(CLI::Range(least_deviation, most_deviation))
      ->capture_default_str();
  app.add_option("--step", options.step, "The kind of STEP: ap214 or ap242")
      ->type_name("NAME")
      ->check(CLI::IsMember({"ap214", "ap242"}))
      ->capture_default_str();
  app.add_option("--step-units", options.step_units, "The unit of lengths in STEP files: mm or in")
      ->type_name("UNIT")
      ->check(CLI::IsMember({"mm", "in"}))
      ->capture_default_str();
  app.add_option("--paper", options.paper, "The paper that PDFs are printed on: A4, A3, Letter, Tabloid")
      ->type_name("NAME")
      ->capture_default_str();
  add_units_option(app, options.units, "The unit of lengths on papers and in messages; files for machines are in mm");
  app.add_flag("--dowels", options.dowels,
               "Draw holes for two dowels in the waste, for a blank that is taken off and put back on");
}

}  // namespace

void add_export_options(CLI::App& app, ExportOptions& options) {
  add_choice(app, options);
  add_forms(app, options);
}

bool says_how(const CLI::App& app) {
  return std::ranges::any_of(kept_by_manifest, [&](const char* option) { return app.count(option) > 0; });
}

ExportKinds kinds_named(const std::vector<std::string>& only) {
  if (only.empty()) return {true, true, true, true, true, true, true, true, true};
  ExportKinds kinds;
  for (const std::string& kind : only)
    if (!add_kind(kinds, kind))
      throw UsageError("--only " + kind + ": there is no such kind of file; choose from " + kind_list);
  return kinds;
}

ExportOrder order_of(const ExportOptions& options, const PreparedBoard& ready) {
  const DrawingOptions drawing{options.dowels, paper_wanted(options.paper), part_wanted(options),
                               setups_wanted(options, ready)};
  const StepStyle style{options.step == "ap242" ? StepSchema::ap242 : StepSchema::ap214,
                        options.step_units == "in" ? Units::inch : Units::mm};
  ExportOrder order;
  if (!options.stage.empty())
    choose_stage(options.stage, order);
  else if (drawing.setups.empty())
    choose_stages(ready, drawing.part, order);
  order.kinds = kinds_named(options.only);
  order.deviation = options.deviation;
  order.drawing = drawing;
  order.step_style = style;
  return order;
}

}  // namespace sagitta
