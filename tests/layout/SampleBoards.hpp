#pragma once

/// Boards that the tests of layout and surface start from.

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

#include "layout/Layout.hpp"

namespace sagitta::samples {

/// Scale 400 with frets in octaves, so that they fall on 200, 300, 350, 375 exactly; 56 wide, from x = -8 to 384.
inline Board octaves() {
  Board board;
  board.name = "octaves";
  board.scale.length = 400;
  board.scale.frets = 4;
  board.scale.cents = {1200, 2400, 3600, 4800};
  board.strings.count = 4;
  board.strings.nut_spread = 50;
  board.strings.saddle_spread = 50;
  board.board.thickness = 6.5;
  board.board.edge_margin = 3;
  board.board.behind_nut = 8;
  board.board.past_last_fret = 9;
  board.surface.profile = Profile::single;
  board.surface.radius_at_nut = 240;
  board.slots.width = 0.5;
  board.slots.depth = 2;
  return board;
}

/// Seven strings, 24 frets, fret 7 square, shelf, heel parallel to the last fret.
inline Board fan() {
  Board board = octaves();
  board.name = "fan";
  board.scale = {};
  board.scale.bass = 686;
  board.scale.treble = 648;
  board.scale.square_fret = 7;
  board.scale.frets = 24;
  board.strings.count = 7;
  board.strings.nut_spread = 48;
  board.strings.saddle_spread = 63;
  board.board.thickness = 6.35;
  board.board.edge_margin = 3.2;
  board.board.behind_nut = 6;
  board.board.past_last_fret = 7;
  board.board.heel = Heel::fret;
  board.surface.profile = Profile::compound;
  board.surface.radius_at_nut = 254;
  board.surface.radius_at_heel = 406.4;
  board.nut.seat = NutSeat::shelf;
  board.nut.depth = 3;
  board.slots.width = 0.584;
  return board;
}

/// Eight strings on a steep fan: the nut line slants by 40 mm.
inline Board steep_fan() {
  Board board = octaves();
  board.name = "steep fan";
  board.scale = {};
  board.scale.bass = 720;
  board.scale.treble = 640;
  board.scale.square_fret = 12;
  board.scale.frets = 20;
  board.strings.count = 8;
  board.strings.nut_spread = 52;
  board.strings.saddle_spread = 70;
  board.board.thickness = 7;
  board.board.behind_nut = 12;
  board.board.past_last_fret = 30;
  board.surface.profile = Profile::string_line;
  board.surface.radius_at_nut = 305;
  board.surface.fall_from_fret = 14;
  board.surface.fall = 0.4;
  board.nut.seat = NutSeat::slot;
  board.nut.width = 4;
  board.nut.depth = 2.5;
  board.slots.width = 0.6;
  board.slots.depth = 2.1;
  board.slots.floor = SlotFloor::level;
  return board;
}

/// The layout of a board that has no fault; a test failure with the faults otherwise.
inline Layout sound(const Board& board) {
  auto result = lay_out(board);
  if (auto* layout = std::get_if<Layout>(&result)) return *layout;
  for (const Fault& fault : std::get<Faults>(result)) ADD_FAILURE() << fault.key << ": " << fault.message;
  throw std::runtime_error("no layout for " + board.name);
}

/// The keys that a board's faults name, in order.
inline std::vector<std::string> keys(const Faults& faults) {
  std::vector<std::string> names;
  for (const Fault& fault : faults) {
    EXPECT_FALSE(fault.message.empty()) << fault.key;
    names.push_back(fault.key);
  }
  return names;
}

inline std::vector<std::string> fault_keys(const Board& board) {
  const auto result = lay_out(board);
  const auto* faults = std::get_if<Faults>(&result);
  return faults ? keys(*faults) : std::vector<std::string>{};
}

}  // namespace sagitta::samples
