#include "program/ProgramManual.hpp"

#include "board/Keys.hpp"
#include "input/Presets.hpp"
#include "manual/Manual.hpp"
#include "program/Command.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta {
namespace {

std::vector<std::string> preset_names() {
  std::vector<std::string> names;
  for (const Preset& preset : presets()) names.emplace_back(preset.name);
  return names;
}

std::vector<std::string> finding_names() {
  std::vector<std::string> names;
  for (const Rule& rule : catalogue) names.emplace_back(rule.name);
  return names;
}

Offer words(std::vector<std::string> all) { return {Offer::Kind::words, std::move(all)}; }

}  // namespace

Offers program_offers() {
  const Offer file{Offer::Kind::files, {}}, folder{Offer::Kind::folders, {}};
  return {{"BOARD", file},
          {"A", file},
          {"B", file},
          {"--to", folder},
          {"new PRESET", words(preset_names())},
          {"keys NAME", words(field_names())},
          {"findings NAME", words(finding_names())},
          {"--units", words({"mm", "in"})},
          {"--step-units", words({"mm", "in"})},
          {"--step", words({"ap214", "ap242"})},
          {"--paper", words({"A4", "A3", "Letter", "Tabloid"})},
          {"--only", words({"step", "stl", "3mf", "dxf", "svg", "pdf", "csv", "png", "html"})},
          {"--stage", words({"blank", "thicknessed", "pocketed", "radiused", "slotted", "board", "finished", "pieces",
                             "inlaid", "job"})},
          {"--operation", words({"thickness", "pockets", "inlay", "radius", "slots", "outline"})},
          {"--before", words({"thickness", "pockets", "inlay", "radius", "slots", "outline"})},
          {"--manual", words(manual_forms())}};
}

ProgramTable program_table(const CLI::App& program) {
  ProgramTable table = table_of(program, program_offers());
  table.version = SAGITTA_VERSION;
  table.date = SAGITTA_DATE;
  for (const ExitMeaning& exit : exit_meanings) table.exits.emplace_back(exit.code, exit.meaning);
  table.examples = {{"sagitta new heron-six > my-board.toml", "A board to start from"},
                    {"sagitta check my-board.toml", "What is wrong with it, before wood is cut"},
                    {"sagitta export my-board.toml --to my-board", "The folder for the machine and the bench"}};
  table.see_also = {"sagitta-viewer"};
  return table;
}

}  // namespace sagitta
