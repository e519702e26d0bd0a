#include <iostream>
#include <nlohmann/json.hpp>

#include "program/Command.hpp"
#include "program/Reference.hpp"
#include "rules/Catalogue.hpp"
#include "rules/RuleText.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string name;
  bool markdown = false, json = false;
};

const Rule& finding_wanted(const std::string& name) {
  std::vector<std::string> names;
  for (const Rule& each : catalogue) {
    if (each.name == name) return each;
    names.emplace_back(each.name);
  }
  throw UsageError(unknown("finding", name, names));
}

int findings(const Options& options) {
  const Rule* only = options.name.empty() ? nullptr : &finding_wanted(options.name);
  if (options.json)
    std::cout << catalogue_json(options.name).dump(2) << "\n";
  else if (only)
    std::cout << rule_text(*only);
  else
    std::cout << (options.markdown ? findings_markdown() : findings_text());
  return exit_good;
}

}  // namespace

Command findings_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(
      "findings", "Explain every finding of `check`: what it measures, its limit, what ignoring it costs.");
  CLI::Option* name = app->add_option("NAME", options->name, "Only this finding");
  CLI::Option* markdown = app->add_flag("--markdown", options->markdown, "As Markdown tables")->excludes(name);
  app->add_flag("--json", options->json, "As JSON, for other programs; lengths in mm")->excludes(markdown);
  return {app, [options] { return findings(*options); }};
}

}  // namespace sagitta
