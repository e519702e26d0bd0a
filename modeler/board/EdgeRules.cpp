/// Rules between the keys of what lies along the long edges: binding, its lines, side dots.

#include <numeric>

#include "board/Length.hpp"
#include "board/Reading.hpp"

namespace sagitta {
namespace {

void check_lines(Reading& reading) {
  const Board& board = reading.out.board;
  if (!board.binding || !reading.good("binding.lines") || !reading.good("binding.line_materials")) return;
  const std::size_t lines = board.binding->lines.size(), materials = board.binding->line_materials.size();
  if (lines == materials) return;
  if (lines == 0)
    return reading.report_key(FaultCode::not_used, "binding.line_materials",
                              "\"line_materials\" is not used here: it goes with lines", "take the line out");
  if (materials == 0 && !reading.chain.whole) return;
  reading.report_value(materials == 0 ? FaultCode::missing_key : FaultCode::wrong_count, "binding.line_materials",
                       std::to_string(lines) + (lines == 1 ? " line" : " lines") + " beside the binding, but " +
                           (materials == 0 ? "no material" : std::to_string(materials) + " materials") + " for them",
                       "give the material of each line, from the binding inward");
}

/// A hole that ends in the binding is no hole in the wood, and the other way round.
void check_dots_in(Reading& reading) {
  const Board& board = reading.out.board;
  if (!board.side_dots || !reading.good("side_dots.in") || !reading.good("side_dots.depth")) return;
  const bool in_binding = board.side_dots->in == DotIn::binding;
  if (!board.binding) {
    if (in_binding)
      reading.report_value(FaultCode::missing_key, "side_dots.in", "the board has no binding for side dots to lie in",
                           "add [binding], or write in = \"wood\"");
    return;
  }
  if (!reading.given("binding.width") || !reading.good("binding.width") || !reading.good("binding.lines")) return;
  const auto shown = [&](double mm) { return shown_length(mm, board.units); };
  const double width = board.binding->width, depth = board.side_dots->depth;
  const double ledge = std::accumulate(board.binding->lines.begin(), board.binding->lines.end(), width);
  if (in_binding && depth > width)
    reading.report_value(
        FaultCode::not_allowed, "side_dots.depth",
        "side dots " + shown(depth) + " deep go through the binding, which is " + shown(width) + " wide",
        "make side_dots.depth at most " + shown(width));
  if (!in_binding && board.binding->height == 0 && depth <= ledge)
    reading.report_value(
        FaultCode::not_allowed, "side_dots.depth",
        "side dots " + shown(depth) + " deep end in the binding, which takes " + shown(ledge) + " of the edge",
        "make side_dots.depth larger, or write in = \"binding\"");
}

}  // namespace

void check_edges(Reading& reading) {
  check_lines(reading);
  check_dots_in(reading);
}

}  // namespace sagitta
