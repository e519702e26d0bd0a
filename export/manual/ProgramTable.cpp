#include "manual/ProgramTable.hpp"

#include <CLI/CLI.hpp>

namespace sagitta {
namespace {

Offer offer_of(const Offers& offers, const std::string& command, const std::string& name) {
  for (const std::string& key : {command + " " + name, name})
    if (const auto found = offers.find(key); found != offers.end()) return found->second;
  return {};
}

/// The type's name alone: the parser adds to it what it checks.
std::string value_word(const CLI::Option& option) {
  const std::string name = option.get_type_name();
  return name.substr(0, name.find(':'));
}

OptionRow row_of(const CLI::Option& option, const std::string& command, const Offers& offers) {
  OptionRow row;
  if (option.get_positional()) row.names = {option.get_name(true)};
  for (const std::string& name : option.get_snames()) row.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) row.names.push_back("--" + name);
  const bool flag = option.get_items_expected_max() == 0;
  if (!flag) row.value = option.get_positional() ? row.names.front() : value_word(option);
  row.help = option.get_description();
  row.standard = option.get_default_str();
  row.offer = offer_of(offers, command, row.names.back());
  row.required = option.get_required();
  row.repeats = option.get_items_expected_max() > 1;
  return row;
}

CommandRow command_row(const CLI::App& app, const Offers& offers) {
  CommandRow command{app.get_name(), app.get_description(), {}, {}};
  for (const CLI::Option* option : app.get_options())
    (option->get_positional() ? command.places : command.options).push_back(row_of(*option, command.name, offers));
  return command;
}

}  // namespace

ProgramTable table_of(const CLI::App& program, const Offers& offers) {
  ProgramTable table;
  table.self = command_row(program, offers);
  for (const CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; }))
    table.commands.push_back(command_row(*command, offers));
  return table;
}

std::string first_clause(const std::string& help) {
  std::size_t end = help.size();
  for (const char* mark : {". ", ": ", "; "}) end = std::min(end, help.find(mark));
  if (end > 0 && end == help.size() && help.back() == '.') --end;
  return help.substr(0, end);
}

}  // namespace sagitta
