#include "manual/Completion.hpp"

namespace sagitta {
namespace {

/// Text between single quotes.
std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) out += (c == '\'' || c == '\\' ? std::string("\\") : std::string()) + c;
  return out + "'";
}

std::string offered(const Offer& offer) {
  std::string words;
  for (const std::string& word : offer.words) words += (words.empty() ? "" : " ") + word;
  switch (offer.kind) {
    case Offer::Kind::files:
      return " -F";
    case Offer::Kind::folders:
      return " -f -a '(__fish_complete_directories)'";
    case Offer::Kind::words:
      return " -f -a " + quoted(words);
    case Offer::Kind::nothing:
      break;
  }
  return " -f";
}

std::string lines_of(const CommandRow& command, const std::string& begin) {
  std::string text;
  for (const OptionRow& row : command.options) {
    text += begin;
    for (const std::string& name : row.names)
      text += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
    if (!row.value.empty()) text += " -r" + offered(row.offer);
    text += " -d " + quoted(first_clause(row.help)) + "\n";
  }
  // Places share one offer: the shell does not count them.
  if (!command.places.empty()) text += begin + offered(command.places.front().offer) + "\n";
  return text;
}

}  // namespace

std::string fish_completion(const ProgramTable& program) {
  const std::string &name = program.self.name, begin = "complete -c " + name;
  std::string text =
      "# Completion of " + name + " for fish, written by `" + name + " --manual fish`.\n" + begin + " -f\n";
  if (program.commands.empty()) return text + lines_of(program.self, begin);
  const std::string first = begin + " -n __fish_use_subcommand";
  text += lines_of(program.self, first);
  for (const CommandRow& command : program.commands)
    text += first + " -a " + command.name + " -d " + quoted(first_clause(command.help)) + "\n";
  for (const CommandRow& command : program.commands)
    text += lines_of(command, begin + " -n '__fish_seen_subcommand_from " + command.name + "'");
  return text;
}

}  // namespace sagitta
