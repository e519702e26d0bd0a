#pragma once

/// A sound board file for tests to break, one change at a time.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "board/BoardFile.hpp"

namespace sagitta::sample {

inline const std::string text =
    R"(format = 1
name = "Heron"
units = "mm"

[scale]
length = 648
frets = 22

[strings]
count = 6
nut_spread = 36
saddle_spread = 52

[board]
thickness = 6.35
edge_margin = 3.2

[surface]
profile = "compound"
radius_at_nut = 254
radius_at_heel = 406.4

[nut]
seat = "slot"

[slots]
width = 0.584

[[inlays]]
shape = "dot"
frets = [3, 5, 7, 9]
double_frets = [12]
depth = 1.5

[side_dots]
frets = [3, 5]
)";

/// The sample with one part of it replaced; the part must be there.
inline std::string with(std::string_view part, std::string_view by, std::string whole = text) {
  const std::size_t at = whole.find(part);
  EXPECT_NE(at, std::string::npos) << part;
  return at == std::string::npos ? whole : whole.replace(at, part.size(), by);
}

inline BoardFile read(std::string_view board) { return read_board_text(board, "board.toml", ""); }

inline std::string told(const std::vector<Problem>& problems) {
  std::string all;
  for (const Problem& p : problems) {
    all += p.file + ":" + std::to_string(p.line) + ":" + std::to_string(p.column) + ": " + p.key + ": " + p.message +
           " (" + p.hint + ")\n";
  }
  return all;
}

}  // namespace sagitta::sample
