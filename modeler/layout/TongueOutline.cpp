#include "layout/TongueOutline.hpp"

#include <algorithm>

#include "layout/Frets.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A straight line y = at_nut + slope x.
struct Along {
  double at_nut = 0, slope = 0;
  double y(double x) const { return at_nut + slope * x; }
  /// Where the line through (x, 0) in `direction` meets it.
  Point met_by(double x, Point direction) const {
    const double t = y(x) / (direction.y - slope * direction.x);
    return {x + t * direction.x, t * direction.y};
  }
};

Along along(const LineSegment& segment) {
  const double slope = (segment.b.y - segment.a.y) / (segment.b.x - segment.a.x);
  return {segment.a.y - slope * segment.a.x, slope};
}

/// The tongue's side: `margin` outside its outermost string, or as far as the treble edge is from the treble string at
/// the same x.
Along side_line(const Tongue& spec, const Layout& layout, const Taper& taper) {
  const Along string = along(layout.strings[layout.strings.size() - static_cast<std::size_t>(spec.strings)]);
  if (spec.margin) return {string.at_nut - *spec.margin, string.slope};
  return {string.at_nut - (taper.at_nut[1] - layout.spread_at_nut / 2),
          string.slope - (taper.slope[1] - layout.spread_slope / 2)};
}

bool check_strings(const Board& board, Faults& faults) {
  const int count = board.strings.count, strings = board.tongue->strings;
  if (strings <= count && strings % board.strings.course == 0) return true;
  faults.push_back(
      {FaultCode::wrong_count,
       "tongue.strings",
       strings > count ? "a tongue under " + std::to_string(strings) + " strings on a board of " + std::to_string(count)
                       : "a tongue under " + std::to_string(strings) + " strings parts a course of " +
                             std::to_string(board.strings.course),
       "count the tongue's strings from the treble, whole courses",
       {FeatureId::Kind::tongue}});
  return false;
}

bool check_heel(const Board& board, Faults& faults) {
  const Heel heel = board.board.heel;
  if (heel == Heel::square || heel == Heel::slant || heel == Heel::fret) return true;
  faults.push_back({FaultCode::not_allowed,
                    "board.heel",
                    "with a tongue the heel end is straight: \"square\", \"slant\" or \"fret\"",
                    "change board.heel, or take [tongue] out",
                    {FeatureId::Kind::tongue}});
  return false;
}

Fault meets_board(const std::string& key, const std::string& message, const std::string& hint) {
  return {FaultCode::tongue_meets_board, key, message, hint, {FeatureId::Kind::tongue}};
}

/// The heel end's corner at the bass edge.
RoundedCorner bass_corner(const Board& board, const Layout& layout, const Taper& taper, double rounding) {
  const Point heel = straight_heel(board, layout);
  return rounded_corner(taper.meet(0, layout.heel_end, heel), taper.along(0), heel, rounding);
}

struct TongueCorners {
  RoundedCorner bass, treble;
};

TongueCorners tongue_corners(const Layout& layout, const Taper& taper, double rounding) {
  const TonguePlace& tongue = *layout.tongue;
  const Point across{0, 1}, treble = taper.meet(1, tongue.end, across);
  return {rounded_corner(tongue.bass_side.b, unit(tongue.bass_side.b - tongue.bass_side.a), across, rounding),
          rounded_corner(treble, across, -1.0 * taper.along(1), rounding)};
}

bool fit(const TongueCorners& corners, const Layout& layout) {
  const LineSegment& side = layout.tongue->bass_side;
  return dot(corners.bass.begin - side.a, side.b - side.a) > 0 && corners.treble.begin.y > corners.bass.end.y &&
         corners.treble.end.x > side.a.x;
}

void add_corner(Loop& pieces, const RoundedCorner& corner, double rounding) {
  if (rounding > 0) pieces.push_back(arc_between(corner.centre, rounding, corner.begin, corner.end, true));
}

Fault too_large(const Board& board, const std::string& key, const std::string& end, double rounding) {
  return {FaultCode::corner_too_large,
          key,
          "corners of radius " + in_units(board, rounding) + " do not fit " + end,
          "use a smaller radius",
          {FeatureId::Kind::tongue}};
}

}  // namespace

