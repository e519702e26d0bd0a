#pragma once

/// What every family of findings works on. The board must be sound, as for findings_of().

#include "polygon/BoxIndex.hpp"
#include "rules/Judge.hpp"
#include "rules/LetPiece.hpp"

namespace sagitta {

/// What the findings look at.
struct Subject {
  PreparedBoard prepared;             ///< whole
  const NeckReading* neck = nullptr;  ///< null: not looked at
  std::vector<LetPiece> let{};        ///< every piece in its pocket, in the order of the board's inlays
  BoxIndex let_places{};              ///< boxes of their pockets
};

/// "inlay 2 at fret 7".
std::string inlay_name(const Marker& marker);
/// The fix that makes the board wider by `by` at x, in the form that the board's width is written in.
std::optional<Fix> widened(const Subject& subject, double x, double by, const Judge& judge);
/// Height above the glue face of the slot's floor under a point.
double slot_floor(const Subject& subject, Point p);

/// Height of the floor of the nut's seat at p: level, or the playing surface moved down. mm.
double seat_floor(const Subject& subject, Point p);

}  // namespace sagitta
