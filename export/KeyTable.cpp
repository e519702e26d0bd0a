#include "export/KeyTable.hpp"

#include <cstdio>

#include "board/Fields.hpp"

namespace sagitta {
namespace {

std::string number(double value) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%.10g", value);
  return value >= 1e6 ? std::to_string(static_cast<long long>(value)) : std::string(buffer);
}

std::string choices(const Field& field) {
  std::string text;
  for (const Choice& choice : field.choices) text += (text.empty() ? "\"" : ", \"") + std::string(choice.name) + "\"";
  return text;
}

std::string range(const Range& range, const std::string& unit) {
  if (range.most <= range.least) return range.most == 0 ? "" : ", only " + number(range.least);
  return ", " + number(range.least) + " to " + number(range.most) + unit + (range.zero ? ", or 0" : "");
}

/// "length, 0.1 to 300 mm".
std::string takes(const Field& field) {
  const std::string unit = field.unit.empty() ? "" : " " + std::string(field.unit);
  switch (field.kind) {
    case Kind::text:
      return "text";
    case Kind::colour:
      return "colour, \"#rrggbb\"";
    case Kind::colours:
      return "{ \"#rrggbb\" = \"material\", .. }";
    case Kind::yes_no:
      return "true or false";
    case Kind::choice:
      return choices(field);
    case Kind::choices:
      return "list of " + choices(field);
    case Kind::integer:
      return "whole number" + range(field.range, unit);
    case Kind::integers:
      return "list of whole numbers" + range(field.range, unit);
    case Kind::number:
      return "number" + range(field.range, unit);
    case Kind::numbers:
      return "list of numbers" + range(field.range, unit);
    case Kind::length:
      return "length" + range(field.range, " mm");
    case Kind::lengths:
      return "list of lengths" + range(field.range, " mm");
    case Kind::speed:
      return "length a minute" + range(field.range, " mm");
    case Kind::angle:
      return "angle" + range(field.range, " degrees");
    case Kind::point:
      return "[x, y]" + range(field.range, " mm");
    case Kind::points:
      return "[[x, y], ..]" + range(field.range, " mm");
  }
  return "";
}

/// "heel = arc or hollow".
std::string with(std::string_view key, std::string_view values) {
  std::string text(values);
  for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at + 4))
    text.replace(at, 1, " or ");
  return std::string(key) + " = " + text;
}

/// When a key counts at all, and when it must be given.
std::string condition(const Use& use) {
  if (use.values == use.needed) return "required with " + with(use.key, use.values);
  const std::string text = "only with " + with(use.key, use.values);
  return use.needed.empty() ? text : text + ", required with " + with(use.key, use.needed);
}

std::string fallback(const Field& field) {
  std::string text = field.need == Need::yes ? "required" : std::string(field.fallback);
  if (field.use.key.empty()) return text;
  return text + (text.empty() ? "" : "; ") + condition(field.use);
}

std::string header(const Table& table) {
  const std::string name(table.name);
  switch (table.form) {
    case TableForm::top:
      return "at the top of the file";
    case TableForm::many:
      return "[[" + name + "]]";
    case TableForm::named:
      return "[" + name + ".NAME]";
    default:
      return "[" + name + "]";
  }
}

std::string escaped(std::string text) {
  for (std::size_t at = text.find('|'); at != std::string::npos; at = text.find('|', at + 2)) text.insert(at, "\\");
  return text;
}

}  // namespace

std::string key_text() {
  std::string text =
      "A bare number is in the file's units; a text may carry its own: \"25 1/2 in\", \"1-11/16 in\", \"6.35 mm\".\n";
  for (const Table& table : tables()) {
    text += "\n" + header(table) + "  " + std::string(table.help) + "\n";
    for (const Field& field : fields_of(table.name)) {
      text += "  " + std::string(field.key) + "  (" + takes(field) + ")";
      const std::string otherwise = fallback(field);
      text += otherwise.empty() ? "\n" : "  [" + otherwise + "]\n";
      text += "      " + std::string(field.help) + "\n";
    }
  }
  return text;
}

std::string key_markdown() {
  std::string text;
  for (const Table& table : tables()) {
    text += (text.empty() ? "#### `" : "\n#### `") + header(table) + "`: " + std::string(table.help) + "\n\n";
    if (fields_of(table.name).empty()) continue;
    text += "| Key | Takes | Default | What it is |\n|---|---|---|---|\n";
    for (const Field& field : fields_of(table.name))
      text += "| `" + std::string(field.key) + "` | " + escaped(takes(field)) + " | " + escaped(fallback(field)) +
              " | " + escaped(std::string(field.help)) + " |\n";
  }
  return text;
}

}  // namespace sagitta
