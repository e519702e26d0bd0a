#include "surface/FormCheck.hpp"

#include <algorithm>
#include <limits>
#include <numbers>

#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double least = tolerance::least_floor - tolerance::same;
constexpr int samples = 32;

/// The land must reach over half the slot's width along x, which on a fan is more than the slot's own.
void check_lands(const Board& board, const Layout& layout, Faults& faults) {
  for (const Slot& slot : layout.slots) {
    if (slot.fret < board.scallop->from_fret || slot.fret > board.scallop->to_fret) continue;
    const Point along = unit(slot.treble_end - slot.bass_end);
    const double half = slot.width / 2 / std::abs(along.y);
    if (board.scallop->land >= half - tolerance::same) continue;
    faults.push_back({FaultCode::space_too_short, "scallop.land",
                      "a land of " + in_units(board, board.scallop->land) + " is less than half the width of " +
                          slot_name(slot) + " along the board, " + in_units_up(board, half) +
                          ": the scallop would run into the slot",
                      "make scallop.land at least " + in_units_up(board, half), id_of(slot)});
    return;
  }
}

/// A scallop falls by depth pi / width at its steepest: no hand or cutter makes one that stands more upright.
bool check_slope(const Board& board, const ScallopedSpace& space, double width, Faults& faults) {
  constexpr double steepest = 4;  // 76 degrees; common practice, no source
  const double deepest = steepest * width / std::numbers::pi;
  if (space.depth <= deepest) return true;
  faults.push_back(
      {FaultCode::space_too_short,
       "scallop.depth",
       "the scallop of space " + std::to_string(space.fret) + " is " + in_units(board, space.depth) + " deep and " +
           in_units(board, width) + " wide between its lands: its sides are too steep to cut",
       "there it can be " + in_units(board, deepest) + " deep; use narrower lands, or scallop fewer spaces",
       {.kind = FeatureId::Kind::fret_space, .fret = space.fret}});
  return false;
}

bool check_spaces(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (const ScallopedSpace& space : surface.scallops) {
    const double width = std::min(space.width(layout.strip.low.y), space.width(layout.strip.high.y));
    if (width > tolerance::snap) {
      if (!check_slope(board, space, width, faults)) return false;
      continue;
    }
    faults.push_back({FaultCode::space_too_short,
                      "scallop.land",
                      "the lands leave no room for a scallop in space " + std::to_string(space.fret) +
                          ": between them " + in_units(board, width) + " is left",
                      "use narrower lands, or scallop fewer spaces",
                      {.kind = FeatureId::Kind::fret_space, .fret = space.fret}});
    return false;
  }
  return true;
}

/// The lowest place of a space: along its trough the playing surface is lowest at an edge.
void check_troughs(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (const ScallopedSpace& space : surface.scallops)
    for (const int side : {0, 1}) {
      const double middle = space.x(0.5, 0), y = (side == 0 ? -1 : 1) * layout.edge(side, middle);
      const double x = space.x(0.5, y), height = surface.height(x, y) - space.depth;
      if (height >= least) continue;
      faults.push_back({FaultCode::floor_too_low,
                        "scallop.depth",
                        "the scallop of space " + std::to_string(space.fret) + " leaves " +
                            in_units_down(board, height) + " of wood at an edge; the least is " +
                            in_units(board, tolerance::least_floor),
                        "scallop less deep, or use a thicker board",
                        {.kind = FeatureId::Kind::scallop, .fret = space.fret}});
      return;
    }
}

std::string edge_name(const WorkedEdge& edge) { return edge.side < 0 ? "the lower edge" : "the upper edge"; }

FeatureId id_of(const WorkedEdge& edge) {
  return {.kind = FeatureId::Kind::worked_edge, .part = edge.side < 0 ? FeatureId::lower : FeatureId::upper};
}

