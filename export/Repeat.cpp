#include "export/Repeat.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "export/SetUp.hpp"

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
                {"operation", part.operation ? operation_word(*part.operation) : ""}};
  if (part.clearance) words["clearance"] = *part.clearance;
  return words;
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
  const Paper* paper = paper_named(options.at("paper").get<std::string>());
  if (!paper) throw RepeatError("there is no paper \"" + options.at("paper").get<std::string>() + "\"");
  order.drawing = {options.at("dowels").get<bool>(), *paper, {}};
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
  if (!order.drawing.part.whole()) options["part"] = part_json(order.drawing.part);
  return options;
}

bool names_manifest(const std::string& path) { return std::filesystem::path(path).extension() == ".json"; }

Repeat read_manifest(const std::string& path) try {
  const Json manifest = Json::parse(text_of(path));
  const std::string folder = std::filesystem::path(path).parent_path().string();
  return {read_board_text(manifest.at("board").get<std::string>(), path, folder.empty() ? "." : folder),
          order_of(manifest.at("options"))};
} catch (const Json::exception&) {
  throw RepeatError(path + " is not the manifest.json of a folder that `sagitta export` made, or it was changed");
} catch (const RepeatError& error) {
  throw RepeatError(path + ": " + error.what());
}

BoardFile read_board_or_manifest(const std::string& path) {
  return names_manifest(path) ? read_manifest(path).file : read_board(path);
}

}  // namespace sagitta
