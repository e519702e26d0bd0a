#include "rescue/ChipRescue.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "board/ShapeKeys.hpp"
#include "inlay/FittedShape.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/Gap.hpp"
#include "rescue/Ways.hpp"

namespace sagitta {
namespace {

/// A covering piece where the board has none to take after, mm: pocket depth; common practice, no source.
constexpr double usual_depth = 1.5;
/// The least size of a piece, and the most that a shape is grown.
constexpr double least_size = 0.3, most_growth = 50;

bool covers(const Board& board, const Inlay& inlay, const Placement& place, const Chip& chip) {
  const Loops piece = fit_shape(board, inlay, place).piece;
  if (piece.empty() || !holds(piece, chip.middle)) return false;
  return gap({{line(chip.middle, chip.middle)}}, piece).width >= chip.radius - tolerance::same;
}

std::vector<Chip> open_chips(const PreparedBoard& ready) {
  std::vector<Chip> open;
  for (const Chip& chip : chips_of(ready.board()))
    if (chip_left(ready, chip) > tolerance::same) open.push_back(chip);
  return open;
}

/// The space that a place lies in; 0 where it lies in none.
int space_at(const Layout& layout, double x) {
  for (const FretLine& line : layout.frets)
    if (line.fret > 0 && x < line.middle.x && x >= 0) return line.fret;
  return 0;
}

/// A new inlay with its middle on a place of the board.
std::optional<Inlay> inlay_at(const PreparedBoard& ready, Point at) {
  const Layout& layout = ready.layout();
  const int space = space_at(layout, at.x);
  if (space == 0) return {};
  const auto n = static_cast<std::size_t>(space);
  Inlay inlay;
  inlay.frets = {space};
  inlay.shift_along = at.x - (layout.frets[n].middle.x + layout.frets[n - 1].middle.x) / 2;
  inlay.shift_across = ready.board().hand == Hand::left ? -at.y : at.y;
  const std::vector<Inlay>& others = ready.board().inlays;
  inlay.depth = others.empty() ? usual_depth : others.front().depth;
  inlay.material = others.empty() ? ready.board().blank.material : others.front().material;
  if (!others.empty()) inlay.clearance = others.front().clearance;
  return inlay;
}

void offer_new(Ways& ways, const std::vector<Chip>& chips, InlayShape shape) {
  Way way;
  Board with = ways.planned();
  const double least = std::max(least_size, 2 * inlay_cutter_radius(ways.ready()->board()));
  for (const Chip& chip : chips) {
    auto inlay = inlay_at(*ways.ready(), chip.middle);
    if (!inlay) return;
    inlay->shape = shape;
    const double size = std::max(2 * chip.radius, least);
    if (shape == InlayShape::dot)
      inlay->diameter = size;
    else
      inlay->along = inlay->across = size;
    const Edits edits = new_inlay(with, *inlay);
    way.edits.insert(way.edits.end(), edits.begin(), edits.end());
    with.inlays.push_back(*inlay);
    way.figures.push_back({shape == InlayShape::dot ? "diameter" : "side", size, "mm"});
  }
  const std::string what = shape == InlayShape::dot ? "dot" : "block";
  way.name = "cover-with-" + what;
  way.message = "let a " + what + " of " + in_units(ways.planned(), way.figures.front().value) + " into each chip";
  way.cost = std::to_string(chips.size()) + (chips.size() == 1 ? " piece" : " pieces") + " that were not drawn";
  way.effort = WayEffort::pieces;
  ways.offer(std::move(way));
}

/// The marker whose own shape covers the chip with the least growth.
struct OwnShape {
  const Marker* marker = nullptr;
  double growth = 0;
};

OwnShape own_shape(const PreparedBoard& ready, const Chip& chip) {
  const Board& board = ready.board();
  OwnShape best;
  const int space = space_at(ready.layout(), chip.middle.x);
  for (const Marker& marker : ready.layout().markers) {
    if (marker.fret != space) continue;
    const Inlay& inlay = board.inlays[static_cast<std::size_t>(marker.inlay)];
    if (std::find(inlay.frets.begin(), inlay.frets.end(), marker.fret) == inlay.frets.end()) continue;  // a pair
    const auto growth = smallest_growth(board, inlay, marker, chip);
    if (growth && (!best.marker || *growth < best.growth)) best = {&marker, *growth};
  }
  return best;
}

/// The inlay of one marker in a size of its own: in its row where it is alone there, else in a new one.
Edits resized(const Board& board, const Marker& marker, double growth) {
  const auto row = static_cast<std::size_t>(marker.inlay);
  const Inlay& inlay = board.inlays[row];
  if (inlay.frets.size() + inlay.double_frets.size() == 1) {
    Edits edits;
    for (const InlaySize& size : sizes_of(grown(inlay, growth)))
      edits.push_back({inlay_key(row, size.key), size.value});
    return edits;
  }
  std::vector<int> frets = inlay.frets;
  std::erase(frets, marker.fret);
  Inlay own = grown(inlay, growth);
  own.frets = {marker.fret};
  own.double_frets.clear();
  own.spread.reset();
  Edits edits{{inlay_key(row, "frets"), frets.empty() ? Value() : Value(frets)}};
  const Edits added = new_inlay(board, own);
  edits.insert(edits.end(), added.begin(), added.end());
  return edits;
}

void offer_own_shape(Ways& ways, const std::vector<Chip>& chips) {
  Way way;
  Board with = ways.planned();
  std::vector<std::pair<int, int>> taken;
  for (const Chip& chip : chips) {
    const OwnShape own = own_shape(*ways.ready(), chip);
    if (!own.marker) return;
    const std::pair marker(own.marker->inlay, own.marker->fret);
    if (std::find(taken.begin(), taken.end(), marker) != taken.end()) return;
    taken.push_back(marker);
    const Edits edits = resized(with, *own.marker, own.growth);
    way.edits.insert(way.edits.end(), edits.begin(), edits.end());
    with = edited(std::move(with), edits);
    way.figures.push_back({"growth", own.growth, ""});
  }
  way.name = "cover-with-own-shape";
  way.message = "make the inlay beside the chip " + plain(std::round(1000 * way.figures.front().value) / 1000) +
                " times as large";
  way.cost = "an inlay larger than the others of its kind";
  way.effort = WayEffort::pieces;
  ways.offer(std::move(way));
}

/// A binding as wide as the chips reach in from the edges.
void offer_binding(Ways& ways, const std::vector<Chip>& chips) {
  constexpr double widest = 6;  // mm; no wider binding is asked for to cover a chip
  constexpr double thinnest = 0.2;
  double width = thinnest;
  for (const Chip& chip : chips) {
    double inward = 1e300;
    for (const LineSegment& edge : ways.ready()->layout().edges)
      inward = std::min(inward, std::abs(dot(chip.middle - edge.a, left_of(unit(edge.b - edge.a)))) + chip.radius);
    width = std::max(width, inward);
  }
  const auto& binding = ways.planned().binding;
  if (width > widest || (binding && binding->width >= width)) return;
  Way way;
  way.name = "binding";
  way.edits = {{"binding.width", width}};
  way.message =
      "bind the board with strips " + in_units(ways.planned(), width) + " wide: the chips fall into their ledges";
  way.cost = binding ? "a wider binding than was wanted" : "a bound board";
  way.effort = WayEffort::pieces;
  way.figures = {{"width", width, "mm"}};
  ways.offer(std::move(way));
}

}  // namespace

Inlay grown(Inlay inlay, double by) {
  for (const InlaySize& size : sizes_of(inlay)) inlay = with_size(std::move(inlay), {size.key, size.value * by});
  return inlay;
}

std::optional<double> smallest_growth(const Board& board, const Inlay& inlay, const Marker& marker, const Chip& chip) {
  if (inlay.shape == InlayShape::artwork) return {};
  const Placement place{inlay.turn_degrees * std::numbers::pi / 180, board.hand == Hand::left, marker.centre};
  const auto enough = [&](double growth) { return covers(board, grown(inlay, growth), place, chip); };
  if (enough(1)) return 1;
  if (!enough(most_growth)) return {};
  double low = 1, high = most_growth;
  while (high - low > tolerance::same / 2) {
    const double middle = (low + high) / 2;
    (enough(middle) ? high : low) = middle;
  }
  return high;
}

void chip_ways(Ways& ways) {
  if (!ways.ready()) return;
  const std::vector<Chip> chips = open_chips(*ways.ready());
  if (chips.empty()) return;
  offer_new(ways, chips, InlayShape::dot);
  offer_new(ways, chips, InlayShape::block);
  offer_own_shape(ways, chips);
  offer_binding(ways, chips);
}

}  // namespace sagitta
