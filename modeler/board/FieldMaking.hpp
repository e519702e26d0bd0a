#pragma once

/// How a row of the field table is written: functions that make one, and what rows of several tables share.

#include "board/Fields.hpp"

namespace sagitta::rows {

using Words = std::string_view;

constexpr Field plain(Words table, Words key, Kind kind, Words fallback, Words help, Access access) {
  Field field;
  field.table = table;
  field.key = key;
  field.kind = kind;
  field.fallback = fallback;
  field.help = help;
  field.access = access;
  return field;
}
constexpr Field ranged(Words table, Words key, Kind kind, Range range, Words fallback, Words help, Access access) {
  Field field = plain(table, key, kind, fallback, help, access);
  field.range = range;
  return field;
}
constexpr Field length(Words table, Words key, Range range, Words fallback, Words help, Access access) {
  return ranged(table, key, Kind::length, range, fallback, help, access);
}
constexpr Field integer(Words table, Words key, Range range, Words fallback, Words help, Access access) {
  return ranged(table, key, Kind::integer, range, fallback, help, access);
}
constexpr Field choice(Words table, Words key, std::span<const Choice> choices, Words fallback, Words help,
                       Access access) {
  Field field = plain(table, key, Kind::choice, fallback, help, access);
  field.choices = choices;
  return field;
}
constexpr Field needed(Field field) {
  field.need = Need::yes;
  return field;
}
constexpr Field form(Field field) {
  field.need = Need::form;
  return field;
}
/// Used only with one of the values, and then needed.
constexpr Field needed_with(Words key, Words values, Field field) {
  field.use = {key, values, values};
  return field;
}
/// Used only with one of the values.
constexpr Field used_with(Words key, Words values, Field field) {
  field.use = {key, values, {}};
  return field;
}
/// Used with these values; needed with fewer of them.
constexpr Field used_too(Field field, Words values) {
  field.use.values = values;
  return field;
}
constexpr Field in_unit(Words unit, Field field) {
  field.unit = unit;
  return field;
}

inline constexpr Range fret_range{1, 96};
inline constexpr Range width_range{5, 600};
inline constexpr Range place_range{-1000, 5000};

}  // namespace sagitta::rows