/// Whether it is no larger than the board's half.
bool fits(const Board& board, const WorkedEdge& edge, const LineSegment& line, Faults& faults) {
  for (const Point end : {line.a, line.b}) {
    const double room = edge.reach(end.x), need = std::max(edge.roll, edge.bevel);
    if (need <= room) continue;
    const bool roll = edge.roll > 0;
    faults.push_back({FaultCode::not_allowed, roll ? "edges.roll" : "edges.bevel",
                      std::string(roll ? "a roll of " : "a bevel of ") + in_units_up(board, need) + " is larger than " +
                          edge_name(edge) + " is away from the centre line, " + in_units(board, room),
                      "make it smaller", id_of(edge)});
    return false;
  }
  return true;
}

/// A bevel must fall more steeply than the playing surface does where it begins.
bool cuts(const Board& board, const Surface& surface, const WorkedEdge& edge, const LineSegment& line, Faults& faults) {
  if (edge.roll > 0 || surface.flat) return true;
  for (int i = 0; i <= samples; ++i) {
    const double x = between(line.a, line.b, static_cast<double>(i) / samples).x, r = surface.radius(x);
    for (const double y : {edge.reach(x) - edge.bevel, edge.reach(x)}) {
      if (edge.steepness * std::sqrt(std::max(0.0, (r - y) * (r + y))) > y) continue;
      faults.push_back({FaultCode::not_allowed, "edges.bevel_angle",
                        "at x = " + in_units(board, x) + " the playing surface falls more steeply than the bevel of " +
                            edge_name(edge) + ": it would cut nothing",
                        "use a smaller angle to the side", id_of(edge)});
      return false;
    }
  }
  return true;
}

void check_side(const Board& board, const Surface& surface, const WorkedEdge& edge, const LineSegment& line,
                Faults& faults) {
  double height = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= samples; ++i) {
    const Point p = between(line.a, line.b, static_cast<double>(i) / samples);
    height = std::min(height, surface.worked_height(edge, p).value_or(surface.height(p)));
  }
  if (height >= least) return;
  const bool roll = edge.roll > 0;
  faults.push_back({FaultCode::floor_too_low, roll ? "edges.roll" : "edges.bevel",
                    std::string(roll ? "the roll of " : "the bevel of ") + edge_name(edge) + " leaves " +
                        in_units_down(board, height) + " of the side; the least is " +
                        in_units(board, tolerance::least_floor),
                    roll ? "use a smaller roll" : "use a narrower bevel, or a larger angle", id_of(edge)});
}

/// The lowest height over a side dot's hole.
double lowest_over(const Surface& surface, const SideDot& dot) {
  double low = std::numeric_limits<double>::infinity();
  const Point aside = dot.radius * left_of(dot.inward);
  for (int i = 0; i <= samples; ++i)
    for (const double across : {-1.0, -0.5, 0.0, 0.5, 1.0})
      low = std::min(low, surface.lowest(dot.mouth + (dot.depth * i / samples) * dot.inward + across * aside));
  return low;
}

void check_holes(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (const SideDot& dot : layout.side_dots) {
    const double over = lowest_over(surface, dot) - (surface.height(dot.mouth) / 2 + dot.radius);
    if (over >= least) continue;
    faults.push_back({FaultCode::side_dot_too_large, "side_dots.diameter",
                      "the scallop or the worked edge leaves " +
                          (over > 0 ? in_units_down(board, over) + " of wood" : std::string("no wood")) +
                          " over the side dot at space " + std::to_string(dot.fret) + "; the least is " +
                          in_units(board, tolerance::least_floor),
                      "use smaller side dots, a shallower scallop, or a smaller roll or bevel", id_of(dot)});
    return;
  }
}

}  // namespace

void check_forms(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  const std::size_t before = faults.size();
  if (board.scallop) check_lands(board, layout, faults);
  if (check_spaces(board, layout, surface, faults)) check_troughs(board, layout, surface, faults);
  for (const WorkedEdge& edge : surface.worked_edges) {
    const LineSegment& line = layout.edges[edge.side < 0 ? 0 : 1];
    if (fits(board, edge, line, faults) && cuts(board, surface, edge, line, faults))
      check_side(board, surface, edge, line, faults);
    if (faults.size() != before) return;
  }
  if (faults.size() == before && !(surface.scallops.empty() && surface.worked_edges.empty()))
    check_holes(board, layout, surface, faults);
}

}  // namespace sagitta
