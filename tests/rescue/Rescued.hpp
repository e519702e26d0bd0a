#pragma once

/// Ways out as tests look at them.

#include <algorithm>
#include <stdexcept>

#include "board/BoardFile.hpp"
#include "board/Writer.hpp"
#include "findings/GoodBoard.hpp"
#include "rescue/Ways.hpp"

namespace sagitta::test {

/// Agreement with answers that are worked out by hand or by scanning, mm.
inline constexpr double agree = 1e-6;

inline const Way* named(const std::vector<Way>& ways, std::string_view name) {
  const auto at = std::find_if(ways.begin(), ways.end(), [&](const Way& way) { return way.name == name; });
  return at == ways.end() ? nullptr : &*at;
}

inline double number(const Way& way, std::string_view key) {
  for (const Edit& edit : way.edits)
    if (edit.key == key) return std::get<double>(edit.value);
  throw std::runtime_error("no edit of " + std::string(key));
}

inline double figure(const Way& way, std::string_view what) {
  for (const WayFigure& each : way.figures)
    if (each.what == what) return each.value;
  throw std::runtime_error("no figure " + std::string(what));
}

/// Every way proves itself here once more: the edited board reads, is built, and no finding says stop.
inline std::vector<Way> ways_of(const Board& board) {
  const std::vector<Way> ways = ways_out(board);
  for (const Way& way : ways) {
    const Board next = edited(board, way.edits);
    EXPECT_TRUE(read_board_text(write_board(next), "next.toml", "").sound()) << way.name;
    const auto prepared = prepare(next);
    const auto* ready = std::get_if<PreparedBoard>(&prepared);
    EXPECT_TRUE(ready) << way.name;
    if (!ready) continue;
    EXPECT_TRUE(ready->stage_faults().empty()) << way.name;
    for (const Finding& finding : findings_of(*ready))
      EXPECT_NE(finding.severity, Severity::stop) << way.name << ": " << finding.name;
  }
  return ways;
}

}  // namespace sagitta::test
