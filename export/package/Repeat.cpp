#include "package/Repeat.hpp"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>

#include "board/InputPath.hpp"
#include "drawing/Paper.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "files/ReadFile.hpp"
#include "folder/Digest.hpp"
#include "folder/Manifest.hpp"
#include "package/BoardSources.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

struct KindName {
  const char* name;
  bool ExportKinds::*member;
};

constexpr KindName kind_names[] = {
    {"step", &ExportKinds::step}, {"stl", &ExportKinds::stl}, {"3mf", &ExportKinds::three_mf},
    {"dxf", &ExportKinds::dxf},   {"svg", &ExportKinds::svg}, {"pdf", &ExportKinds::pdf},
    {"csv", &ExportKinds::csv},   {"png", &ExportKinds::png}, {"html", &ExportKinds::html}};

JobPart part_in(const Json& words) {
  JobPart part;
  const std::string frets = words.at("frets").get<std::string>(), operation = words.at("operation").get<std::string>();
  if (!frets.empty()) part.frets = frets_in(frets);
  if (!operation.empty()) part.operation = operation_named(operation);
  part.pieces = words.at("pieces").get<std::set<std::string>>();
  if (words.contains("clearance")) part.clearance = words.at("clearance").get<double>();
  return part;
}

Json part_json(const JobPart& part) {
  Json words = {{"frets", words_of(part.frets)},
                {"pieces", part.pieces},
                {"operation", part.operation ? operation_name(*part.operation) : ""}};
  if (part.clearance) words["clearance"] = *part.clearance;
  return words;
}

Paper paper_in(const Json& options) {
  const std::string name = options.at("paper").get<std::string>();
  const Paper* paper = paper_named(name);
  if (!paper) throw RepeatError("there is no paper \"" + name + "\"");
  return *paper;
}

/// Whether the key holds the second of its two words.
bool one_of(const Json& options, const char* key, const char* first, const char* second) {
  const std::string word = options.at(key).get<std::string>();
  if (word != first && word != second)
    throw RepeatError(std::string(key) + " is \"" + word + "\"; it must be " + first + " or " + second);
  return word == second;
}

ExportOrder order_of(const Json& options) {
  ExportOrder order;
  for (const std::string& kind : options.at("only").get<std::vector<std::string>>())
    if (!add_kind(order.kinds, kind)) throw RepeatError("this program makes no " + kind + " files");
  for (const std::string& stage : options.at("stages").get<std::vector<std::string>>()) {
    if (const auto assembly = assembly_named(stage))
      order.assemblies.push_back(*assembly);
    else if (stage_named(stage))
      order.stages.push_back(*stage_named(stage));
    else
      throw RepeatError("there is no stage \"" + stage + "\"");
  }
  order.deviation = options.at("deviation").get<double>();
  order.drawing = {options.at("dowels").get<bool>(), paper_in(options), {}, {}};
  if (options.contains("setups")) order.drawing.setups = options.at("setups").get<std::set<std::string>>();
  if (options.contains("part")) order.drawing.part = part_in(options.at("part"));
  order.step_style.schema = one_of(options, "step", "ap214", "ap242") ? StepSchema::ap242 : StepSchema::ap214;
  order.step_style.units = one_of(options, "step_units", "mm", "in") ? Units::inch : Units::mm;
  return order;
}

void judge_format(const Json& manifest) {
  const Json& format = manifest.at("format");
  if (format == manifest_format) return;
  throw RepeatError("its format is " + format.dump() + ", and this program reads format " +
                    std::to_string(manifest_format) +
                    "; take the program that made the folder, or export the board file");
}

/// What `use` makes of what the manifest says; whatever is wrong is said with the manifest's name.
template <typename Use>
auto parsed(std::string_view text, const std::string& path, const Use& use) try {
  const Json manifest = Json::parse(text);
  judge_format(manifest);
  return use(manifest);
} catch (const Json::exception&) {
  throw RepeatError(path + " is not the manifest.json of a folder that `sagitta` made, or it was changed");
} catch (const RepeatError& error) {
  throw RepeatError(path + ": " + error.what());
}

std::string text_of(const std::string& path) {
  auto text = read_file(path, largest_manifest);
  const auto* why = std::get_if<ReadFailure>(&text);
  if (why) throw RepeatError(path + " " + reason(*why));
  return std::get<std::string>(std::move(text));
}

