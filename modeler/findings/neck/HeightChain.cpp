#include "neck/HeightChain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Where a line in the plane crosses a fret's line.
Point crossing(const LineSegment& string, const FretLine& fret) {
  const Point way = string.b - string.a, along = fret.treble - fret.bass;
  const double whole = cross(way, along);
  if (std::abs(whole) <= tolerance::same) return string.a;
  return string.a + (cross(fret.bass - string.a, along) / whole) * way;
}

/// How far the frets lie below the straight line from the nut to the joint, for a relief at relief_fret.
struct Bow {
  double relief = 0, joint = 0, relief_x = 0;

  double at(double x) const {
    if (x <= 0 || x >= joint || relief_x <= 0 || relief_x >= joint) return 0;
    return relief * x * (joint - x) / (relief_x * (joint - relief_x));
  }
};

Bow bow_of(const PreparedBoard& ready, const Heights& heights, double relief) {
  const auto& frets = ready.layout().frets;
  const auto fret = static_cast<std::size_t>(heights.relief_fret);
  return {relief, joint_place(ready), fret < frets.size() ? frets[fret].middle.x : 0};
}

/// The fret tops of a board, with a relief.
class Tops {
 public:
  Tops(const PreparedBoard& ready, const Heights& heights, double relief)
      : surface_(ready.surface()), crown_(ready.board().wire.crown_height), bow_(bow_of(ready, heights, relief)) {}
  double height(Point p) const { return surface_.height(p) + crown_ - bow_.at(p.x); }

 private:
  const Surface& surface_;
  double crown_;
  Bow bow_;
};

/// A string as a line in its own upright plane, over x.
struct SideLine {
  double x0 = 0, z0 = 0, slope = 0;
  double at(double x) const { return z0 + slope * (x - x0); }
};

SideLine through(double x0, double z0, double x1, double z1) { return {x0, z0, (z1 - z0) / (x1 - x0)}; }

/// What is asked of a chain besides its relief.
struct Wanted {
  LengthPair nut, action;  ///< bass, treble
};

/// The place of action_fret on a string, also past the last fret.
Point action_point(const PreparedBoard& ready, const Heights& heights, const LineSegment& string) {
  const auto& frets = ready.layout().frets;
  const auto fret = static_cast<std::size_t>(heights.action_fret);
  if (fret < frets.size()) return crossing(string, frets[fret]);
  const double part = 1 - std::exp2(-100.0 * heights.action_fret / 1200);
  return between(crossing(string, frets.front()), string.b, part);
}

double saddle_x_of(const FretLine& nut, bool bass) {
  return bass ? nut.bass.x + nut.bass_to_saddle : nut.treble.x + nut.treble_to_saddle;
}

/// One string. `part`: 0 for the bass string, 1 for the treble string.
StringHeights string_of(const PreparedBoard& ready, const Heights& heights, const Tops& tops, const Wanted& wanted,
                        const LineSegment& string, double part) {
  const auto mixed = [&](const LengthPair& pair) { return pair.first + part * (pair.second - pair.first); };
  const auto& frets = ready.layout().frets;
  StringHeights result;
  const Point nut = crossing(string, frets.front()), held = action_point(ready, heights, string);
  result.action = mixed(wanted.action);
  const SideLine line = through(nut.x, tops.height(nut) + mixed(wanted.nut), held.x, tops.height(held) + result.action);
  result.nut_x = nut.x, result.nut_z = line.z0;
  result.saddle_x = saddle_x_of(frets.front(), true) * (1 - part) + saddle_x_of(frets.front(), false) * part;
  result.saddle_z = line.at(result.saddle_x);
  for (const FretLine& fret : frets) {
    if (fret.fret == 0 || fret.on_tongue) continue;
    const Point at = crossing(string, fret);
    const double top = tops.height(at);
    result.frets.push_back({fret.fret, at, top, line.at(at.x) - top});
  }
  for (std::size_t held_at = 0; held_at < result.frets.size(); ++held_at) {
    FretHeight& own = result.frets[held_at];
    const SideLine ahead = through(own.at.x, own.top, result.saddle_x, result.saddle_z);
    const SideLine behind = through(result.nut_x, result.nut_z, own.at.x, own.top);
    for (std::size_t i = 0; i < result.frets.size(); ++i) {
      const FretHeight& other = result.frets[i];
      if (i > held_at) own.ahead = std::min(own.ahead.value_or(1e300), ahead.at(other.at.x) - other.top);
      if (i < held_at) own.behind = std::min(own.behind.value_or(1e300), behind.at(other.at.x) - other.top);
    }
  }
  return result;
}

