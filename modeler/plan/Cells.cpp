#include "plan/Cells.hpp"

#include <cmath>
#include <tuple>

#include "plan/CellOrderError.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// What two heights may change places by within a face, as its edges may lie beside the curve where they are equal by a
/// few snaps: the steepest form falls by 4 mm a millimetre, and a roll is upright at the side. mm.
double most_disorder(const BoundingSurface& a, const BoundingSurface& b) {
  return a.round() || b.round() ? 0.05 : 10 * tolerance::snap;
}

class Resolver {
 public:
  Resolver(const Subdivision& map, const Surface& surface) : map_(map), surface_(surface) {}

  /// The strongest difference (a - b) over a face's border and just inside it.
  double difference(int face, const BoundingSurface& a, const BoundingSurface& b) const {
    return std::get<0>(differences(face, a, b));
  }

  /// The same where no other order may occur in the face.
  double ordered(int face, const BoundingSurface& a, const BoundingSurface& b) const {
    const auto [strongest, opposite, at] = differences(face, a, b);
    if (opposite > most_disorder(a, b)) throw CellOrderError(opposite, at);
    return strongest;
  }

  /// The strongest difference (a - b), the strongest against it, as a positive number, and its place.
  std::tuple<double, double, Point> differences(int face, const BoundingSurface& a, const BoundingSurface& b) const {
    if (a.kind == BoundingSurface::Kind::level && b.kind == BoundingSurface::Kind::level)
      return {a.value - b.value, 0, {}};
    double strongest = 0, most = 0, least = 0;
    Point at_most, at_least;
    const auto judge = [&](Point p) {
      const double d = height(surface_, a, p) - height(surface_, b, p);
      if (std::abs(d) > std::abs(strongest)) strongest = d;
      if (d > most) most = d, at_most = p;
      if (d < least) least = d, at_least = p;
    };
    for (const HalfEdge start : map_.faces[face].loops) {
      HalfEdge h = start;
      do {
        const PlanEdge& edge = map_.edges[h >> 1];
        const Point from = map_.vertices[map_.origin(h)], to = map_.vertices[map_.target(h)];
        judge(from);
        const Point middle = map_.at(edge, 0.5);
        judge(middle);
        if (std::abs(strongest) <= tolerance::height) judge(middle + 0.01 * left_of(to - from));
        h = map_.next[h];
      } while (h != start);
    }
    return strongest > 0 ? std::tuple{strongest, -least, at_least} : std::tuple{strongest, most, at_most};
  }

  /// What the wood of a face ends at.
  Candidates::Form lowest(int face, const Candidates& here) const {
    std::optional<Candidates::Form> found;
    const auto take = [&](const BoundingSurface& bound, int feature) {
      if (!found || ordered(face, bound, found->bound) < -tolerance::height) found = {bound, feature};
    };
    if (here.level) take(*here.level, here.level_feature);
    if (here.moved) take(*here.moved, here.moved_feature);
    for (const Candidates::Form& form : here.forms) take(form.bound, form.feature);
    return *found;
  }

  std::vector<Cell> resolved(const std::vector<Candidates>& candidates) {
    cells_.assign(candidates.size(), {});
    for (int face = 1; face < static_cast<int>(candidates.size()); ++face) {
      const Candidates& here = candidates[face];
      if (!here.wood) continue;
      const auto [top, top_feature] = lowest(face, here);
      const BoundingSurface bottom{BoundingSurface::Kind::level, here.bottom};
      if (ordered(face, top, bottom) <= tolerance::height) continue;
      Cell& cell = cells_[face];
      cell.top = top;
      cell.bottom = bottom;
      cell.feature = top_feature;
      cell.bottom_feature = here.bottom_feature;
      if (here.trough) bore(face, *here.trough, here.hole_feature);
    }
    return std::move(cells_);
  }

  /// Takes the wood of a side hole from a cell.
  void bore(int face, const BoundingSurface& trough, int feature) {
    Cell& cell = cells_[face];
    const BoundingSurface vault = vault_over(trough);
    const auto higher = [&](const BoundingSurface& a, const BoundingSurface& b) {
      return difference(face, a, b) > tolerance::height;
    };
    if (!higher(cell.top, trough) || !higher(vault, cell.bottom)) return;
    const bool below = higher(trough, cell.bottom), above = higher(cell.top, vault);
    cell.hole_feature = feature;
    if (below) cell.trough = trough;
    if (above) cell.vault = vault;
    if (!above) cell.top = {};
    if (!below) cell.bottom = {};
  }

  const Subdivision& map_;
  const Surface& surface_;
  std::vector<Cell> cells_;
};

}  // namespace

std::vector<Cell> cells_of(const Subdivision& map, const Surface& surface, const std::vector<Candidates>& candidates) {
  return Resolver(map, surface).resolved(candidates);
}

}  // namespace sagitta
