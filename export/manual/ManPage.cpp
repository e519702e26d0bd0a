#include "manual/ManPage.hpp"

#include <algorithm>
#include <cctype>
#include <sstream>
#include <utility>

namespace sagitta {
namespace {

/// What roff reads as an escape is made plain.
std::string roff_inside(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
  }
  return out;
}

/// The same at the beginning of a line, where a request could stand.
std::string roff(const std::string& text) {
  const bool request = text.starts_with('.') || text.starts_with('\'');
  return (request ? "\\&" : "") + roff_inside(text);
}

/// Running text in lines that an editor shows whole; none begins like a request.
std::string folded(const std::string& text) {
  constexpr std::size_t longest = 78;
  std::istringstream words(text);
  std::string out, line;
  for (std::string word; words >> word;) {
    if (!line.empty() && line.size() + 1 + roff(word).size() > longest) out += std::exchange(line, "") + "\n";
    line += line.empty() ? roff(word) : " " + roff_inside(word);
  }
  return out + line;
}

std::string bold(const std::string& text) { return "\\fB" + roff(text) + "\\fR"; }
std::string italic(const std::string& text) { return "\\fI" + roff(text) + "\\fR"; }

std::string upper(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return text;
}

std::string tag_of(const OptionRow& row, bool place) {
  if (place) return italic(row.names.front());
  std::string tag;
  for (const std::string& name : row.names) tag += (tag.empty() ? "" : ", ") + bold(name);
  return tag + (row.value.empty() ? "" : " " + italic(row.value));
}

std::string sentence(const std::string& help) { return help + (help.empty() || help.back() == '.' ? "" : "."); }

std::string rows_text(const std::vector<OptionRow>& rows, bool places) {
  std::string text;
  for (const OptionRow& row : rows) {
    text += ".TP\n" + tag_of(row, places) + "\n" + folded(sentence(row.help)) + "\n";
    if (!row.standard.empty()) text += folded("Without it: " + row.standard + ".") + "\n";
  }
  return text;
}

/// "check BOARD... [options]"
std::string call_of(const CommandRow& command, const std::string& before) {
  std::string text = bold(before + command.name);
  for (const OptionRow& place : command.places) {
    const std::string word = italic(place.names.front()) + (place.repeats ? "..." : "");
    text += " " + (place.required ? word : "[" + word + "]");
  }
  for (const OptionRow& option : command.options)
    if (option.required) text += " " + tag_of(option, false);
  return text + " [" + italic("options") + "]";
}

std::string synopsis(const ProgramTable& program) {
  if (program.commands.empty()) return call_of(program.self, "") + "\n";
  std::string text;
  for (const CommandRow& command : program.commands)
    text += (text.empty() ? "" : ".br\n") + call_of(command, program.self.name + " ") + "\n";
  return text;
}

std::string command_text(const CommandRow& command) {
  return ".SS " + command.name + "\n" + folded(sentence(command.help)) + "\n" + rows_text(command.places, true) +
         rows_text(command.options, false);
}

std::string exits_text(const ProgramTable& program) {
  std::string text = program.exits.empty() ? "" : ".SH EXIT STATUS\n";
  for (const auto& [code, meaning] : program.exits)
    text += ".TP\n" + bold(std::to_string(code)) + "\n" + folded(sentence(meaning)) + "\n";
  return text;
}

std::string examples_text(const ProgramTable& program) {
  std::string text = program.examples.empty() ? "" : ".SH EXAMPLES\n";
  for (const auto& [line, what] : program.examples) text += ".TP\n" + bold(line) + "\n" + folded(sentence(what)) + "\n";
  return text;
}

std::string see_also_text(const ProgramTable& program) {
  std::string text;
  for (const std::string& other : program.see_also) text += (text.empty() ? "" : ",\n") + bold(other) + "(1)";
  return text.empty() ? "" : ".SH SEE ALSO\n" + text + "\n";
}

}  // namespace

std::string man_page(const ProgramTable& program) {
  const std::string& name = program.self.name;
  std::string text = ".TH " + upper(name) + " 1 " + program.date + " \"Sagitta " + program.version + "\"\n.SH NAME\n" +
                     roff(name) + " \\- " + roff(first_clause(program.self.help)) + "\n.SH SYNOPSIS\n" +
                     synopsis(program) + ".SH DESCRIPTION\n" + folded(sentence(program.self.help)) + "\n" +
                     rows_text(program.self.places, true) + ".SH OPTIONS\n" + rows_text(program.self.options, false);
  if (!program.commands.empty()) text += ".SH COMMANDS\n";
  for (const CommandRow& command : program.commands) text += command_text(command);
  return text + exits_text(program) + examples_text(program) + see_also_text(program);
}

}  // namespace sagitta