std::vector<StringHeights> strings_of(const PreparedBoard& ready, const Heights& heights, const Wanted& wanted,
                                      double relief) {
  const Tops tops(ready, heights, relief);
  const auto& lines = ready.layout().strings;
  std::vector<StringHeights> strings;
  const double first = lines.front().a.y, last = lines.back().a.y;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double part = first == last ? 0 : (lines[i].a.y - first) / (last - first);
    strings.push_back(string_of(ready, heights, tops, wanted, lines[i], part));
    strings.back().string = static_cast<int>(i);
  }
  return strings;
}

/// Every gap of every string, open and fretted: the same order whatever the relief.
std::vector<StringGap> gaps_ahead(const std::vector<StringHeights>& strings) {
  std::vector<StringGap> gaps;
  for (const StringHeights& s : strings) {
    for (const FretHeight& f : s.frets) gaps.push_back({s.string, 0, f.fret, f.height});
    for (std::size_t held = 0; held < s.frets.size(); ++held) {
      const SideLine line = through(s.frets[held].at.x, s.frets[held].top, s.saddle_x, s.saddle_z);
      for (std::size_t i = held + 1; i < s.frets.size(); ++i)
        gaps.push_back({s.string, s.frets[held].fret, s.frets[i].fret, line.at(s.frets[i].at.x) - s.frets[i].top});
    }
  }
  return gaps;
}

/// Between which reliefs no gap closes: all gaps are linear in the relief.
void set_relief_range(HeightChain& chain, const PreparedBoard& ready, const Heights& heights, const Wanted& wanted) {
  const auto level = gaps_ahead(strings_of(ready, heights, wanted, 0));
  const auto bent = gaps_ahead(strings_of(ready, heights, wanted, 1));
  for (std::size_t i = 0; i < level.size(); ++i) {
    const double slope = bent[i].gap - level[i].gap;
    if (slope > tolerance::same) chain.least_relief = std::max(chain.least_relief, -level[i].gap / slope);
    if (slope < -tolerance::same) chain.most_relief = std::min(chain.most_relief, -level[i].gap / slope);
  }
}

void set_least_gaps(HeightChain& chain) {
  const auto less = [](const StringGap& a, const StringGap& b) { return a.gap < b.gap; };
  const std::vector<StringGap> ahead = gaps_ahead(chain.strings);
  chain.least_ahead = *std::min_element(ahead.begin(), ahead.end(), less);
  for (const StringHeights& s : chain.strings)
    for (const FretHeight& f : s.frets)
      if (f.behind && (!chain.least_behind || *f.behind < chain.least_behind->gap))
        chain.least_behind = StringGap{s.string, f.fret, f.fret, *f.behind};
}

/// The line of a string that ran along the centre line, halfway between the outer ones.
struct Centre {
  const Tops& tops;
  Point nut, held;
  double nut_height, saddle_x;
  double saddle_z(double action) const {
    return through(nut.x, tops.height(nut) + nut_height, held.x, tops.height(held) + action).at(saddle_x);
  }
  double action(double saddle_z) const {
    return through(nut.x, tops.height(nut) + nut_height, saddle_x, saddle_z).at(held.x) - tops.height(held);
  }
};

