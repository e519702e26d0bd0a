#pragma once

/// A board with nothing to find, and ways to look at what is found on its relatives.

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <stdexcept>

#include "findings/Findings.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta::test {

inline constexpr double inch = 25.4;

/// Scale 25.5 in, 22 frets, 55.56 mm wide everywhere, 6.35 thick, 12 in radius, 1/4 in dots.
inline Board good_board() {
  Board board;
  board.scale.length = 25.5 * inch;
  board.scale.frets = 22;
  board.strings = {6, 46, 46, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 6.35;
  board.board.nut_width = board.board.heel_width = 55.56;
  board.surface.profile = Profile::single;
  board.surface.radius_at_nut = 12 * inch;
  board.nut.seat = NutSeat::slot;
  board.wire.tang_depth = 1.6;
  board.slots.width = 0.58;
  board.slots.depth = 1.95;
  Inlay dot;
  dot.frets = {3, 5, 7, 9, 12};
  dot.depth = 1.5;
  board.inlays = {dot};
  return board;
}

inline Drawn drawn(const Board& board) {
  auto drawn = draw(board);
  if (const auto* faults = std::get_if<Faults>(&drawn)) throw std::runtime_error(faults->front().message);
  return std::get<Drawn>(std::move(drawn));
}

/// A board with these inlays and no others, whatever its surface.
inline PreparedBoard with_inlays(const Board& board, const Inlays& inlays) {
  return {drawn(board), std::make_shared<const FittedInlays>(FittedInlays{{}, {}, inlays, {}})};
}

/// The board with its own inlays, whatever its surface.
inline PreparedBoard prepared(const Board& board) {
  const auto fitted = fit_inlays(board, drawn(board).layout);
  if (const auto* faults = std::get_if<Faults>(&fitted)) throw std::runtime_error(faults->front().message);
  return with_inlays(board, std::get<Inlays>(fitted));
}

inline std::vector<Finding> findings(const Board& board, const NeckReading* neck = nullptr) {
  return findings_of(prepared(board), neck);
}

/// The first finding of this name.
inline std::optional<Finding> found(const Board& board, std::string_view name, const NeckReading* neck = nullptr) {
  for (const Finding& finding : findings(board, neck))
    if (finding.name == name) return finding;
  return std::nullopt;
}

/// What the rule measures on the board whether good or not: with a limit that nothing meets. Lengths in mm.
inline double measured(Board board, std::string_view name) {
  const auto entry = std::find_if(catalogue.begin(), catalogue.end(), [&](const Rule& r) { return r.name == name; });
  board.limits[std::string(name)] = entry->bar == Bar::most ? -1e6 : 1e6;
  const auto finding = found(board, name);
  if (!finding) throw std::runtime_error("not measured: " + std::string(name));
  return finding->value;
}

/// Half a unit of a printed value's last digit.
inline constexpr double printed2 = 0.005, printed4 = 0.00005;

}  // namespace sagitta::test
