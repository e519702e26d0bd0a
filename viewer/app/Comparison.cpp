#include "app/Comparison.hpp"

#include <algorithm>
#include <cmath>

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

}  // namespace

std::vector<Difference> differences(const Board& here, const Board& there, const Manner& manner) {
  std::vector<Difference> out;
  for (const Table& table : tables()) {
    if (table.form == TableForm::free) continue;
    const std::size_t rows = std::max(row_count(here, table), row_count(there, table));
    for (std::size_t i = 0; i < rows; ++i) compare_rows(table, i, here, there, manner, out);
  }
  for (const auto& [name, limit] : here.limits)
    if (const auto other = there.limits.find(name); other == there.limits.end() || other->second != limit)
      out.push_back({"limits." + name, shown_number(limit),
                     other == there.limits.end() ? "not given" : shown_number(other->second)});
  return out;
}

double mark_changes(Skin& body, const Surface& other) {
  double largest = 0;
  for (SkinVertex& v : body.vertices) {
    const bool comparable = v.normal.z > 0.5f && other.exists(v.position.x, v.position.y);
    v.change = comparable ? static_cast<float>(v.position.z - other.height(v.position.x, v.position.y)) : 0;
    if (std::abs(v.change) < 0.5f * static_cast<float>(other.thickness))
      largest = std::max(largest, std::abs(static_cast<double>(v.change)));
  }
  return largest;
}

}  // namespace sagitta::viewer
