#include <algorithm>
#include <iostream>

#include "cad/Interrupt.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "folder/Folder.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "jobsheet/JobSteps.hpp"
#include "mesh/Mesh.hpp"
#include "package/BoardSources.hpp"
#include "package/HandOff.hpp"
#include "package/OrderRules.hpp"
#include "package/Repeat.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "program/Receipt.hpp"

namespace sagitta {
namespace {

constexpr const char* kind_list = "step, stl, 3mf, dxf, svg, pdf, csv, png and html";

struct Options {
  std::string board, to, stage, paper = "A4", step = "ap214", step_units = "mm", units;
  std::vector<std::string> only;
  double deviation = default_deviation;
  bool replace = false, refuse_stops = false, dowels = false;
  Outside outside = Outside::refused;
  std::string frets, operation;
  std::vector<std::string> pieces, setups;
  std::optional<double> clearance;
  bool chosen = false;  ///< anything was said about how the folder is to be made
};

ExportKinds kinds_of(const std::vector<std::string>& only) {
  if (only.empty()) return {true, true, true, true, true, true, true, true, true};
  ExportKinds kinds;
  for (const std::string& kind : only)
    if (!add_kind(kinds, kind))
      throw UsageError("--only " + kind + ": there is no such kind of file; choose from " + kind_list);
  return kinds;
}

JobPart part_wanted(const Options& options) {
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

/// What of stages and assemblies is wanted; an empty word: all.
void choose_stages(const PreparedBoard& ready, const std::string& wanted, ExportOrder& order) {
  if (wanted.empty()) {
    order.stages = stages_of(ready.board());
    order.assemblies = assemblies_of(ready);
  } else if (const auto assembly = assembly_named(wanted)) {
    order.assemblies = {*assembly};
  } else if (const auto stage = stage_named(wanted)) {
    order.stages = {*stage};
  } else {
    throw UsageError("--stage " + wanted + ": there is no such stage; sagitta export --help names them");
  }
}

/// The folders of the set-ups named, by their name or their folder's.
std::set<std::string> setups_wanted(const Options& options, const PreparedBoard& ready) {
  const std::vector<ResolvedSetup> all = setups_of(ready);
  std::set<std::string> folders;
  for (const std::string& word : options.setups) {
    const auto found = std::find_if(
        all.begin(), all.end(), [&](const ResolvedSetup& setup) { return setup.name == word || setup.folder == word; });
    if (found == all.end()) {
      std::string message = "--setups " + word + ": the board has no such set-up; it has";
      for (const ResolvedSetup& setup : all)
        message += (setup.folder == all.front().folder ? " " : ", ") + setup.folder;
      throw UsageError(message);
    }
    folders.insert(found->folder);
  }
  return folders;
}

ExportOrder order_of(const Options& options, const PreparedBoard& ready) {
  const DrawingOptions drawing{options.dowels, paper_wanted(options.paper), part_wanted(options),
                               setups_wanted(options, ready)};
  const StepStyle style{options.step == "ap242" ? StepSchema::ap242 : StepSchema::ap214,
                        options.step_units == "in" ? Units::inch : Units::mm};
  ExportOrder order;
  options.stage.empty() ? choose_stages(ready, drawing.part, order) : choose_stages(ready, options.stage, order);
  order.kinds = kinds_of(options.only);
  order.deviation = options.deviation;
  order.drawing = drawing;
  order.step_style = style;
  return order;
}

int hand_off_board(const Options& options, const Cancel& cancel) {
  kinds_of(options.only);  // wrong words come before wrong boards
  std::optional<Repeat> repeat;
  if (names_manifest(options.board)) repeat = read_manifest(options.board, options.outside);
  if (repeat && options.chosen)
    throw UsageError(options.board +
                     " says itself how its folder is made: give only --to, --replace and --refuse-stops with it");
  const BoardFile file = repeat ? repeat->file : told_in(read_board(options.board, options.outside), options.units);
  const auto prepared = prepare(file, options.outside);
  if (const auto* problems = std::get_if<std::vector<Problem>>(&prepared)) {
    std::cerr << problem_text(*problems);
    return exit_input;
  }
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  const ExportOrder order = repeat ? repeat->order : order_of(options, ready);
  judge_order(ready, order);
  part_of(ready, order.drawing.part);  // what the board has not is said before anything is written
  const std::vector<Finding> findings = board_findings(ready);
  if (options.refuse_stops && refused_for_stops(findings)) return exit_stop;
  Folder folder(options.to, options.replace, inputs_of(file));
  write_hand_off(ready, findings, order, folder, cancel);
  stop_if_wanted(cancel);
  folder.keep();
  print_receipt(options.to, folder.files(), findings);
  return exit_good;
}

/// The options whose values a manifest keeps: they do not go with one.
constexpr const char* kept_by_manifest[] = {"--only",      "--stage",  "--deviation", "--step",   "--step-units",
                                            "--paper",     "--dowels", "--frets",     "--pieces", "--clearance",
                                            "--operation", "--setups", "--units"};

/// What of the board is exported.
void add_choice(CLI::App& app, Options& options) {
  app.add_option("--only", options.only,
                 "Only these kinds of file: step (exact solids for CAM), stl and 3mf (triangles), dxf and svg "
                 "(outlines in true size), pdf (drawings and the job sheet, to print), csv (tables, as JSON too), png "
                 "(pictures of each stage), html (the job sheet); with commas between")
      ->type_name("KINDS")
      ->delimiter(',');
  app.add_option("--stage", options.stage,
                 "Only this stage: blank, pocketed, radiused, slotted, board, finished; or pieces, inlaid, job")
      ->type_name("NAME");
  app.add_option("--frets", options.frets,
                 "Only the slots of these frets and the inlays of these spaces: 9-22, or 1,3,9-12")
      ->type_name("LIST");
  app.add_option("--pieces", options.pieces, "Only these pieces: shell-03,bone-01")->type_name("NAMES")->delimiter(',');
  app.add_option("--clearance", options.clearance,
                 "With --pieces: how much room they have in their pockets, which are cut already, mm")
      ->type_name("MM")
      ->check(CLI::Range(least_clearance_again, most_clearance_again));
  app.add_option("--operation", options.operation, "Only this operation: pockets, inlay, radius, slots, outline")
      ->type_name("NAME");
  app.add_option("--setups", options.setups, "Drawings only of these set-ups, by name or folder, with commas between")
      ->type_name("NAMES")
      ->delimiter(',');
}

/// How the files are written.
void add_forms(CLI::App& app, Options& options) {
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

Paper paper_wanted(const std::string& name) {
  if (const Paper* paper = paper_named(name)) return *paper;
  throw UsageError("--paper " + name + ": there is no such paper; choose from " + paper_list);
}

Command export_command(CLI::App& program, const Cancel& cancel) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(
      "export", "Make the hand-off folder: the board at every stage of the work, and a list of what is in it.");
  app->add_option("BOARD", options->board, "The board file, or a folder's manifest.json, to make the same folder again")
      ->required();
  app->add_option("--to", options->to, "The folder to make; it must be new or empty")->type_name("DIR")->required();
  add_choice(*app, *options);
  add_forms(*app, *options);
  add_outside_flag(*app, options->outside);
  app->add_flag(
      "--replace", options->replace,
      "Put the new folder in the place of one that Sagitta made, if nothing in it was added or changed since; "
      "the old one goes when the new one is whole");
  app->add_flag("--refuse-stops", options->refuse_stops, "Write nothing, and exit with 1, when a finding says stop");
  return {app, [options, cancel, app] {
            for (const char* each : kept_by_manifest) options->chosen = options->chosen || app->count(each) > 0;
            return hand_off_board(*options, cancel);
          }};
}

}  // namespace sagitta
