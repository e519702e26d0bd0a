#include "board/Writer.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "board/Length.hpp"
#include "board/SourceText.hpp"

namespace sagitta {
namespace {

template <class Items, class Show>
std::string list_text(const Items& items, Show&& show) {
  std::string text = "[";
  for (const auto& item : items) text += (text.size() > 1 ? ", " : "") + show(item);
  return text + "]";
}

std::string choice_text(const Field& field, int index) {
  return quoted(field.choices[static_cast<std::size_t>(index)].name);
}

std::string number_text(const Field& field, double value, Units units) {
  if (std::isinf(value)) return quoted("through");
  return field.is_length() ? length_text(value, units, field.kind == Kind::speed) : decimal(value);
}

std::string point_text(const Place2& point, Units units) {
  return "[" + length_text(point[0], units) + ", " + length_text(point[1], units) + "]";
}

std::string pair_text(const Field& field, const Place2& pair, Units units) {
  if (field.kind != Kind::fret_width) return point_text(pair, units);
  return "[" + decimal(pair[0]) + ", " + length_text(pair[1], units) + "]";
}

std::string place_text(const Place3& place, Units units) {
  return "[" + length_text(place[0], units) + ", " + length_text(place[1], units) + ", " +
         length_text(place[2], units) + "]";
}

std::string named_text(const std::map<std::string, double>& named, Units units) {
  std::string text = "{ ";
  for (const auto& [name, length] : named)
    text += (text.size() > 2 ? ", " : "") + key_text(name) + " = " + length_text(length, units);
  return text + " }";
}

std::string colours_text(const std::map<std::string, std::string>& colours) {
  std::string text = "{ ";
  for (const auto& [fill, material] : colours)
    text += (text.size() > 2 ? ", " : "") + quoted(fill) + " = " + quoted(material);
  return text + " }";
}

bool is_needed(const Field& field, const ConstRow& row) {
  if (field.need == Need::yes) return true;
  if (field.use.needed.empty()) return false;
  return !std::holds_alternative<std::monostate>(field.access.get(row));
}

std::string limits_text(const Board& board) {
  std::string text;
  for (const auto& [name, limit] : board.limits) text += key_text(name) + " = " + decimal(limit) + "\n";
  return text.empty() ? text : "[limits]\n" + text;
}

}  // namespace

std::string quoted(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      result += '\\';
      result += c;
    } else if ((c >= 0 && c < 0x20) || c == 0x7F) {
      constexpr std::string_view digits = "0123456789ABCDEF";
      result += "\\u00";
      result += digits[static_cast<std::size_t>(c >> 4)];
      result += digits[static_cast<std::size_t>(c & 15)];
    } else {
      result += c;
    }
  }
  return result + "\"";
}

std::string shown_text(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::size_t end = 0;
  while (end < text.size() && end < longest) end += std::max<std::size_t>(utf8_length(text.substr(end)), 1);
  return quoted(text.substr(0, end)) + (end < text.size() ? " .." : "");
}

std::string key_text(std::string_view key) {
  const bool bare =
      !key.empty() && key.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") ==
                          std::string_view::npos;
  return bare ? std::string(key) : quoted(key);
}

std::string length_text(double mm, Units units, bool per_minute) {
  const std::string in_mm = "\"" + decimal(mm) + (per_minute ? " mm/min\"" : " mm\"");
  const auto bare = bare_length(mm, units);
  return bare && bare->size() <= in_mm.size() ? *bare : in_mm;
}

std::string value_text(const Field& field, const Value& value, Units units) {
  if (const bool* yes = std::get_if<bool>(&value)) return *yes ? "true" : "false";
  if (const int* integer = std::get_if<int>(&value)) {
    return field.kind == Kind::choice ? choice_text(field, *integer) : std::to_string(*integer);
  }
  if (const double* number = std::get_if<double>(&value)) return number_text(field, *number, units);
  if (const auto* text = std::get_if<std::string>(&value)) return quoted(*text);
  if (const auto* point = std::get_if<Place2>(&value)) return pair_text(field, *point, units);
  if (const auto* place = std::get_if<Place3>(&value)) return place_text(*place, units);
  if (const auto* named = std::get_if<std::map<std::string, double>>(&value)) return named_text(*named, units);
  if (const auto* texts = std::get_if<std::vector<std::string>>(&value)) return list_text(*texts, quoted);
  if (const auto* places = std::get_if<std::vector<Place3>>(&value)) {
    return list_text(*places, [&](const Place3& place) { return place_text(place, units); });
  }
  if (const auto* colours = std::get_if<std::map<std::string, std::string>>(&value)) return colours_text(*colours);
  if (const auto* integers = std::get_if<std::vector<int>>(&value)) {
    return list_text(*integers,
                     [&](int i) { return field.kind == Kind::choices ? choice_text(field, i) : std::to_string(i); });
  }
  if (const auto* numbers = std::get_if<std::vector<double>>(&value)) {
    return list_text(*numbers, [&](double number) { return number_text(field, number, units); });
  }
  if (const auto* points = std::get_if<std::vector<Place2>>(&value)) {
    return list_text(*points, [&](const Place2& point) { return point_text(point, units); });
  }
  return "\"\"";
}

std::string row_text(const Board& board, const Table& table, std::size_t index) {
  const ConstRow here = row(board, table, index);
  std::string text;
  for (const Field& field : fields_of(table.name)) {
    if (field.dotted() == "base" || !is_used(field, board, here)) continue;
    const Value value = field.access.get(here);
    if (value == default_value(field) && !is_needed(field, here)) continue;
    text += std::string(field.key) + " = " + value_text(field, value, board.units) + "\n";
  }
  return text;
}

std::string header_text(const Board& board, const Table& table, std::size_t index) {
  if (table.form == TableForm::many) return "[[" + std::string(table.name) + "]]\n";
  if (table.form != TableForm::named) return "[" + std::string(table.name) + "]\n";
  return "[" + std::string(table.name) + "." +
         key_text(std::next(board.materials.begin(), static_cast<long>(index))->first) + "]\n";
}

std::string write_board(const Board& board) {
  std::string text;
  for (const Table& table : tables()) {
    if (table.form == TableForm::free && !board.limits.empty()) text += "\n" + limits_text(board);
    for (std::size_t i = 0; i < row_count(board, table); ++i) {
      const std::string lines = row_text(board, table, i);
      if (table.form == TableForm::top) {
        text += lines;
      } else if (table.form != TableForm::single || !lines.empty()) {
        text += "\n" + header_text(board, table, i) + lines;
      }
    }
  }
  return text;
}

}  // namespace sagitta