std::optional<TonguePlace> place_tongue(const Board& board, const Layout& layout, const Taper& taper, Faults& faults) {
  if (layout.strings.empty() || !check_heel(board, faults) || !check_strings(board, faults)) return std::nullopt;
  TonguePlace place = *layout.tongue;
  const Along side = side_line(*board.tongue, layout, taper);
  const Point heel = straight_heel(board, layout);
  if (!(heel.y > side.slope * heel.x)) {
    faults.push_back(meets_board("board.heel_angle", "the heel end never meets the tongue's side", "turn it less"));
    return std::nullopt;
  }
  place.bass_side.a = side.met_by(layout.heel_end, heel);
  place.bass_side.b = {place.end, side.y(place.end)};
  const Point inner = place.bass_side.a;
  if (inner.y <= -taper.edge(0, inner.x) + tolerance::snap) {
    faults.push_back(meets_board("tongue.strings",
                                 "the tongue's side lies " + in_units(board, -taper.edge(0, inner.x) - inner.y) +
                                     " outside the bass edge: the tongue is as wide as the board",
                                 "name fewer strings or a smaller tongue.margin, or give the board itself more frets"));
    return std::nullopt;
  }
  if (place.end <= inner.x + tolerance::snap || inner.y >= taper.edge(1, inner.x) - tolerance::snap) {
    faults.push_back(meets_board("tongue.frets",
                                 "the tongue ends at x = " + in_units(board, place.end) +
                                     ", before the heel end beside it at " + in_units(board, inner.x),
                                 "make board.past_last_fret smaller, or give the tongue more frets"));
    return std::nullopt;
  }
  return place;
}

Point on_tongue_side(const TonguePlace& tongue, const FretLine& fret) {
  return along(tongue.bass_side).met_by(fret.middle.x, direction(fret));
}

std::optional<HeelEnd> heel_with_tongue(const Board& board, const Layout& layout, const Taper& taper, NutCorners nut,
                                        Faults& faults) {
  const Point inner = layout.tongue->bass_side.a;
  const double rounding = board.board.corner_radius, tongue_rounding = board.tongue->corner_radius;
  const RoundedCorner bass = bass_corner(board, layout, taper, rounding);
  if (bass.begin.x <= nut.low.x || dot(inner - bass.end, straight_heel(board, layout)) <= tolerance::same) {
    if (rounding > 0)
      faults.push_back(too_large(board, "board.corner_radius", "the heel end beside the tongue", rounding));
    else
      faults.push_back({FaultCode::heel_meets_nut, "board.past_last_fret",
                        "the heel end crosses the nut end: nothing is left of an edge", ""});
    return std::nullopt;
  }
  const TongueCorners corners = tongue_corners(layout, taper, tongue_rounding);
  if (!fit(corners, layout)) {
    faults.push_back(too_large(board, "tongue.corner_radius", "the tongue's end", tongue_rounding));
    return std::nullopt;
  }
  HeelEnd end{bass.begin, corners.treble.end, {}};
  add_corner(end.pieces, bass, rounding);
  end.pieces.push_back(line(bass.end, inner));
  end.pieces.push_back(line(inner, corners.bass.begin));
  add_corner(end.pieces, corners.bass, tongue_rounding);
  end.pieces.push_back(line(corners.bass.end, corners.treble.begin));
  add_corner(end.pieces, corners.treble, tongue_rounding);
  return end;
}

void check_tongue_slots(const Board& board, const Layout& layout, Faults& faults) {
  const LineSegment& side = layout.tongue->bass_side;
  const Point way = unit(side.b - side.a);
  for (const Slot& slot : layout.slots) {
    if (!slot.on_tongue) continue;
    const FretLine& fret = layout.frets[static_cast<std::size_t>(slot.fret)];
    const double half = board.slots.width / 2 / std::abs(cross(way, direction(fret)));
    const double room = dot(fret.bass_edge - side.a, way) - half;
    if (room > tolerance::snap) continue;
    Fault fault = meets_board("board.past_last_fret",
                              "the slot of fret " + std::to_string(slot.fret) + ", on the tongue, reaches " +
                                  in_units(board, -room) + " into the main board beside it",
                              "make board.past_last_fret smaller than " +
                                  in_units_down(board, board.board.past_last_fret - std::max(0.0, -room)));
    fault.where = id_of(slot);
    faults.push_back(std::move(fault));
    return;
  }
}

TongueMiddle tongue_middle(const Layout& layout, int space) {
  const Along side = along(layout.tongue->bass_side);
  const Along middle{(side.at_nut + layout.edge_at_nut[1]) / 2, (side.slope + layout.edge_slope[1]) / 2};
  const auto on = [&](int fret) {
    const FretLine& line = layout.frets[static_cast<std::size_t>(fret)];
    return middle.met_by(line.middle.x, direction(line));
  };
  const Point at = between(on(space - 1), on(space), 0.5);
  return {at, layout.edge(1, at.x) - side.y(at.x)};
}

}  // namespace sagitta
