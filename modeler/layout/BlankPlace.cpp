#include "layout/BlankPlace.hpp"

#include <algorithm>
#include <array>

#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double strip_margin = 3;  ///< the radius is cut this much beyond the board
constexpr double spare_at_end = 30;
constexpr double spare_at_side = 12;
constexpr double spare_above = 0.8;

Box blank_box(const Blank& spec, const Box& board) {
  const double length = spec.length.value_or(board.high.x - board.low.x + 2 * spare_at_end);
  const double width = spec.width.value_or(board.high.y - board.low.y + 2 * spare_at_side);
  const Point low = spec.at
                        ? Point{-(*spec.at)[0], -(*spec.at)[1]}
                        : Point{(board.low.x + board.high.x - length) / 2, (board.low.y + board.high.y - width) / 2};
  return {low, {low.x + length, low.y + width}};
}

struct Side {
  const char* name;
  double lack;  ///< how far the strip reaches over this side of the blank
};

void check_way(const Board& board, const char* size_key, double size, double need, std::array<Side, 2> sides,
               Faults& faults) {
  const Side worst = sides[0].lack >= sides[1].lack ? sides[0] : sides[1];
  if (worst.lack <= tolerance::same) return;
  const bool misplaced = board.blank.at && size + tolerance::same >= need;
  faults.push_back({FaultCode::blank_too_small, misplaced ? "blank.at" : size_key,
                    "the blank ends " + in_units_up(board, worst.lack) +
                        " short of the place that the radius is cut over, at its " + worst.name +
                        "; that is the board with " + in_units(board, strip_margin) + " around it, " +
                        in_units_up(board, need) + " here, and the blank measures " + in_units_down(board, size),
                    misplaced ? "move the board in the blank with blank.at"
                              : "take a blank of at least " + in_units_up(board, need) + ", or a smaller board"});
}

}  // namespace

double blank_thickness(const Board& board) {
  return board.blank.thickness.value_or(board.board.thickness + board.sanding + spare_above);
}

void place_blank(const Board& board, Layout& layout, Faults& faults) {
  const Blank& spec = board.blank;
  const Box outline = bounds(layout.outline);
  layout.strip = outline.grown(strip_margin);
  layout.blank = blank_box(spec, outline);
  const double finished = board.board.thickness + board.sanding;
  layout.blank_thickness = blank_thickness(board);
  const Box &blank = layout.blank, &strip = layout.strip;
  check_way(board, "blank.length", blank.high.x - blank.low.x, strip.high.x - strip.low.x,
            {Side{"nut end", blank.low.x - strip.low.x}, Side{"heel end", strip.high.x - blank.high.x}}, faults);
  check_way(board, "blank.width", blank.high.y - blank.low.y, strip.high.y - strip.low.y,
            {Side{"lower side", blank.low.y - strip.low.y}, Side{"upper side", strip.high.y - blank.high.y}}, faults);
  if (has_thickness(board) && thickness_to(board) > layout.blank_thickness + tolerance::same)
    faults.push_back({FaultCode::blank_too_thin, board.thickness_to ? "work.thickness_to" : "blank.thickness",
                      "the blank is " + in_units(board, layout.blank_thickness) + " thick: it cannot be milled to " +
                          in_units(board, thickness_to(board)),
                      "take a thicker blank, or make work.thickness_to smaller"});
  if (layout.blank_thickness < finished - tolerance::same)
    faults.push_back({FaultCode::blank_too_thin, "blank.thickness",
                      "the blank is " + in_units(board, layout.blank_thickness) +
                          " thick, but the board with its sanding needs " + in_units(board, finished),
                      "take a thicker blank or make the board thinner"});
}

}  // namespace sagitta
