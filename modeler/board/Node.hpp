#pragma once

/// A parsed board file as a tree of plain values that know where they stand. The only place that knows the TOML parser.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "board/Problem.hpp"

namespace sagitta {

/// A place in a text: 1-based line and column, in code points.
struct TextPosition {
  int line = 1;
  int column = 1;
  friend auto operator<=>(const TextPosition&, const TextPosition&) = default;
};

struct Entry;

struct Node {
  enum class Type { table, array, text, integer, real, yes_no, date };
  Type type = Type::table;
  TextPosition spot;  ///< where the value begins; of a table, its header
  int level = 0;      ///< 0 for the file itself, 1 for its base, 2 for that one's base ...
  std::variant<std::monostate, std::string, std::int64_t, double, bool> value;
  std::vector<Node> items;     ///< of an array
  std::vector<Entry> entries;  ///< of a table, in the order of their keys' spots

  const Entry* find(std::string_view key) const;
  Entry* find(std::string_view key);
  bool is_list_of_tables() const;
  /// "text", "whole number", ... for messages.
  std::string_view type_name() const;
};

struct Entry {
  std::string key;
  TextPosition spot;  ///< of the key
  Node node;
};

/// The tree, or the one syntax error or repeated key that stopped the parser. The text must have been looked over.
std::variant<Node, Problem> parse_toml(std::string_view text, const std::string& shown_name, int level);

}  // namespace sagitta
