#include <iostream>
#include <nlohmann/json.hpp>

#include "board/Keys.hpp"
#include "program/Command.hpp"
#include "program/Reference.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string name;
  bool markdown = false, json = false;
};

int keys(const Options& options) {
  if (fields_named(options.name).empty()) throw UsageError(unknown("key or table", options.name, field_names()));
  if (options.json)
    std::cout << keys_json(options.name).dump(2) << "\n";
  else
    std::cout << (options.markdown ? keys_markdown() : keys_text(options.name));
  return exit_good;
}

}  // namespace

Command keys_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("keys", "Explain every key of a board file: unit, range, default, meaning.");
  CLI::Option* name = app->add_option("NAME", options->name,
                                      "Only this table (scale), this key of every table that has it (depth), or this "
                                      "key (slots.depth)");
  CLI::Option* markdown = app->add_flag("--markdown", options->markdown, "As Markdown tables")->excludes(name);
  app->add_flag("--json", options->json, "As JSON, for other programs; ranges in mm")->excludes(markdown);
  return {app, [options] { return keys(*options); }};
}

}  // namespace sagitta
