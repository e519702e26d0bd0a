#include "board/Node.hpp"

#include <toml++/toml.h>

#include <algorithm>

#include "board/Fields.hpp"
#include "board/LineSlip.hpp"

namespace sagitta {
namespace {

TextPosition spot_of(const toml::source_position& position) {
  return {static_cast<int>(position.line), static_cast<int>(position.column)};
}

Node converted(const toml::node& from, int level) {
  Node node;
  node.spot = spot_of(from.source().begin);
  node.level = level;
  if (const auto* table = from.as_table()) {
    for (const auto& [key, child] : *table) {
      node.entries.push_back({std::string(key.str()), spot_of(key.source().begin), converted(child, level)});
    }
    std::ranges::stable_sort(node.entries, {}, &Entry::spot);
  } else if (const auto* array = from.as_array()) {
    node.type = Node::Type::array;
    for (const auto& child : *array) node.items.push_back(converted(child, level));
  } else if (const auto* text = from.as_string()) {
    node.type = Node::Type::text;
    node.value = text->get();
  } else if (const auto* integer = from.as_integer()) {
    node.type = Node::Type::integer;
    node.value = integer->get();
  } else if (const auto* real = from.as_floating_point()) {
    node.type = Node::Type::real;
    node.value = real->get();
  } else if (const auto* yes = from.as_boolean()) {
    node.type = Node::Type::yes_no;
    node.value = yes->get();
  } else {
    node.type = Node::Type::date;
  }
  return node;
}

std::string_view line_of(std::string_view text, int line) {
  for (int i = 1; i < line && !text.empty(); ++i) text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  const std::string_view found = text.substr(0, text.find('\n'));
  return found.ends_with('\r') ? found.substr(0, found.size() - 1) : found;
}

std::string between_quotes(const std::string& description) {
  const std::size_t first = description.find('\'');
  const std::size_t last = description.rfind('\'');
  return first == last ? "" : description.substr(first + 1, last - first - 1);
}

bool is_list(std::string_view name) {
  const Table* table = find_table(name);
  return table != nullptr && table->form == TableForm::many;
}

/// A repeated key, told in the file's own terms and placed on the key.
Problem repeated(Problem problem, std::string_view text, const std::string& description) {
  const std::string_view line = line_of(text, problem.line);
  const std::size_t first = std::min(line.find_first_not_of(" \t"), line.size());
  const bool header = line.substr(first).starts_with("[");
  if (line.find('{') == std::string_view::npos) problem.column = static_cast<int>(first) + 1;
  problem.code = FaultCode::named_twice;
  problem.key = between_quotes(description);
  problem.message = header ? "the table [" + problem.key + "] is here for the second time"
                           : "the key " + problem.key + " is here for the second time";
  problem.hint = !header                ? "keep one of the two"
                 : is_list(problem.key) ? "write [[" + problem.key + "]], with two brackets, for each of them"
                                        : "put its keys under the first [" + problem.key + "]";
  return problem;
}

Problem syntax_problem(const toml::parse_error& error, std::string_view text, const std::string& shown_name) {
  const TextPosition spot = spot_of(error.source().begin);
  Problem problem{FaultCode::not_well_formed, shown_name, std::max(spot.line, 1), std::max(spot.column, 1), "", "", ""};
  const std::string description(error.description());
  if (description.find("cannot redefine") != std::string::npos) return repeated(problem, text, description);
  if (const auto slip = slip_in_line(line_of(text, problem.line))) {
    problem.column = slip->column;
    problem.message = slip->message;
    problem.hint = slip->hint;
    return problem;
  }
  constexpr std::string_view lead = "Error while parsing ";
  problem.message = "this is not a well-formed line: ";
  problem.message += description.starts_with(lead) ? "in the " + description.substr(lead.size()) : description;
  problem.hint = "lines are: key = value, [table] or [[table]]; texts stand in double quotes, decimals have a point";
  return problem;
}

}  // namespace

const Entry* Node::find(std::string_view key) const {
  const auto found = std::ranges::find(entries, key, &Entry::key);
  return found == entries.end() ? nullptr : &*found;
}
Entry* Node::find(std::string_view key) { return const_cast<Entry*>(std::as_const(*this).find(key)); }

bool Node::is_list_of_tables() const {
  return type == Type::array && std::ranges::all_of(items, [](const Node& item) { return item.type == Type::table; });
}

std::string_view Node::type_name() const {
  switch (type) {
    case Type::table:
      return "a table";
    case Type::array:
      return "a list";
    case Type::text:
      return "a text";
    case Type::integer:
      return "a whole number";
    case Type::real:
      return "a number";
    case Type::yes_no:
      return "true or false";
    default:
      return "a date or time";
  }
}

std::variant<Node, Problem> parse_toml(std::string_view text, const std::string& shown_name, int level) {
  try {
    return converted(toml::parse(text), level);
  } catch (const toml::parse_error& error) {
    return syntax_problem(error, text, shown_name);
  }
}

}  // namespace sagitta
