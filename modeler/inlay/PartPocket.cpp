#include "inlay/PartPocket.hpp"

#include <algorithm>

#include "inlay/Biarc.hpp"
#include "inlay/Clusters.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/Refit.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double one_way = 0.01;       // radians; more between two pieces is a corner
constexpr double least_piece = 0.001;  // mm; of a moved arc, and of its radius

/// Whether every piece has its own image when the outlines are moved out by `by`.
bool moves_whole(const Loops& loops, double by) {
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Piece &piece = loop[i], &next = loop[i + 1 < loop.size() ? i + 1 : 0];
      const Point in = end_direction(piece), out = unit(next.slope(0));
      if (dot(in, out) < 0 || std::abs(cross(in, out)) > one_way) return false;
      const double radius = piece.radius + (piece.sweep > 0 ? by : -by);
      if (piece.is_arc() && (radius < least_piece || radius * std::abs(piece.sweep) < least_piece)) return false;
    }
  return true;
}

Region without_skins(const Region& pocket, const Cancel& cancel) {
  if (narrowest(pocket, false, 2 * tolerance::snap).width > 2 * tolerance::snap) return pocket;
  return grown(grown(pocket, tolerance::snap, cancel), -tolerance::snap, cancel);
}

/// The pocket among `ours` that is the part, whole and alone; -1: none.
int alone(const Region& part, const std::vector<PartPocket>& pockets, const std::vector<int>& ours) {
  const Box box = bounds(part);
  for (const int i : ours) {
    const Region& own = pockets[i].polygons;
    if (own.size() != part.size()) continue;
    const Box other = bounds(own);
    if (distance(box.low, other.low) > tolerance::vertex || distance(box.high, other.high) > tolerance::vertex) continue;
    if (std::abs(area(own) - area(part)) < tolerance::snap * tolerance::snap) return i;
  }
  return -1;
}

}  // namespace

Loops part_pocket(const Loops& piece, double clearance, double least_radius, const Cancel& cancel) {
  if (clearance <= 0) return piece;
  const double reach = 2 * (clearance + tolerance::snap);
  const Region polygons = flattened(piece, fine_chords);
  if (moves_whole(piece, clearance) && narrowest(polygons, false, reach).width > reach) return nudged(piece, clearance);
  return refitted(without_skins(grown(polygons, clearance, cancel), cancel), refit_tolerance, least_radius);
}

Loops run_together(const std::vector<PartPocket>& pockets, double least_radius, const Cancel& cancel) {
  std::vector<Box> boxes;
  for (const PartPocket& pocket : pockets) boxes.push_back(bounds(pocket.polygons));
  Loops all;
  const auto add = [&](const Loops& loops) { all.insert(all.end(), loops.begin(), loops.end()); };
  for (const std::vector<int>& ours : clusters(boxes, 2 * tolerance::snap)) {
    if (cancel.wanted()) return {};
    if (ours.size() == 1) {
      add(pockets[ours.front()].outlines);
      continue;
    }
    Region polygons;
    for (const int i : ours) polygons.insert(polygons.end(), pockets[i].polygons.begin(), pockets[i].polygons.end());
    for (const Region& part : parts(without_skins(filled(polygons, cancel), cancel))) {
      if (cancel.wanted()) return {};
      const int own = alone(part, pockets, ours);
      add(own >= 0 ? pockets[own].outlines : refitted(part, refit_tolerance, least_radius));
    }
  }
  return all;
}

}  // namespace sagitta
