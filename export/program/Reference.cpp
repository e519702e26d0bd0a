#include "program/Reference.hpp"

#include <nlohmann/json.hpp>

#include "board/Keys.hpp"
#include "input/Presets.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta {
namespace {

std::string_view bar_name(Bar bar) {
  return bar == Bar::least ? "at-least" : bar == Bar::above ? "more-than" : "at-most";
}

}  // namespace

nlohmann::ordered_json keys_json(std::string_view only) {
  nlohmann::ordered_json keys = nlohmann::ordered_json::array();
  for (const Field* field : fields_named(only))
    keys.push_back({{"key", field->dotted()},
                    {"table", field->table},
                    {"unit", unit_text(*field)},
                    {"allowed", range_text(*field)},
                    {"default", default_text(*field)},
                    {"meaning", field->help}});
  return keys;
}

nlohmann::ordered_json catalogue_json(std::string_view only) {
  nlohmann::ordered_json rules = nlohmann::ordered_json::array();
  for (const Rule& rule : catalogue)
    if (only.empty() || rule.name == only)
      rules.push_back({{"name", rule.name},
                       {"severity", severity_name(rule.severity)},
                       {"measures", rule.measures},
                       {"limit", rule.limit},
                       {"unit", rule.unit},
                       {"bar", bar_name(rule.bar)},
                       {"source", rule.source},
                       {"cost", rule.cost}});
  return rules;
}

nlohmann::ordered_json presets_json() {
  nlohmann::ordered_json all = nlohmann::ordered_json::array();
  for (const Preset& preset : presets()) {
    nlohmann::ordered_json files{std::string(preset.name) + ".toml"};
    for (const PresetDrawing& drawing : preset.drawings) files.push_back(drawing.file);
    all.push_back({{"name", preset.name}, {"summary", summary(preset)}, {"files", files}});
  }
  return all;
}

}  // namespace sagitta
