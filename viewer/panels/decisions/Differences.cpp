#include "decisions/Differences.hpp"

#include <algorithm>
#include <set>

namespace sagitta::viewer {

namespace {

void compare_rows(const Table& table, std::size_t i, const Board& here, const Board& there, const Manner& manner,
                  std::vector<Difference>& out) {
  const bool in_here = i < row_count(here, table), in_there = i < row_count(there, table);
  const std::string prefix = row_key(in_here ? here : there, table, i);
  if (in_here != in_there) return out.push_back({prefix, in_here ? "there" : "none", in_there ? "there" : "none"});
  const ConstRow a = row(here, table, i), b = row(there, table, i);
  for (const Field& field : fields_of(table.name)) {
    const Value x = field.access.get(a), y = field.access.get(b);
    if (x == y) continue;
    const auto word = [&](const Value& v) {
      const std::string text = shown_value(field, v, manner);
      return text.empty() ? std::string("not given") : text;
    };
    out.push_back({(prefix.empty() ? "" : prefix + ".") + std::string(field.key), word(x), word(y)});
  }
}

std::string material_words(const std::map<std::string, Material>& all, const std::string& name) {
  const auto found = all.find(name);
  if (found == all.end()) return "not given";
  std::string words;
  const auto add = [&](const std::string& part) { words += (words.empty() ? "" : ", ") + part; };
  if (found->second.density) add(shown_number(*found->second.density) + " kg/m\u00b3");
  if (!found->second.colour.empty()) add(found->second.colour);
  if (found->second.kind) add("kind " + std::to_string(static_cast<int>(*found->second.kind)));
  return words.empty() ? "as built in" : words;
}

/// Entries of two maps by name, where one lacks it or gives it otherwise.
template <class Map, class Words>
void compare_named(const Map& here, const Map& there, const std::string& table, const Words& words,
                   std::vector<Difference>& out) {
  std::set<std::string> names;
  for (const Map* map : {&here, &there})
    for (const auto& [name, value] : *map) names.insert(name);
  for (const std::string& name : names) {
    const auto a = here.find(name), b = there.find(name);
    if (a != here.end() && b != there.end() && a->second == b->second) continue;
    out.push_back({table + "." + name, words(here, name), words(there, name)});
  }
}

}  // namespace

std::vector<Difference> differences(const Board& here, const Board& there, const Manner& manner) {
  std::vector<Difference> out;
  for (const Table& table : tables()) {
    if (table.form == TableForm::free) continue;
    const std::size_t rows = std::max(row_count(here, table), row_count(there, table));
    for (std::size_t i = 0; i < rows; ++i) compare_rows(table, i, here, there, manner, out);
  }
  compare_named(here.materials, there.materials, "materials", material_words, out);
  const auto limit = [](const auto& all, const std::string& name) {
    const auto found = all.find(name);
    return found == all.end() ? std::string("not given") : shown_number(found->second);
  };
  compare_named(here.limits, there.limits, "limits", limit, out);
  return out;
}

}  // namespace sagitta::viewer
