#include "overlay/InlaySize.hpp"

#include <algorithm>

#include "board/Fields.hpp"
#include "board/ShapeKeys.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/FittedShape.hpp"
#include "inlay/Flatten.hpp"

namespace sagitta::viewer {

namespace {

constexpr double parts = 1000;  ///< of a mm: sizes that follow another
constexpr double seen = 0.02;   ///< mm: finer corners of an outline are not drawn

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
  if (!takes(inlay, "file")) {
    const Box box = bounds(shape_outline(inlay));
    return box.high - box.low;
  }
  const double along = inlay.along.value_or(0), across = inlay.across.value_or(0);
  const auto box = fitted.boxes.find(inlay.file);
  if (box == fitted.boxes.end()) return {};
  const Point drawn = box->second.high - box->second.low;
  if (!(drawn.x > 0 && drawn.y > 0)) return {};
  return growth * (inlay.along ? along / drawn.x : across / drawn.y) * drawn;
}

double leading_size(const Inlay& inlay) {
  const std::vector<InlaySize> sizes = sizes_of(inlay);
  return sizes.empty() ? 0 : sizes.front().value;
}

Inlay sized(const Inlay& inlay, double leading) {
  Inlay result = inlay;
  const std::vector<InlaySize> sizes = sizes_of(inlay);
  if (!(leading_size(inlay) > 0)) return result;
  const double wanted = leading / leading_size(inlay);
  double factor = wanted;
  for (const InlaySize& size : sizes) {
    const Range& range = find_field("inlays." + std::string(size.key))->range;
    factor = std::clamp(factor, range.least / size.value, range.most / size.value);
  }
  for (const InlaySize& size : sizes)
    result = with_size(std::move(result), {size.key, std::round(factor * size.value * parts) / parts});
  if (factor == wanted) result = with_size(std::move(result), {sizes.front().key, leading});
  return result;
}

Region outline_of(const Inlay& inlay, const FittedInlays& fitted, double growth) {
  if (!takes(inlay, "file")) return flattened(shape_outline(inlay), seen);
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
