#include "rules/Fix.hpp"

#include <charconv>
#include <cmath>

#include "board/Fields.hpp"

namespace sagitta {
namespace {

/// What a fix changes.
struct Target {
  const Field* field = nullptr;
  const Table* table = nullptr;
  std::size_t index = 0;
};

Target target_of(const Board& board, const std::string& key) {
  Target target{find_field(key), nullptr, 0};
  if (!target.field) return {};
  target.table = find_table(target.field->table);
  if (const std::size_t open = key.find('['); open != std::string::npos)
    std::from_chars(key.data() + open + 1, key.data() + key.size(), target.index);
  const bool there = target.table->form == TableForm::extra || target.index < row_count(board, *target.table);
  const Kind kind = target.field->kind;
  const bool number = kind == Kind::length || kind == Kind::pair || kind == Kind::integer || kind == Kind::number ||
                      kind == Kind::angle;
  return there && number ? target : Target{};
}

}  // namespace

bool can_apply(const Board& board, const Fix& fix) {
  const Target target = target_of(board, fix.key);
  return target.field && target.field->range.holds(fix.value);
}

Board apply(Board board, const Fix& fix) {
  if (!can_apply(board, fix)) return board;
  const Target target = target_of(board, fix.key);
  if (row_count(board, *target.table) == 0) set_row_count(board, *target.table, 1);
  const bool whole = target.field->kind == Kind::integer;
  const Value value = whole ? Value(static_cast<int>(std::lround(fix.value))) : Value(fix.value);
  target.field->access.set(row(board, *target.table, target.index), value);
  return board;
}

}  // namespace sagitta
