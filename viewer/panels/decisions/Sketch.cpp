#include "decisions/Sketch.hpp"

#include <algorithm>
#include <cstdlib>

#include "board/Fields.hpp"
#include "decisions/Decisions.hpp"
#include "layout/Taper.hpp"

namespace sagitta::viewer {

std::string Sketch::named(const std::string& key) const {
  const Field* field = find_field(key);
  const Table* table = field ? find_table(field->table) : nullptr;
  if (!field || row_of(key) >= row_count(board, *table)) return label_of_key(key);
  const std::string value = shown_value(*field, field->access.get(row(board, *table, row_of(key))), manner);
  return label_of_key(key) + ": " + (value.empty() ? "usual" : value);
}

void Sketch::width_at(double x) {
  between(on(x, -layout.edge(0, x)), on(x, layout.edge(1, x)), mm(2 * layout.half_width(x)));
}

void Sketch::margin_at(double x) {
  const double string = layout.spread(x) / 2, low = layout.edge(0, x), high = layout.edge(1, x);
  between(on(x, -low), on(x, -string), mm(low - string));
  if (low != high) between(on(x, high), on(x, string), mm(high - string));
}

void Sketch::radius_at(double x) {
  note(on(x, 0, 1), surface.flat ? "flat" : "R " + shown(surface.radius(x), manner, 1));
}

double outside(const Layout& layout) {
  const Taper taper = taper_in(layout);
  return std::max(taper.larger_edge(0), taper.larger_edge(layout.heel_end)) + 8;
}

std::size_t row_of(const std::string& key) {
  const auto open = key.find('[');
  return open == key.npos ? 0 : static_cast<std::size_t>(std::max(0, std::atoi(key.c_str() + open + 1)));
}

}  // namespace sagitta::viewer
