#include "layout/DrawnEnd.hpp"

#include <algorithm>

#include "layout/ChainCrossings.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

std::nullopt_t refuse(Faults& faults, const std::string& message, const std::string& hint) {
  faults.push_back({FaultCode::end_not_crossing, "board.heel_file", message, hint, {FeatureId::Kind::heel_end}});
  return std::nullopt;
}

Loop moved(Loop chain, Point by) {
  for (CurveSegment& piece : chain) {
    piece.a = piece.a + by;
    piece.b = piece.b + by;
    if (piece.is_arc()) piece.centre = piece.centre + by;
  }
  return chain;
}

Loop toward_positive_y(Loop chain) {
  if (chain.front().a.y <= chain.back().b.y) return chain;
  std::reverse(chain.begin(), chain.end());
  for (CurveSegment& piece : chain) piece = piece.reversed();
  return chain;
}

/// A place where the line runs back toward negative y: a face of the board there would look at the nut end.
std::optional<Point> running_back(const Loop& chain) {
  constexpr int stations = 64;
  for (const CurveSegment& piece : chain)
    for (int i = 0; i <= stations; ++i) {
      const double t = static_cast<double>(i) / stations;
      if (unit(piece.slope(t)).y < -tolerance::direction) return piece.at(t);
    }
  return std::nullopt;
}

const char* edge_name(int side) { return side == 0 ? "bass" : "treble"; }

/// Where the line crosses a long edge, once.
std::optional<ChainPlace> edge_crossing(const Board& board, const Loop& chain, const Taper& taper, int side,
                                        Faults& faults) {
  const double sign = side == 0 ? -1 : 1;
  const Point on{0, sign * taper.edge(side, 0)};
  const Point end = side == 0 ? chain.front().a : chain.back().b;
  const double outside = sign * end.y - taper.edge(side, end.x);
  const std::string edge = std::string("the ") + edge_name(side) + " edge";
  if (outside <= tolerance::snap) {
    refuse(faults,
           "the drawn heel end ends " + in_units(board, -outside) + " inside " + edge +
               "; both of its ends must lie outside the long edges",
           "draw the line longer; the middle of its height lies on y = 0");
    return std::nullopt;
  }
  const std::vector<ChainPlace> at = crossings(chain, on, taper.along(side));
  if (at.size() == 1) return at.front();
  refuse(faults, "the drawn heel end crosses " + edge + " " + std::to_string(at.size()) + " times; it must cross once",
         "draw a line that crosses each long edge once");
  return std::nullopt;
}

}  // namespace

std::optional<Loop> placed_end(const Board& board, const DrawnEnd& end, const Layout& layout, const Taper& taper,
                               Faults& faults) {
  if (end.line.empty())
    return refuse(faults, "the drawing of the heel end has no line", "draw one open line from edge to edge");
  Loop chain = toward_positive_y(end.line);
  const Box box = bounds(chain);
  chain = moved(std::move(chain), {0, -(box.low.y + box.high.y) / 2});
  if (const auto back = running_back(chain))
    return refuse(faults,
                  "the drawn heel end runs back across the board near x = " + in_units(board, back->x) +
                      " of the drawing: a face there would look at the nut end",
                  "draw a line that only rises from the bass side to the treble side");
  const std::vector<ChainPlace> middle = crossings(chain, {0, 0}, {1, 0});
  if (middle.size() != 1)
    return refuse(
        faults,
        "the drawn heel end crosses the centre line " + std::to_string(middle.size()) + " times; it must cross it once",
        "draw a line that rises from the bass side to the treble side");
  chain = moved(std::move(chain), {layout.heel_end - middle.front().at.x, 0});
  const auto low = edge_crossing(board, chain, taper, 0, faults), high = edge_crossing(board, chain, taper, 1, faults);
  if (!low || !high) return std::nullopt;
  return part_of(chain, *low, *high);
}

}  // namespace sagitta
