#include "layout/Markers.hpp"

#include <algorithm>
#include <set>

#include "layout/Measure.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The spaces of a list that the board has, each once; a fault for every other one.
std::vector<int> spaces(const std::vector<int>& list, int last, const std::string& key, std::set<int>& taken,
                        Faults& faults) {
  std::vector<int> sound;
  for (int space : list) {
    if (space < 1 || space > last)
      faults.push_back({FaultCode::no_such_fret, key,
                        "there is no space " + std::to_string(space) + ": the board has " + std::to_string(last) +
                            " frets, so its spaces are 1 to " + std::to_string(last),
                        "space 3 lies between frets 2 and 3"});
    else if (!taken.insert(space).second)
      faults.push_back({FaultCode::named_twice, key, "space " + std::to_string(space) + " is named twice",
                        "name it once, in frets or in double_frets"});
    else
      sound.push_back(space);
  }
  return sound;
}

double middle_of_space(const Layout& layout, int space) {
  const auto i = static_cast<std::size_t>(space);
  return (layout.frets[i - 1].middle.x + layout.frets[i].middle.x) / 2;
}

void check_side_dot(const Board& board, const Layout& layout, const SideDot& dot_, Faults& faults) {
  const LineSegment edge = layout.edges[0];
  const Point along = unit(edge.b - edge.a);
  const double from_nut = dot(dot_.mouth - edge.a, along), to_heel = dot(edge.b - dot_.mouth, along);
  const std::string name = "the side dot of space " + std::to_string(dot_.fret);
  if (std::min(from_nut, to_heel) <= dot_.radius + tolerance::snap)
    faults.push_back({FaultCode::side_dot_over_end, "side_dots.frets",
                      name + " reaches over the " + (from_nut < to_heel ? "nut" : "heel") + " end of the straight edge",
                      "leave it out, use smaller dots, or bring a pair closer together with side_dots.spread"});
  const Point end = dot_.mouth + dot_.depth * dot_.inward;
  if (end.y >= layout.edge(1, end.x) - std::max(dot_.radius, tolerance::least_floor))
    faults.push_back(
        {FaultCode::side_dot_through, "side_dots.depth",
         name + " is " + in_units(board, dot_.depth) + " deep and would come out at the other edge of the board",
         "make side_dots.depth smaller"});
}

/// A hole that breaks into its neighbour holds neither dot.
void check_side_dots_apart(const Board& board, std::vector<SideDot> dots, Point along, Faults& faults) {
  std::sort(dots.begin(), dots.end(),
            [&](const SideDot& a, const SideDot& b) { return dot(a.mouth - b.mouth, along) < 0; });
  for (std::size_t i = 0; i + 1 < dots.size(); ++i) {
    const double apart = distance(dots[i].mouth, dots[i + 1].mouth);
    if (apart > 2 * dots[i].radius + tolerance::snap) continue;
    const bool pair = dots[i].fret == dots[i + 1].fret;
    faults.push_back(
        {FaultCode::side_dots_meet, pair ? "side_dots.spread" : "side_dots.frets",
         "the side dots of " +
             (pair ? "the pair in space " + std::to_string(dots[i].fret)
                   : "spaces " + std::to_string(dots[i].fret) + " and " + std::to_string(dots[i + 1].fret)) +
             " run into each other: they stand " + in_units(board, apart) + " apart and are " +
             in_units(board, 2 * dots[i].radius) + " wide",
         pair ? "make side_dots.spread larger than side_dots.diameter" : "use smaller dots, or leave one out"});
    return;
  }
}

}  // namespace

FeatureId id_of(const Marker& marker) { return {FeatureId::Kind::inlay, marker.inlay, marker.fret, marker.part}; }

FeatureId id_of(const SideDot& dot) { return {.kind = FeatureId::Kind::side_dot, .fret = dot.fret, .part = dot.part}; }

std::vector<Marker> place_markers(const Board& board, const Layout& layout, Faults& faults) {
  std::vector<Marker> markers;
  const int last = board.scale.frets;
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    const Inlay& inlay = board.inlays[i];
    const std::string key = "inlays[" + std::to_string(i) + "]";
    const Point shift{inlay.shift_along, inlay.shift_across};
    std::set<int> taken;
    for (int space : spaces(inlay.frets, last, key + ".frets", taken, faults))
      markers.push_back({static_cast<int>(i), space, Point{middle_of_space(layout, space), 0} + shift});
    for (int space : spaces(inlay.double_frets, last, key + ".double_frets", taken, faults)) {
      const double x = middle_of_space(layout, space), across = inlay.spread.value_or(layout.half_width(x)) / 2;
      for (const int part : {0, 1})
        markers.push_back({static_cast<int>(i), space, Point{x, part ? across : -across} + shift, part});
    }
  }
  return markers;
}

std::vector<SideDot> place_side_dots(const Board& board, const Layout& layout, Faults& faults) {
  if (!board.side_dots) return {};
  const SideDots& spec = *board.side_dots;
  const Point along = taper_in(layout).along(0);
  std::vector<SideDot> dots;
  const auto drill = [&](int space, double shift, int part) {
    const auto i = static_cast<std::size_t>(space);
    const Point middle = between(layout.frets[i - 1].bass_edge, layout.frets[i].bass_edge, 0.5);
    dots.push_back({space, middle + shift * along, left_of(along), spec.diameter / 2, spec.depth, part});
    check_side_dot(board, layout, dots.back(), faults);
  };
  std::set<int> taken;
  for (int space : spaces(spec.frets, board.scale.frets, "side_dots.frets", taken, faults)) drill(space, 0, 0);
  for (int space : spaces(spec.double_frets, board.scale.frets, "side_dots.double_frets", taken, faults))
    for (const int part : {0, 1}) drill(space, part ? spec.spread / 2 : -spec.spread / 2, part);
  check_side_dots_apart(board, dots, along, faults);
  return dots;
}

std::vector<Pin> place_pins(const Board& board) {
  std::vector<Pin> pins;
  if (board.pins)
    for (const auto& at : board.pins->at) pins.push_back({{at[0], at[1]}, board.pins->diameter / 2, board.pins->depth});
  return pins;
}

}  // namespace sagitta
