#include "rescue/Edits.hpp"

#include <charconv>
#include <utility>

#include "board/Fields.hpp"

namespace sagitta {
namespace {

std::size_t index_in(const std::string& key) {
  std::size_t index = 0;
  if (const std::size_t open = key.find('['); open != std::string::npos)
    std::from_chars(key.data() + open + 1, key.data() + key.size(), index);
  return index;
}

void make(Board& board, const Edit& edit) {
  const Field* field = find_field(edit.key);
  const Table* table = field ? find_table(field->table) : nullptr;
  if (!table) return;
  const std::size_t index = index_in(edit.key), rows = row_count(board, *table);
  if (index > rows) return;
  if (index == rows) set_row_count(board, *table, rows + 1);
  if (index < row_count(board, *table)) field->access.set(row(board, *table, index), edit.value);
}

void compare_row(const Board& from, const Board& to, const Table& table, std::size_t index, Edits& edits) {
  const std::string prefix = row_key(from, table, index);
  for (const Field& field : fields_of(table.name)) {
    const Value value = field.access.get(row(to, table, index));
    if (value != field.access.get(row(from, table, index)))
      edits.push_back({prefix + (prefix.empty() ? "" : ".") + std::string(field.key), value});
  }
}

}  // namespace

Board edited(Board board, const Edits& edits) {
  for (const Edit& edit : edits) make(board, edit);
  return board;
}

Edits edits_between(const Board& from, const Board& to) {
  Edits edits;
  for (const Table& table : tables())
    if (table.form != TableForm::named && table.form != TableForm::free)
      for (std::size_t i = 0; i < row_count(from, table); ++i) compare_row(from, to, table, i, edits);
  return edits;
}

Edits new_inlay(const Board& board, const Inlay& inlay) {
  Board with = board;
  with.inlays.push_back(inlay);
  const Table& table = *find_table("inlays");
  const ConstRow row = sagitta::row(std::as_const(with), table, board.inlays.size());
  Edits edits;
  for (const Field& field : fields_of("inlays")) {
    const Value value = field.access.get(row);
    const bool said = field.need == Need::yes || value != default_value(field);
    if (said && is_used(field, with, row) && !std::holds_alternative<std::monostate>(value))
      edits.push_back({inlay_key(board.inlays.size(), field.key), value});
  }
  return edits;
}

std::string inlay_key(std::size_t index, std::string_view key) {
  return "inlays[" + std::to_string(index) + "]." + std::string(key);
}

}  // namespace sagitta
