#include "panels/InlaySize.hpp"

#include <algorithm>

#include "board/Fields.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Refit.hpp"

namespace sagitta::viewer {

namespace {

constexpr double parts = 1000;  ///< of a mm: sizes that follow another
constexpr double seen = 0.02;   ///< mm: finer corners of an outline are not drawn
constexpr int dot_corners = 180;

struct SizeKey {
  std::string_view key;
  double* value;
};

/// The keys that its shape takes, as far as they are given.
std::vector<SizeKey> size_keys(Inlay& inlay) {
  const auto given = [](std::optional<double>& size) { return size ? &*size : nullptr; };
  std::vector<SizeKey> keys;
  if (inlay.shape == InlayShape::dot) {
    keys = {{"inlays.diameter", &inlay.diameter}};
  } else {
    keys = {{"inlays.along", given(inlay.along)}};
    if (inlay.shape == InlayShape::trapezoid)
      keys.insert(keys.end(),
                  {{"inlays.across_nut", given(inlay.across_nut)}, {"inlays.across_heel", given(inlay.across_heel)}});
    else
      keys.push_back({"inlays.across", given(inlay.across)});
  }
  std::erase_if(keys, [](const SizeKey& k) { return !k.value; });
  return keys;
}

Polygon corners_of(const Inlay& inlay) {
  const double x = inlay.along.value_or(0) / 2, y = inlay.across.value_or(0) / 2;
  const double nut = inlay.across_nut.value_or(0) / 2, heel = inlay.across_heel.value_or(0) / 2;
  switch (inlay.shape) {
    case InlayShape::block:
      return {{-x, -y}, {x, -y}, {x, y}, {-x, y}};
    case InlayShape::diamond:
      return {{-x, 0}, {0, -y}, {x, 0}, {0, y}};
    case InlayShape::trapezoid:
      return {{-x, -nut}, {x, -heel}, {x, heel}, {-x, nut}};
    default:
      break;
  }
  Polygon round;
  for (int i = 0; i < dot_corners; ++i)
    round.push_back(turned({inlay.diameter / 2, 0}, 2 * std::numbers::pi * i / dot_corners));
  return round;
}

/// How far the outline reaches in a direction, once it is placed.
double reach(const InlayFrame& frame, const Region& outline, Point direction) {
  double most = 0;
  for (const Polygon& polygon : outline)
    for (const Point& p : polygon) most = std::max(most, dot(p.x * frame.along + p.y * frame.up, direction));
  return most;
}

/// A line across the board, and how far the cut reaches to either side of it.
struct Wall {
  Point on, toward_heel;
  double half = 0;
};

Wall wall_at(const Board& board, const Layout& layout, int fret) {
  const FretLine& line = layout.frets[static_cast<std::size_t>(fret)];
  const Point across = unit(line.treble_edge - line.bass_edge);
  const double sense = across.y < 0 ? -1 : 1;
  Wall wall{line.middle, {sense * across.y, -sense * across.x}, board.slots.width / 2};
  if (fret == 0 && !board.scale.zero_fret) wall.half = 0, wall.on = layout.nut ? layout.nut->face : line.middle;
  return wall;
}

}  // namespace

Point size_of(const Inlay& inlay, const FittedInlays& fitted, double growth) {
  if (inlay.shape == InlayShape::dot) return {inlay.diameter, inlay.diameter};
  const double along = inlay.along.value_or(0), across = inlay.across.value_or(0);
  if (inlay.shape == InlayShape::trapezoid)
    return {along, std::max(inlay.across_nut.value_or(0), inlay.across_heel.value_or(0))};
  if (inlay.shape != InlayShape::artwork) return {along, across};
  const auto box = fitted.boxes.find(inlay.file);
  if (box == fitted.boxes.end()) return {};
  const Point drawn = box->second.high - box->second.low;
  if (!(drawn.x > 0 && drawn.y > 0)) return {};
  return growth * (inlay.along ? along / drawn.x : across / drawn.y) * drawn;
}

double leading_size(const Inlay& inlay) {
  Inlay own = inlay;
  const std::vector<SizeKey> keys = size_keys(own);
  return keys.empty() ? 0 : *keys.front().value;
}

Inlay sized(const Inlay& inlay, double leading) {
  Inlay result = inlay;
  const std::vector<SizeKey> keys = size_keys(result);
  if (keys.empty() || !(*keys.front().value > 0)) return result;
  const double wanted = leading / *keys.front().value;
  double factor = wanted;
  for (const SizeKey& k : keys) {
    const Range& range = find_field(k.key)->range;
    factor = std::clamp(factor, range.least / *k.value, range.most / *k.value);
  }
  for (const SizeKey& k : keys) *k.value = std::round(factor * *k.value * parts) / parts;
  if (factor == wanted) *keys.front().value = leading;
  return result;
}

Region outline_of(const Inlay& inlay, const FittedInlays& fitted, double growth) {
  if (inlay.shape != InlayShape::artwork) return {corners_of(inlay)};
  const Point size = size_of(inlay, fitted, growth);
  if (!(size.x > 0)) return {};
  const Box box = fitted.boxes.at(inlay.file);
  Region outline;
  for (const DrawnRegion& region : fitted.drawings.at(inlay.file).regions)
    for (Polygon& polygon :
         thinned(flattened(region.outlines, size.x / (box.high.x - box.low.x), between(box.low, box.high, 0.5)), seen))
      outline.push_back(std::move(polygon));
  return outline;
}

std::optional<double> room_between_frets(const Board& board, const Layout& layout, const InlayFrame& frame,
                                         const Region& outline, double wood) {
  if (frame.fret < 1 || static_cast<std::size_t>(frame.fret) >= layout.frets.size()) return std::nullopt;
  std::optional<double> least;
  for (const int fret : {frame.fret - 1, frame.fret}) {
    const Wall wall = wall_at(board, layout, fret);
    const Point out = (fret < frame.fret ? -1 : 1) * wall.toward_heel;
    const double room = dot(wall.on - frame.centre, out) - wall.half - wood, needed = reach(frame, outline, out);
    if (room <= 0 || needed <= 0) return std::nullopt;
    least = std::min(least.value_or(room / needed), room / needed);
  }
  return least;
}

}  // namespace sagitta::viewer
