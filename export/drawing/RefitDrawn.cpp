#include "drawing/RefitDrawn.hpp"

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/OpenClose.hpp"
#include "layout/Layout.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

namespace {

/// Slivers thinner than twice this come from chords, not from corners. mm.
constexpr double sliver = 0.001;
/// By how much outlines differ from what was fitted, so that a corner that just takes the cutter does. mm.
constexpr double slack = 2 * tolerance::refit;

/// `larger` less what a cutter of `radius` must take away where it cannot follow the corners of `larger` but could
/// those of `piece`: every place of the cutter beside the piece that reaches into such a corner.
Region reachable(const Region& larger, const Region& piece, double radius) {
  if (radius <= slack) return larger;
  const Region corners = opened(difference(offset(offset(larger, radius), -radius), larger), sliver);
  if (corners.empty()) return larger;
  const Region around = difference(offset(corners, 2 * radius), piece);
  return difference(larger, opened(around, radius - slack));
}

/// The only part of the region that is not negligibly small; empty when there are several, or none.
Region whole_part(const Region& region) {
  Region whole;
  for (const Region& part : parts(region)) {
    if (area(part) <= tolerance::crumb) continue;
    if (!whole.empty()) return {};
    whole = part;
  }
  return whole;
}

}  // namespace

std::string refit_drawn(const Board& board, const std::vector<InlayPiece*>& pieces, double clearance) {
  std::vector<Region> made;
  for (InlayPiece* piece : pieces) {
    const double more = board.inlays[static_cast<std::size_t>(piece->inlay)].clearance - clearance;
    if (more == 0) continue;
    const Region before = flattened(piece->piece);
    Region after = offset(before, more);
    if (more > 0) after = reachable(after, before, inlay_cutter_radius(board));
    const Box near = bounds(after).grown(clearance);
    for (const Region& other : made)
      if (bounds(other).overlaps(near)) after = difference(after, offset(other, clearance));
    after = whole_part(after);
    if (after.empty()) return piece->name;
    piece->piece = fit_arc_splines(after);
    piece->ellipse.reset();  // the curve beside an ellipse is none
    made.push_back(std::move(after));
  }
  return {};
}

}  // namespace sagitta
