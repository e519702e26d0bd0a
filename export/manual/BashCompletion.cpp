#include "manual/Completion.hpp"

namespace sagitta {
namespace {

/// The shell's word for it: a function's name may hold no hyphen everywhere.
std::string function_name(std::string name) {
  for (char& c : name)
    if (c == '-') c = '_';
  return "_" + name;
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

/// The commands that fill the answer for such a value.
std::string answer(const Offer& offer) {
  switch (offer.kind) {
    case Offer::Kind::files:
      return "compopt -o filenames 2> /dev/null; mapfile -t COMPREPLY < <(compgen -f -- \"$word\")";
    case Offer::Kind::folders:
      return "compopt -o filenames 2> /dev/null; mapfile -t COMPREPLY < <(compgen -d -- \"$word\")";
    case Offer::Kind::words:
      return "mapfile -t COMPREPLY < <(compgen -W '" + joined(offer.words) + "' -- \"$word\")";
    case Offer::Kind::nothing:
      break;
  }
  return ":";
}

/// One branch for each option that takes a value: what may follow it.
std::string value_branches(const CommandRow& command, const std::string& before) {
  std::string text;
  for (const OptionRow& row : command.options) {
    if (row.value.empty()) continue;
    std::string pattern;
    for (const std::string& name : row.names) pattern += (pattern.empty() ? "'" : " | '") + before + " " + name + "'";
    text += "    " + pattern + ") " + answer(row.offer) + "; return ;;\n";
  }
  return text;
}

std::string options_branch(const CommandRow& command, const std::string& pattern) {
  std::vector<std::string> names;
  for (const OptionRow& row : command.options) names.insert(names.end(), row.names.begin(), row.names.end());
  const Offer place = command.places.empty() ? Offer{} : command.places.front().offer;
  return "    " + pattern + ")\n      if [[ $word == -* ]]; then\n        " + answer({Offer::Kind::words, names}) +
         "\n      else\n        " + answer(place) + "\n      fi ;;\n";
}

std::string commands_branch(const ProgramTable& program) {
  CommandRow first = program.self;
  Offer commands{Offer::Kind::words, {}};
  for (const CommandRow& command : program.commands) commands.words.push_back(command.name);
  if (!program.commands.empty()) first.places = {{{"COMMAND"}, "COMMAND", "", "", commands, true, false}};
  return options_branch(first, "''");
}

}  // namespace

std::string bash_completion(const ProgramTable& program) {
  const std::string &name = program.self.name, function = function_name(name);
  std::string text = "# Completion of " + name + " for bash, written by `" + name + " --manual bash`.\n" + function +
                     "() {\n  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=\n"
                     "  COMPREPLY=()\n";
  if (!program.commands.empty()) text += "  if ((COMP_CWORD > 1)); then command=${COMP_WORDS[1]}; fi\n";
  text += "  case \"$command $before\" in\n" + value_branches(program.self, "");
  for (const CommandRow& command : program.commands) text += value_branches(command, command.name);
  text += "  esac\n  case $command in\n" + commands_branch(program);
  for (const CommandRow& command : program.commands) text += options_branch(command, command.name);
  return text + "  esac\n}\ncomplete -F " + function + " " + name + "\n";
}

}  // namespace sagitta
