#include "export/Repeat.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "export/BoardSources.hpp"
#include "export/Digest.hpp"
#include "export/SetUp.hpp"
#include "findings/Work.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

struct KindName {
  const char* name;
  bool HandOffKinds::*member;
};

constexpr KindName kind_names[] = {
    {"step", &HandOffKinds::step}, {"stl", &HandOffKinds::stl}, {"3mf", &HandOffKinds::three_mf},
    {"dxf", &HandOffKinds::dxf},   {"svg", &HandOffKinds::svg}, {"pdf", &HandOffKinds::pdf},
    {"csv", &HandOffKinds::csv},   {"png", &HandOffKinds::png}, {"html", &HandOffKinds::html}};

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

HandOff order_of(const Json& options) {
  HandOff order;
  for (const std::string& kind : options.at("only").get<std::vector<std::string>>()) {
    const auto known = std::find_if(std::begin(kind_names), std::end(kind_names),
                                    [&](const KindName& each) { return kind == each.name; });
    if (known == std::end(kind_names)) throw RepeatError("this program makes no " + kind + " files");
    order.kinds.*known->member = true;
  }
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
  order.step_style.schema = options.at("step") == "ap242" ? StepSchema::ap242 : StepSchema::ap214;
  order.step_style.units = options.at("step_units") == "in" ? Units::inch : Units::mm;
  return order;
}

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  if (!file) throw RepeatError(path + " cannot be read");
  return std::move(text).str();
}

/// What the manifest says that `use` makes of it; whatever is wrong is said with the manifest's name.
template <typename Use>
auto opened(const std::string& path, const Use& use) try {
  return use(Json::parse(text_of(path)));
} catch (const Json::exception&) {
  throw RepeatError(path + " is not the manifest.json of a folder that `sagitta` made, or it was changed");
} catch (const RepeatError& error) {
  throw RepeatError(path + ": " + error.what());
}

bool is_trial(const Json& manifest) { return manifest.at("options").contains("trial"); }

/// The board, with the copies of its drawings beside the manifest where it has any.
BoardFile board_in(const Json& manifest, const std::string& path) {
  std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) folder = ".";
  bool copies = false;
  for (const Json& file : manifest.at("files")) {
    if (file.at("kind") != source_kind) continue;
    copies = true;
    const std::string name = file.at("file").get<std::string>();
    const std::string what = "its copy of what the board was made from, " + name;
    if (!std::filesystem::exists(folder / name))
      throw RepeatError(what + ", is missing; put it back beside the manifest");
    if (sha256(text_of((folder / name).string())) != file.at("sha256").get<std::string>())
      throw RepeatError(what +
                        ", was changed since: the folder would not become the same; export the board file instead");
  }
  if (copies) folder /= source_folder;
  return read_board_text(manifest.at("board").get<std::string>(), path, folder.string());
}

}  // namespace

Json options_json(const HandOff& order) {
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

bool names_manifest(const std::string& path) { return std::filesystem::path(path).extension() == ".json"; }

Json trial_options_json(const Paper& paper) { return {{"trial", true}, {"paper", paper.name}}; }

Repeat read_manifest(const std::string& path) {
  return opened(path, [&](const Json& manifest) -> Repeat {
    if (is_trial(manifest)) throw RepeatError("it is a trial strip's; make that again with `sagitta trial`");
    return {board_in(manifest, path), order_of(manifest.at("options"))};
  });
}

TrialRepeat read_trial_manifest(const std::string& path) {
  return opened(path, [&](const Json& manifest) -> TrialRepeat {
    if (!is_trial(manifest)) throw RepeatError("it is a board's; make that again with `sagitta export`");
    return {board_in(manifest, path), paper_in(manifest.at("options"))};
  });
}

BoardFile read_board_or_manifest(const std::string& path) {
  if (!names_manifest(path)) return read_board(path);
  return opened(path, [&](const Json& manifest) { return board_in(manifest, path); });
}

}  // namespace sagitta
