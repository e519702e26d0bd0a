#pragma once

/// The field table: every key of a board file, once. The reader, the writer, `sagitta keys`, the reference in the
/// README and the viewer's widgets all run off it. To add a key: a member in Board.hpp and one line in Fields.cpp.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "board/Access.hpp"

namespace sagitta {

enum class Kind {
  text,        ///< any text
  colour,      ///< "#rrggbb"
  colours,     ///< fill colour -> material
  yes_no,      ///< true or false
  choice,      ///< one of `choices`
  choices,     ///< a list of them
  integer,     ///< a whole number
  integers,    ///< a list of whole numbers
  number,      ///< a bare number
  numbers,     ///< a list of bare numbers
  length,      ///< mm
  lengths,     ///< a list of lengths
  speed,       ///< mm a minute
  angle,       ///< degrees, counter-clockwise from above
  point,       ///< [x, y], mm
  points,      ///< a list of points
  pair,        ///< a length, or one for each of two places: bass and treble, or the first and the last
  depth,       ///< a length, or "through", which is infinite
  fret_width,  ///< [fret, length]
  place,       ///< [x, y, z], mm
  places,      ///< a list of [x, y, length], mm
  named,       ///< { "NAME" = length, .. }
  texts        ///< a list of texts
};

/// What a number of a field may be, in mm, degrees, or plain: least .. most, and 0 besides when `zero` says so.
struct Range {
  double least = 0;
  double most = 0;
  bool zero = false;
  constexpr bool holds(double value) const { return (value >= least && value <= most) || (zero && value == 0); }
};

struct Choice {
  std::string_view name;  ///< as written
  std::string_view also;  ///< another spelling that is read, or empty
};

enum class Need {
  no,    ///< may be left out
  yes,   ///< must be given
  form,  ///< belongs to one of several ways of saying a thing, see Forms in Rules.hpp
};

/// A key is used only where another key of the board or of the same row ("shape", "surface.profile") has one of the
/// values; with some of them it must be given. No key: always used.
struct Use {
  std::string_view key = {};
  std::string_view values = {};  ///< the values that use it, separated by spaces
  std::string_view needed = {};  ///< those of them that need it
};

struct Field {
  std::string_view table = {};  ///< "", "scale", "inlays", ...
  std::string_view key;
  Kind kind = Kind::number;
  Range range;
  std::string_view unit;      ///< of a bare number, "kg/m3"; empty where the kind says it
  std::string_view fallback;  ///< the default in words; empty when there is none
  Need need = Need::no;
  Use use;
  std::span<const Choice> choices;
  std::string_view help;  ///< one line
  Access access;

  /// "scale.length"; a key of a list of tables has no index: "inlays.depth".
  std::string dotted() const;
  bool is_length() const {
    return kind == Kind::length || kind == Kind::lengths || kind == Kind::speed || is_point() || kind == Kind::pair ||
           kind == Kind::depth || kind == Kind::fret_width || kind == Kind::named;
  }
  bool is_point() const {
    return kind == Kind::point || kind == Kind::points || kind == Kind::place || kind == Kind::places;
  }
  bool is_list() const;
};

enum class TableForm {
  top,     ///< keys before the first header
  single,  ///< [name], always there
  extra,   ///< [name], there or not
  many,    ///< [[name]]
  named,   ///< [name.NAME], one for each name
  free,    ///< [name], any keys with numbers
};

struct Table {
  std::string_view name;
  TableForm form = TableForm::single;
  std::string_view help;
};

/// All tables in the order in which they are written.
std::span<const Table> tables();
const Table* find_table(std::string_view name);

/// All fields, table by table.
std::span<const Field> fields();
std::span<const Field> fields_of(std::string_view table);
/// By "scale.length", "inlays.depth", or with indices: "inlays[2].frets[0]". Null when there is none.
const Field* find_field(std::string_view dotted);

/// Rows of a table on a board: one for a single table, none for an extra one that is not there, and so on. The rows of
/// materials stand in the order of their names.
std::size_t row_count(const Board& board, const Table& table);
Row row(Board& board, const Table& table, std::size_t index);
ConstRow row(const Board& board, const Table& table, std::size_t index);
/// Makes or drops rows of an extra table (0 or 1) or of a list of tables; does nothing for other tables.
void set_row_count(Board& board, const Table& table, std::size_t count);

/// "scale", "inlays[2]", "materials.NAME": the row's part of a dotted key. Indices count from 0.
std::string row_key(const Board& board, const Table& table, std::size_t index);

/// What a field reads as on a board or row that says nothing.
Value default_value(const Field& field);

/// Whether the choices made on this board and row use the field at all.
bool is_used(const Field& field, const Board& board, const ConstRow& row);

/// The board without what its own choices do not use: those members are put back to their defaults.
Board tidy(Board board);

}  // namespace sagitta
