#include "board/Keys.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <vector>

#include "board/Forms.hpp"
#include "board/Length.hpp"
#include "board/Spelling.hpp"

namespace sagitta {
namespace {

std::string replaced(std::string_view text, char from, std::string_view to) {
  std::string result;
  for (const char c : text) result += c == from ? std::string(to) : std::string(1, c);
  return result;
}

/// "a", "b" or "c" of words separated by spaces.
std::string quoted_choices(std::string_view values) {
  if (values == "true") return "true";
  std::string text = "\"" + replaced(values, ' ', "\", \"") + "\"";
  const std::size_t last = text.rfind(", ");
  return last == std::string::npos ? text : text.replace(last, 2, " or ");
}

bool has_word(std::string_view list, std::string_view word) {
  const auto all = words(list);
  return std::ranges::find(all, word) != all.end();
}

std::string listed_with(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : std::string(between)) + part;
  return text;
}

/// The group of forms that a field takes part in whatever the shape; null when there is none.
const FormGroup* group_of(const Field& field) {
  for (const FormGroup& group : form_groups()) {
    if (group.table != field.table || !group.only_with.empty()) continue;
    for (const Form& form : group.forms) {
      if (has_word(form.keys, field.key) || has_word(form.extras, field.key)) return &group;
    }
  }
  return nullptr;
}

/// The other ways of saying what this field says, in words; empty when there is none.
std::string other_forms(const Field& field, const FormGroup& group) {
  std::vector<std::string> others;
  for (const Form& form : group.forms) {
    if (has_word(form.keys, field.key) || has_word(form.extras, field.key)) continue;
    others.push_back(listed_with(words(form.keys), " and "));
  }
  return listed_with(others, ", or ");
}

/// The keys that stand with this one in a form of its group.
std::string partners_of(const Field& field) {
  for (const FormGroup& group : form_groups()) {
    for (const Form& form : group.forms) {
      auto keys = words(form.keys);
      if (group.table != field.table || std::erase(keys, field.key) == 0 || keys.empty()) continue;
      return listed_with(keys, " and ");
    }
  }
  return "";
}

std::string form_text(const Field& field) {
  const FormGroup& group = *group_of(field);
  const std::string others = other_forms(field, group);
  if (others.empty()) return "only together with " + partners_of(field);
  const bool extra =
      std::ranges::any_of(group.forms, [&](const Form& form) { return has_word(form.extras, field.key); });
  if (group.needed && !extra) return "required, or " + others;
  return (field.fallback.empty() ? "" : std::string(field.fallback) + "; ") + "not with " + others;
}

std::string heading(const Table& table) {
  switch (table.form) {
    case TableForm::top:
      return "top of the file";
    case TableForm::many:
      return "[[" + std::string(table.name) + "]]";
    case TableForm::named:
      return "[" + std::string(table.name) + ".NAME]";
    default:
      return "[" + std::string(table.name) + "]";
  }
}

using Line = std::array<std::string, 5>;

bool is_named(const Field& field, std::string_view only) {
  if (only.empty() || find_table(only)) return only.empty() || only == field.table;
  return only == field.key || only == field.dotted();
}

std::vector<Line> lines_of(const Table& table, std::string_view only = {}) {
  std::vector<Line> lines;
  for (const Field& field : fields_of(table.name)) {
    if (!is_named(field, only)) continue;
    lines.push_back(
        {std::string(field.key), unit_text(field), range_text(field), default_text(field), std::string(field.help)});
  }
  if (table.form == TableForm::free && (only.empty() || only == table.name))
    lines.push_back({"NAME", "number", "", "",
                     "another limit for the finding of this name, in the file's units where it is a length"});
  return lines;
}

/// Without an exponent: "100000000".
std::string round_number(double value) {
  const std::string shown = shown_length(value, Units::mm);
  return shown.substr(0, shown.find(' '));
}

void pad(std::string& text, std::size_t width) { text.append(width > text.size() ? width - text.size() : 0, ' '); }

}  // namespace

