#pragma once

/// A set-up: one clamping of the blank on the machine, in its own zero. Lengths in mm.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "drawing/Drawing.hpp"
#include "layout/Layout.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct ResolvedSetup {
  int number = 1;  ///< 1, 2, ... in the file's order
  std::string name;
  std::string folder;  ///< "first-side-01": the name as a folder's, and its number
  std::vector<Operation> operations;
  Zero zero = Zero::nut;
  ZZero z_zero = ZZero::glue_face;
  Point origin;         ///< the zero, in the board's frame
  double z_origin = 0;  ///< height of the zero above the glue face
  double tape = 0;      ///< thickness under the blank
  double reclamp_error = 0;

  /// A point of the board's frame in this set-up's, and back. No turn and no mirror: a left-handed layout is one
  /// already.
  Point from_board(Point p) const { return p - origin; }
  Point to_board(Point p) const { return p + origin; }
  double z_from_board(double z) const { return z - z_origin; }
  double z_to_board(double z) const { return z + z_origin; }
};

/// A place that the machine's zero can be set on, and the way from there to the nut line on the centre line.
struct ZeroPlace {
  Zero zero = Zero::nut;
  Point at;      ///< in the board's frame
  Point to_nut;  ///< along and across
};

/// Size of a piece of wood.
struct StockSize {
  double length = 0, width = 0, thickness = 0;
};

/// Whether the board has anything for the operation to do.
bool has_work(const PreparedBoard& ready, Operation operation);

/// The set-ups that the board file names, in its order; one of all operations in the order of work, with its zero at
/// the nut and on the glue face, when it names none. Where one operation is selected, they do no other. A set-up
/// without operations is left out, but counted.
std::vector<ResolvedSetup> setups_of(const PreparedBoard& ready);

/// What is done when the file names no set-up: everything, in the order of work.
Setup whole_job(const Board& board);

/// Whether an operation's outlines are on a layer of that name.
bool is_cut_by(Operation operation, const std::string& layer);
/// Whether a layer shows where the wood lies, not what is cut.
bool is_ground(const std::string& layer);

/// Nut, the blank's lower left corner, the blank's middle.
std::vector<ZeroPlace> zero_places(const Layout& layout);

/// The blank as it was measured; where the file does not give a measure, as it is expected.
StockSize measured_blank(const Layout& layout);

/// What the machine's operator must know, a sentence each: the operations, the zero, how far it and its alternatives
/// are from the nut line, how high the blank's top and the board's are, the blank.
std::vector<std::string> setup_notes(const PreparedBoard& ready, const ResolvedSetup& setup, Units units);

/// The layers of the set-up's own operations with the blank, its centre lines, dowels, clamps and a cross at the zero,
/// in the set-up's frame; the page is the blank. Its notes are the set-up's.
Drawing setup_drawing(const PreparedBoard& ready, const ResolvedSetup& setup, const Drawing& drawing);

/// The cross at a drawing's own zero.
Layer zero_layer();

/// "nut", "corner", "centre"; "glue face", "blank's top", "bed" for reading.
std::string zero_word(Zero zero);
std::string zero_word(ZZero zero);

}  // namespace sagitta