bool is_trial(const Json& manifest) { return manifest.at("options").contains("trial"); }

/// Throws RepeatError unless the copy lies in the folder's sources and is what the manifest says.
void judge_source(const std::string& folder, const std::string& name, const std::string& checksum, Outside outside) {
  const std::string what = "its copy of what the board was made from, " + name;
  const auto place = input_path({"copy", folder, name, folder}, outside);
  if (const auto* fault = std::get_if<Fault>(&place)) throw RepeatError(fault->message);
  if (!name.starts_with(std::string(source_folder) + "/"))
    throw RepeatError(what + ", does not lie in the folder " + source_folder);
  const auto bytes = read_file(std::get<std::string>(place), largest_source);
  const auto* why = std::get_if<ReadFailure>(&bytes);
  if (why && why->kind == Unreadable::missing)
    throw RepeatError(what + ", is missing; put it back beside the manifest");
  if (why) throw RepeatError(what + ", " + reason(*why));
  if (sha256(std::get<std::string>(bytes)) != checksum)
    throw RepeatError(what +
                      ", was changed since: the folder would not become the same; export the board file instead");
}

/// The board, with the copies of its drawings beside the manifest where it has any.
BoardFile board_in(const Json& manifest, const std::string& path, Outside outside) {
  std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) folder = ".";
  std::set<std::string> copies;
  for (const Json& file : manifest.at("files")) {
    if (file.at("kind") != source_kind) continue;
    const std::string name = file.at("file").get<std::string>();
    if (!copies.insert(name).second) throw RepeatError("it lists " + name + " twice");
    judge_source(folder.string(), name, file.at("sha256").get<std::string>(), outside);
  }
  if (!copies.empty()) folder /= source_folder;
  return read_board_text(manifest.at("board").get<std::string>(), path, folder.string(), outside);
}

}  // namespace

Json options_json(const ExportOrder& order) {
  Json only = Json::array(), stages = Json::array();
  for (const KindName& kind : kind_names)
    if (order.kinds.*kind.member) only.push_back(kind.name);
  for (const Stage stage : order.stages) stages.push_back(name(stage));
  for (const Assembly assembly : order.assemblies) stages.push_back(name(assembly));
  Json options = {{"only", only},
                  {"stages", stages},
                  {"deviation", order.deviation},
                  {"paper", order.drawing.paper.name},
                  {"dowels", order.drawing.dowels},
                  {"step", order.step_style.schema == StepSchema::ap242 ? "ap242" : "ap214"},
                  {"step_units", order.step_style.units == Units::inch ? "in" : "mm"}};
  if (!order.drawing.setups.empty()) options["setups"] = order.drawing.setups;
  if (!order.drawing.part.whole()) options["part"] = part_json(order.drawing.part);
  return options;
}

bool add_kind(ExportKinds& kinds, const std::string& name) {
  const auto known = std::find_if(std::begin(kind_names), std::end(kind_names),
                                  [&](const KindName& each) { return name == each.name; });
  if (known == std::end(kind_names)) return false;
  kinds.*known->member = true;
  return true;
}

bool names_manifest(const std::string& path) { return std::filesystem::path(path).extension() == ".json"; }

Json trial_options_json(const Paper& paper) { return {{"trial", true}, {"paper", paper.name}}; }

Repeat read_manifest_text(std::string_view text, const std::string& path, Outside outside) {
  return parsed(text, path, [&](const Json& manifest) -> Repeat {
    if (is_trial(manifest)) throw RepeatError("it is a trial strip's; make that again with `sagitta trial`");
    return {board_in(manifest, path, outside), order_of(manifest.at("options"))};
  });
}

Repeat read_manifest(const std::string& path, Outside outside) {
  return read_manifest_text(text_of(path), path, outside);
}

TrialRepeat read_trial_manifest(const std::string& path, Outside outside) {
  return parsed(text_of(path), path, [&](const Json& manifest) -> TrialRepeat {
    if (!is_trial(manifest)) throw RepeatError("it is a board's; make that again with `sagitta export`");
    return {board_in(manifest, path, outside), paper_in(manifest.at("options"))};
  });
}

BoardFile read_board_or_manifest(const std::string& path, Outside outside) {
  if (!names_manifest(path)) return read_board(path, outside);
  return parsed(text_of(path), path, [&](const Json& manifest) { return board_in(manifest, path, outside); });
}

}  // namespace sagitta