std::string unit_text(const Field& field) {
  switch (field.kind) {
    case Kind::length:
      return "mm";
    case Kind::lengths:
      return "list of mm";
    case Kind::speed:
      return "mm/min";
    case Kind::angle:
      return "degrees";
    case Kind::integer:
      return "whole number";
    case Kind::integers:
      return "list of whole numbers";
    case Kind::number:
      return field.unit.empty() ? "number" : std::string(field.unit);
    case Kind::numbers:
      return field.unit.empty() ? "list of numbers" : "list of " + std::string(field.unit);
    case Kind::choice:
      return "one of";
    case Kind::choices:
      return "list of";
    case Kind::yes_no:
      return "true or false";
    case Kind::point:
      return "[x, y] mm";
    case Kind::points:
      return "list of [x, y] mm";
    case Kind::pair:
      return "mm, or [mm, mm]";
    case Kind::depth:
      return "mm or \"through\"";
    case Kind::fret_width:
      return "[fret, mm]";
    case Kind::place:
      return "[x, y, z] mm";
    case Kind::places:
      return "list of [x, y, mm]";
    case Kind::named:
      return "{ \"NAME\" = mm }";
    case Kind::texts:
      return "list of texts";
    case Kind::colour:
      return "\"#rrggbb\"";
    case Kind::colours:
      return "{ \"#rrggbb\" = \"material\" }";
    default:
      return "text";
  }
}

std::string range_text(const Field& field) {
  if (!field.choices.empty()) {
    std::string text;
    for (const Choice& choice : field.choices)
      text += (text.empty() ? "" : ", ") + std::string("\"") + std::string(choice.name) + "\"";
    return text;
  }
  const Range& range = field.range;
  if (range.least == 0 && range.most == 0) return "";
  if (range.least == range.most) return round_number(range.least);
  return (range.zero ? "0, or " : "") + round_number(range.least) + " to " + round_number(range.most);
}

std::string default_text(const Field& field) {
  if (field.need == Need::yes) return "required";
  if (field.need == Need::form) return form_text(field);
  const std::string fallback(field.fallback);
  const Use& use = field.use;
  if (use.key.empty()) return fallback;
  const std::string key(use.key);
  if (!use.needed.empty()) {
    return (fallback.empty() ? "" : fallback + "; ") + "required with " + key + " = " + quoted_choices(use.needed);
  }
  return (fallback.empty() ? "" : fallback + "; ") + "only with " + key + " = " + quoted_choices(use.values);
}

std::vector<const Field*> fields_named(std::string_view only) {
  std::vector<const Field*> found;
  for (const Field& field : fields())
    if (is_named(field, only)) found.push_back(&field);
  return found;
}

std::vector<std::string> field_names() {
  std::set<std::string> names;
  for (const Table& table : tables()) names.insert(std::string(table.name));
  for (const Field& field : fields()) {
    names.insert(std::string(field.key));
    names.insert(field.dotted());
  }
  names.erase("");
  return {names.begin(), names.end()};
}

std::string keys_text(std::string_view only) {
  constexpr std::size_t indent = 22;
  std::string text;
  if (only.empty())
    text =
        "Bare numbers are in the file's units; a text may carry its own: \"25 1/2 in\", \"6.35 mm\". Ranges are in mm "
        "here.\n";
  for (const Table& table : tables()) {
    const std::vector<Line> lines = lines_of(table, only);
    if (lines.empty() && !only.empty()) continue;
    text += (text.empty() ? "" : "\n") + heading(table) + "  " + std::string(table.help) + "\n";
    for (const Line& line : lines) {
      std::string row = "  " + line[0];
      pad(row, indent);
      row += line[1] + (line[2].empty() ? "" : (line[1].ends_with("of") ? " " : ", ") + line[2]);
      if (!line[3].empty())
        row += (line[3].starts_with("required") || line[3].starts_with("only") || line[3].starts_with("not")
                    ? "; "
                    : "; default ") +
               line[3];
      text += row + "\n" + std::string(indent, ' ') + line[4] + "\n";
    }
  }
  return text;
}

std::string keys_markdown() {
  std::string text;
  for (const Table& table : tables()) {
    text += (text.empty() ? "### " : "\n### ") + (table.name.empty() ? "Top of the file" : "`" + heading(table) + "`") +
            "\n\n";
    std::string help(table.help);
    help[0] = static_cast<char>(help[0] - 'a' + 'A');
    text += help + ".\n\n| Key | Unit | Allowed | Default | Meaning |\n|---|---|---|---|---|\n";
    for (const Line& line : lines_of(table)) {
      text += "| `" + line[0] + "` |";
      for (std::size_t i = 1; i < line.size(); ++i) text += " " + replaced(line[i], '|', "\\|") + " |";
      text += "\n";
    }
  }
  return text;
}

}  // namespace sagitta
