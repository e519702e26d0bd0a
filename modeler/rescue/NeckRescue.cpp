/// A board that was cut narrower than its neck.

#include <algorithm>
#include <cmath>

#include "layout/Measure.hpp"
#include "neck/NeckWidth.hpp"
#include "plane/Tolerance.hpp"
#include "rescue/Ways.hpp"

namespace sagitta {
namespace {

/// The thinnest strip that a board file can have as its binding, mm: the range of binding.width.
constexpr double thinnest = 0.2;

/// By how much the neck, after trimming, is wider than the board where that is most: over both sides.
double lack_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const double trim = board.neck && board.neck->state == NeckState::rough ? 2 * board.neck->trim : 0;
  double lack = 0;
  const auto look = [&](double x) {
    if (const auto neck = neck_width(ready, x)) lack = std::max(lack, *neck - trim - 2 * ready.layout().half_width(x));
  };
  look(0);
  for (const FretLine& line : ready.layout().frets) look(line.middle.x);
  look(board.neck ? board.neck->body_at.value_or(ready.layout().heel_end) : 0);
  return lack;
}

}  // namespace

/// A strip on each long edge: as thick as the lack, and the board is over it as wide as the neck.
void neck_ways(Ways& ways) {
  const Board& board = ways.planned();
  if (!ways.ready() || board.measured.widths.empty() || !ways.has_finding("board-narrower-than-neck")) return;
  const double stretch = std::hypot(1, ways.ready()->layout().half_width_slope);
  const double strip = std::max(thinnest, lack_of(*ways.ready()) / 2 / stretch);
  std::vector<Place2> widths = board.measured.widths;
  for (Place2& each : widths) each[1] += 2 * strip * stretch;
  Way way;
  way.name = "binding";
  way.edits = {{"binding.width", (board.binding ? board.binding->width : 0) + strip}, {"measured.widths", widths}};
  way.message = "glue a strip " + in_units(board, strip) + " thick to each long edge";
  way.cost = std::string("two strips") + (board.binding ? ", beside the binding" : ", and a bound board") +
             "; the slots end at them";
  way.effort = WayEffort::pieces;
  way.figures = {{"strip", strip, "mm"}};
  ways.offer(std::move(way));
}

}  // namespace sagitta
