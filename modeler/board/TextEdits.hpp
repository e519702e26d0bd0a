#pragma once

/// Edits to a TOML text, collected by place and made all at once.

#include <string>
#include <string_view>
#include <vector>

#include "board/Node.hpp"

namespace sagitta {

class TextEdits {
 public:
  explicit TextEdits(std::string_view text);

  /// Byte of the text at a spot.
  std::size_t offset(TextPosition spot) const;
  /// The character at a spot, 0 behind the end.
  char at(TextPosition spot) const;
  std::size_t line_start(TextPosition spot) const;
  /// Behind the line break that ends the line of this byte.
  std::size_t line_end(std::size_t offset) const;
  /// Behind the last byte of the TOML value that begins at a spot.
  std::size_t value_end(TextPosition spot) const;

  void replace_value(TextPosition spot, std::string value);
  void remove_lines(std::size_t from, std::size_t to);
  /// Whole lines, put in at the beginning of a line.
  void insert(std::size_t offset, std::string lines);
  /// A table for the end of the text, with a blank line before it.
  void append(std::string lines);

  std::string applied() const;

 private:
  struct Change {
    std::size_t from, to;
    std::string text;
  };
  std::string_view text_;
  std::vector<std::size_t> lines_;  ///< where each line begins
  std::vector<Change> changes_;
  std::string tail_;
};

}  // namespace sagitta
