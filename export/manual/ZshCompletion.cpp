#include "manual/Completion.hpp"

namespace sagitta {
namespace {

/// Text between single quotes in which `marks` stand for themselves.
std::string quoted(const std::string& text, const std::string& marks) {
  std::string out;
  for (const char c : text) {
    if (c == '\'')
      out += "'\\''";
    else if (c == '\\' || marks.find(c) != std::string::npos)
      out += std::string("\\") + c;
    else
      out += c;
  }
  return out;
}

/// ":DIR:_files -/"
std::string value_part(const OptionRow& row) {
  std::string action = " ";
  if (row.offer.kind == Offer::Kind::files) action = "_files";
  if (row.offer.kind == Offer::Kind::folders) action = "_files -/";
  if (row.offer.kind == Offer::Kind::words) {
    action = "(";
    for (const std::string& word : row.offer.words) action += (action.size() > 1 ? " " : "") + word;
    action += ")";
  }
  return ":" + quoted(row.value, ":") + ":" + action;
}

std::string arguments(const CommandRow& command, const std::string& indent) {
  std::string text;
  for (const OptionRow& row : command.options)
    for (const std::string& name : row.names)
      text += " \\\n" + indent + "'" + (row.repeats ? "*" : "") + name + "[" + quoted(first_clause(row.help), "[]:") +
              "]" + (row.value.empty() ? "" : value_part(row)) + "'";
  for (std::size_t i = 0; i < command.places.size(); ++i) {
    const OptionRow& place = command.places[i];
    text += " \\\n" + indent + "'" + (place.repeats ? "*" : std::to_string(i + 1)) + (place.required ? "" : ":") +
            value_part(place) + "'";
  }
  return text;
}

std::string commands_part(const ProgramTable& program) {
  std::string text =
      " \\\n    '1:command:->command' '*::argument:->argument'\n  case $state in\n    command)\n      local -a "
      "commands=(\n";
  for (const CommandRow& command : program.commands)
    text += "        '" + command.name + ":" + quoted(first_clause(command.help), ":") + "'\n";
  text += "      )\n      _describe command commands ;;\n    argument)\n      case $words[1] in\n";
  for (const CommandRow& command : program.commands)
    text += "        " + command.name + ")\n          _arguments" + arguments(command, "            ") + " ;;\n";
  return text + "      esac ;;\n  esac\n";
}

}  // namespace

std::string zsh_completion(const ProgramTable& program) {
  const std::string& name = program.self.name;
  return "#compdef " + name + "\n# Completion of " + name + " for zsh, written by `" + name + " --manual zsh`.\n_" +
         name + "() {\n  local context state state_descr line\n  typeset -A opt_args\n  _arguments -C" +
         arguments(program.self, "    ") + (program.commands.empty() ? "\n" : commands_part(program)) + "}\n_" + name +
         " \"$@\"\n";
}

}  // namespace sagitta
