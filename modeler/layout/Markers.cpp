#include "layout/Markers.hpp"

#include <algorithm>
#include <set>

#include "layout/LastFret.hpp"
#include "layout/Measure.hpp"
#include "layout/Taper.hpp"
#include "layout/TongueOutline.hpp"
#include "plane/RoundedPolygon.hpp"
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

/// The middle of a space, on the centre line or the tongue's middle line, and the board's or the tongue's width there.
TongueMiddle middle_of_space(const Layout& layout, int space) {
  const auto i = static_cast<std::size_t>(space);
  if (layout.frets[i].on_tongue) return tongue_middle(layout, space);
  const double x = (layout.frets[i - 1].middle.x + layout.frets[i].middle.x) / 2;
  return {{x, 0}, 2 * layout.half_width(x)};
}

std::string dot_name(const SideDot& dot) {
  return "the side dot of space " + std::to_string(dot.fret) + (dot.side > 0 ? " in the treble edge" : "");
}

void check_side_dot(const Board& board, const Layout& layout, const SideDot& dot_, Faults& faults) {
  const LineSegment edge = layout.edges[dot_.side];
  const Point along = unit(edge.b - edge.a);
  const double from_nut = dot(dot_.mouth - edge.a, along), to_heel = dot(edge.b - dot_.mouth, along);
  if (std::min(from_nut, to_heel) <= dot_.radius + tolerance::snap)
    faults.push_back(
        {FaultCode::side_dot_over_end, "side_dots.frets",
         dot_name(dot_) + " reaches over the " + (from_nut < to_heel ? "nut" : "heel") + " end of the straight edge",
         "leave it out, use smaller dots, or bring a pair closer together with side_dots.spread"});
  const Point end = dot_.mouth + dot_.depth * dot_.inward;
  const double across = dot_.side == 0 ? end.y : -end.y;
  if (across >= layout.edge(1 - dot_.side, end.x) - std::max(dot_.radius, tolerance::least_floor))
    faults.push_back({FaultCode::side_dot_through, "side_dots.depth",
                      dot_name(dot_) + " is " + in_units(board, dot_.depth) +
                          " deep and would come out at the other edge of the board",
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

/// What a hole covers, seen from above.
RoundedPolygon hole_shape(const SideDot& dot) {
  const Point aside = dot.radius * left_of(dot.inward), end = dot.mouth + dot.depth * dot.inward;
  return {{dot.mouth - aside, end - aside, end + aside, dot.mouth + aside}, 0};
}

/// Holes of the two edges that meet under the board.
void check_side_dots_across(const std::vector<SideDot>& dots, Faults& faults) {
  for (const SideDot& one : dots)
    for (const SideDot& other : dots) {
      if (one.side != 0 || other.side != 1 || distance(hole_shape(one), hole_shape(other)) > tolerance::snap) continue;
      faults.push_back({FaultCode::side_dots_meet, "side_dots.depth",
                        "the holes of " + dot_name(one) + " and of " + dot_name(other) + " meet in the board",
                        "make side_dots.depth smaller"});
      return;
    }
}

}  // namespace

FeatureId id_of(const Marker& marker) { return {FeatureId::Kind::inlay, marker.inlay, marker.fret, marker.part}; }

FeatureId id_of(const SideDot& dot) {
  return {.kind = FeatureId::Kind::side_dot, .fret = dot.fret, .part = dot.part + 2 * dot.side};
}

std::vector<Marker> place_markers(const Board& board, const Layout& layout, Faults& faults) {
  std::vector<Marker> markers;
  const int last = fret_count(board);
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    const Inlay& inlay = board.inlays[i];
    const std::string key = "inlays[" + std::to_string(i) + "]";
    const Point shift{inlay.shift_along, inlay.shift_across};
    std::set<int> taken;
    for (int space : spaces(inlay.frets, last, key + ".frets", taken, faults))
      markers.push_back({static_cast<int>(i), space, middle_of_space(layout, space).at + shift});
    for (int space : spaces(inlay.double_frets, last, key + ".double_frets", taken, faults)) {
      const TongueMiddle middle = middle_of_space(layout, space);
      const double across = inlay.spread.value_or(middle.width / 2) / 2;
      for (const int part : {0, 1})
        markers.push_back({static_cast<int>(i), space, middle.at + Point{0, part ? across : -across} + shift, part});
    }
  }
  return markers;
}

std::vector<SideDot> place_side_dots(const Board& board, const Layout& layout, Faults& faults) {
  if (!board.side_dots) return {};
  const SideDots& spec = *board.side_dots;
  std::vector<SideDot> dots;
  const auto drill = [&](int side, int space, double shift, int part) {
    const auto i = static_cast<std::size_t>(space);
    if (side == 0 && layout.frets[i].on_tongue) {
      if (spec.edge == DotEdge::bass)
        faults.push_back(
            {FaultCode::off_board, "side_dots.frets",
             "space " + std::to_string(space) + " lies on the tongue, which has side dots only in its treble edge",
             "leave it out, or choose side_dots.edge = \"treble\" or \"both\""});
      return;
    }
    const FretLine &before = layout.frets[i - 1], &after = layout.frets[i];
    const Point middle = side == 0 ? between(before.bass_edge, after.bass_edge, 0.5)
                                   : between(before.treble_edge, after.treble_edge, 0.5);
    const Point along = taper_in(layout).along(side), inward = side == 0 ? left_of(along) : -1 * left_of(along);
    dots.push_back({space, middle + shift * along, inward, spec.diameter / 2, spec.depth, part, side});
    check_side_dot(board, layout, dots.back(), faults);
  };
  std::set<int> taken;
  const std::vector<int> singles = spaces(spec.frets, fret_count(board), "side_dots.frets", taken, faults);
  const std::vector<int> pairs = spaces(spec.double_frets, fret_count(board), "side_dots.double_frets", taken, faults);
  for (const int side : {0, 1}) {
    if (spec.edge != DotEdge::both && side != (spec.edge == DotEdge::treble ? 1 : 0)) continue;
    const auto first = static_cast<std::ptrdiff_t>(dots.size());
    for (const int space : singles) drill(side, space, 0, 0);
    for (const int space : pairs)
      for (const int part : {0, 1}) drill(side, space, part ? spec.spread / 2 : -spec.spread / 2, part);
    check_side_dots_apart(board, {dots.begin() + first, dots.end()}, taper_in(layout).along(side), faults);
  }
  check_side_dots_across(dots, faults);
  return dots;
}

std::vector<Pin> place_pins(const Board& board) {
  std::vector<Pin> pins;
  if (board.pins)
    for (const auto& at : board.pins->at) pins.push_back({{at[0], at[1]}, board.pins->diameter / 2, board.pins->depth});
  return pins;
}

}  // namespace sagitta