Wanted wanted_of(const Board& board) {
  const Heights& heights = *board.height;
  return {heights.nut.value_or(LengthPair(board.scale.zero_fret ? 0 : 0.5)), heights.action.value_or(LengthPair(0))};
}

}  // namespace

double joint_place(const PreparedBoard& ready) {
  const auto& neck = ready.board().neck;
  const auto& frets = ready.layout().frets;
  if (neck && neck->body_at) return *neck->body_at;
  if (neck && neck->joint_fret && *neck->joint_fret < static_cast<int>(frets.size()))
    return frets[static_cast<std::size_t>(*neck->joint_fret)].middle.x;
  double last = 0;
  for (const FretLine& fret : frets)
    if (!fret.on_tongue) last = fret.middle.x;
  return last;
}

double relief_at(const PreparedBoard& ready, double x) {
  const auto& heights = ready.board().height;
  return heights ? bow_of(ready, *heights, heights->relief).at(x) : 0;
}

std::optional<double> end_room(const PreparedBoard& ready) {
  const auto& heights = ready.board().height;
  const double over = ready.layout().heel_end - joint_place(ready);
  if (!heights || !heights->body_step || over <= tolerance::same) return {};
  const auto& neck = ready.board().neck;
  const double angle = neck ? neck->angle_degrees.value_or(0) * std::numbers::pi / 180 : 0;
  return std::min(*heights->body_step, *heights->body_step + over * std::tan(angle));
}

double bridge_for(const BodyLine& body, double saddle_z, double angle) {
  return (saddle_z + body.step) * std::cos(angle) + (body.saddle_x - body.joint_x) * std::sin(angle);
}

double saddle_for(const BodyLine& body, double bridge, double angle) {
  return (bridge - (body.saddle_x - body.joint_x) * std::sin(angle)) / std::cos(angle) - body.step;
}

std::optional<double> angle_for(const BodyLine& body, double saddle_z, double bridge) {
  const double a = saddle_z + body.step, b = body.saddle_x - body.joint_x, whole = std::hypot(a, b);
  if (whole <= tolerance::same || std::abs(bridge) > whole) return {};
  return std::asin(bridge / whole) - std::atan2(a, b);
}

std::optional<HeightChain> height_chain(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  if (!board.height || layout.strings.empty() || layout.frets.size() < 2) return {};
  const Heights& heights = *board.height;
  const bool from_bridge = heights.bridge && heights.body_step;
  if (!heights.action && !from_bridge) return {};
  HeightChain chain;
  chain.relief = heights.relief;
  chain.bridge = heights.bridge;
  chain.angle = board.neck ? board.neck->angle_degrees.value_or(0) * std::numbers::pi / 180 : 0;
  Wanted wanted = wanted_of(board);
  const Tops tops(ready, heights, heights.relief);
  const LineSegment middle{{0, 0}, {layout.mean_scale, 0}};
  const Centre centre{tops, {0, 0}, action_point(ready, heights, middle), wanted.nut.sum() / 2, layout.mean_scale};
  if (heights.body_step) chain.body = BodyLine{joint_place(ready), layout.mean_scale, *heights.body_step};
  if (from_bridge) chain.bridge_action = centre.action(saddle_for(*chain.body, *heights.bridge, chain.angle));
  if (!heights.action) wanted.action = *chain.bridge_action;
  chain.action = wanted.action.sum() / 2;
  chain.saddle_z = centre.saddle_z(chain.action);
  chain.strings = strings_of(ready, heights, wanted, heights.relief);
  set_least_gaps(chain);
  set_relief_range(chain, ready, heights, wanted);
  if (!chain.body) return chain;
  chain.needed_bridge = bridge_for(*chain.body, chain.saddle_z, chain.angle);
  if (chain.bridge) chain.needed_angle = angle_for(*chain.body, chain.saddle_z, *chain.bridge);
  chain.plane_at_saddle = bridge_for(*chain.body, ready.surface().thickness + board.wire.crown_height, chain.angle);
  return chain;
}

}  // namespace sagitta
