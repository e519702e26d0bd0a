#include "program/NamedBoard.hpp"

#include <iostream>

#include "board/SourceText.hpp"
#include "files/ReadFile.hpp"

namespace sagitta {
namespace {

/// Standard input, read once: at most one byte more than a board file may have.
const std::string& input_text() {
  static const std::string text = [] {
    std::string read(largest_file + 1, '\0');
    std::cin.read(read.data(), static_cast<std::streamsize>(read.size()));
    read.resize(static_cast<std::size_t>(std::cin.gcount()));
    return read;
  }();
  return text;
}

}  // namespace

BoardFile read_named_board(const std::string& name, Outside outside) {
  if (name != standard_input) return read_board(name, outside);
  if (input_text().size() <= largest_file) return read_board_text(input_text(), name, "", outside);
  BoardFile file;
  file.file = name;
  file.problems.push_back(
      {FaultCode::too_many, name, 1, 1, "", "the text on standard input is longer than 1 MiB", "is it a board file?"});
  return file;
}

std::string text_of_board(const std::string& name) {
  if (name == standard_input) return input_text();
  auto read = read_file(name, largest_file);
  return std::holds_alternative<std::string>(read) ? std::get<std::string>(std::move(read)) : std::string();
}

}  // namespace sagitta
