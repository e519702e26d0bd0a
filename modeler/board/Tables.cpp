/// The tables of the board file and their rows on a Board.

#include <algorithm>
#include <iterator>
#include <utility>

#include "board/Fields.hpp"
#include "board/SlotCut.hpp"
#include "board/Spelling.hpp"

namespace sagitta {
namespace {

constexpr Table all_tables[] = {
    {"", TableForm::top, "the board as a whole"},
    {"scale", TableForm::single, "scale lengths and frets"},
    {"strings", TableForm::single, "the strings"},
    {"board", TableForm::single, "thickness, outline and ends"},
    {"tongue", TableForm::extra, "a part beyond the body end on the treble side, with frets of its own"},
    {"surface", TableForm::single, "the playing surface"},
    {"nut", TableForm::single, "the nut and its seat"},
    {"wire", TableForm::single, "the fret wire"},
    {"slots", TableForm::single, "the fret slots"},
    {"scallop", TableForm::extra, "troughs between the frets"},
    {"edges", TableForm::extra, "the playing surface's long edges rolled or bevelled"},
    {"inlays", TableForm::many, "inlays in the top, one table for each kind of piece"},
    {"side_dots", TableForm::extra, "markers in the player's edge"},
    {"binding", TableForm::extra, "binding along both edges"},
    {"pins", TableForm::extra, "holes from below for glue-up locating pins"},
    {"cuts", TableForm::many, "cuts of your own: right through, from the top or from below"},
    {"blank", TableForm::single, "the piece of wood to start from"},
    {"finish", TableForm::single, "what happens after the machine"},
    {"work", TableForm::single, "the order of work"},
    {"setups", TableForm::many, "clampings on the machine"},
    {"cutters", TableForm::many, "the cutters in the drawer"},
    {"sheets", TableForm::many, "sheets that the pieces are cut from"},
    {"materials", TableForm::named, "materials of your own, or changes to those built in"},
    {"neck", TableForm::extra, "the neck that the board will be glued to"},
    {"height", TableForm::extra, "how high the strings are over the frets and the body"},
    {"limits", TableForm::free, "limits of findings, by the finding's name"},
    {"measured", TableForm::single, "what was measured after cutting"},
    {"notes", TableForm::many, "notes that the job sheet and the window show"},
};

template <class B, class F>
auto with_list(B& board, std::string_view name, F&& use) {
  if (name == "inlays") return use(board.inlays);
  if (name == "setups") return use(board.setups);
  if (name == "cutters") return use(board.cutters);
  if (name == "cuts") return use(board.cuts);
  if (name == "notes") return use(board.notes);
  return use(board.sheets);
}

template <class B, class F>
auto with_extra(B& board, std::string_view name, F&& use) {
  if (name == "side_dots") return use(board.side_dots);
  if (name == "binding") return use(board.binding);
  if (name == "pins") return use(board.pins);
  if (name == "tongue") return use(board.tongue);
  if (name == "scallop") return use(board.scallop);
  if (name == "edges") return use(board.edges);
  if (name == "height") return use(board.height);
  return use(board.neck);
}

template <class R, class B>
R row_of(B& board, const Table& table, std::size_t index) {
  if (table.form == TableForm::many) {
    return with_list(board, table.name, [&](auto& list) { return R(&list.at(index)); });
  }
  if (table.form == TableForm::named) return R(&std::next(board.materials.begin(), index)->second);
  return R(&board);
}

bool is_word_of(std::string_view list, std::string_view word) {
  const auto all = words(list);
  return std::ranges::find(all, word) != all.end();
}

/// The name of the value that a choice or a yes/no field has now.
std::string_view word_of(const Field& field, const ConstRow& row) {
  const Value value = field.access.get(row);
  if (const bool* yes = std::get_if<bool>(&value)) return *yes ? "true" : "false";
  if (const int* chosen = std::get_if<int>(&value)) return field.choices[*chosen].name;
  return "";
}

}  // namespace

std::span<const Table> tables() { return all_tables; }

const Table* find_table(std::string_view name) {
  const auto found = std::ranges::find(all_tables, name, &Table::name);
  return found == std::end(all_tables) ? nullptr : &*found;
}

std::span<const Field> fields_of(std::string_view table) {
  const auto all = fields();
  const auto first = std::ranges::find(all, table, &Field::table);
  const auto last = std::find_if(first, all.end(), [&](const Field& field) { return field.table != table; });
  return {first, last};
}

const Field* find_field(std::string_view dotted) {
  std::string bare;
  bool inside = false;
  for (const char c : dotted) {
    if (c == '[') inside = true;
    if (!inside) bare += c;
    if (c == ']') inside = false;
  }
  const std::size_t last = bare.rfind('.');
  const bool top = last == std::string::npos;
  const std::string table = top ? "" : bare.substr(0, bare.find('.'));
  const std::string key = top ? bare : bare.substr(last + 1);
  for (const Field& field : fields_of(table)) {
    if (field.key == key) return &field;
  }
  return nullptr;
}

std::string Field::dotted() const {
  return table.empty() ? std::string(key) : std::string(table) + "." + std::string(key);
}

bool Field::is_list() const {
  return kind == Kind::choices || kind == Kind::integers || kind == Kind::numbers || kind == Kind::lengths ||
         kind == Kind::points || kind == Kind::places || kind == Kind::texts;
}

std::size_t row_count(const Board& board, const Table& table) {
  switch (table.form) {
    case TableForm::extra:
      return with_extra(board, table.name, [](const auto& extra) { return std::size_t(extra ? 1 : 0); });
    case TableForm::many:
      return with_list(board, table.name, [](const auto& list) { return list.size(); });
    case TableForm::named:
      return board.materials.size();
    case TableForm::free:
      return 0;
    default:
      return 1;
  }
}

Row row(Board& board, const Table& table, std::size_t index) { return row_of<Row>(board, table, index); }
ConstRow row(const Board& board, const Table& table, std::size_t index) {
  return row_of<ConstRow>(board, table, index);
}

void set_row_count(Board& board, const Table& table, std::size_t count) {
  if (table.form == TableForm::many) {
    with_list(board, table.name, [&](auto& list) { list.resize(count); });
  }
  if (table.form == TableForm::extra) {
    with_extra(board, table.name, [&](auto& extra) {
      if (count == 0) extra.reset();
      if (count != 0 && !extra) extra.emplace();
    });
  }
}

std::string row_key(const Board& board, const Table& table, std::size_t index) {
  std::string key(table.name);
  if (table.form == TableForm::many) key += "[" + std::to_string(index) + "]";
  if (table.form == TableForm::named) key += "." + std::next(board.materials.begin(), index)->first;
  return key;
}

Value default_value(const Field& field) {
  Board board;
  const Table& table = *find_table(field.table);
  set_row_count(board, table, 1);
  if (table.form == TableForm::named) board.materials["x"];
  return field.access.get(row(std::as_const(board), table, 0));
}

bool is_used(const Field& field, const Board& board, const ConstRow& row) {
  if (!used_with_cut(field, slot_cut(board))) return false;
  const Use& use = field.use;
  if (use.key.empty()) return true;
  if (use.key.find('.') != std::string_view::npos) return is_word_of(use.values, word_of(*find_field(use.key), &board));
  for (const Field& other : fields_of(field.table)) {
    if (other.key == use.key) return is_word_of(use.values, word_of(other, row));
  }
  return true;
}

Board tidy(Board board) {
  for (const Table& table : tables()) {
    for (std::size_t i = 0; i < row_count(board, table); ++i) {
      const Row here = row(board, table, i);
      for (const Field& field : fields_of(table.name)) {
        if (!is_used(field, board, reading(here))) field.access.set(here, {});
      }
    }
  }
  if (board.strings.course == 1) board.strings.course_gap.reset();
  return board;
}

}  // namespace sagitta
