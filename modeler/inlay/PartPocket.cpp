#include "inlay/PartPocket.hpp"

#include <algorithm>

#include "inlay/Biarc.hpp"
#include "inlay/Clusters.hpp"
#include "inlay/Extent.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/Refit.hpp"
#include "plane/Groups.hpp"
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
    if (distance(box.low, other.low) > tolerance::vertex || distance(box.high, other.high) > tolerance::vertex)
      continue;
    if (std::abs(area(own) - area(part)) < tolerance::snap * tolerance::snap) return i;
  }
  return -1;
}

/// The pockets in groups of those that may touch.
std::vector<std::vector<int>> touching(const std::vector<PartPocket>& pockets) {
  std::vector<Extent> extents;
  for (const PartPocket& pocket : pockets) extents.emplace_back(pocket.polygons);
  std::vector<Box> boxes;
  for (const Extent& extent : extents) boxes.push_back(extent.box());
  Groups groups(pockets.size());
  for (const std::vector<int>& near : clusters(boxes, 2 * tolerance::snap))
    for (std::size_t i = 0; i < near.size(); ++i)
      for (std::size_t k = 0; k < i; ++k)
        if (groups.of(near[i]) != groups.of(near[k]) &&
            extents[near[i]].may_meet(extents[near[k]], 2 * tolerance::snap))
          groups.join(near[i], near[k]);
  std::vector<std::vector<int>> found(pockets.size());
  for (int i = 0; i < static_cast<int>(pockets.size()); ++i) found[groups.of(i)].push_back(i);
  std::erase_if(found, [](const auto& group) { return group.empty(); });
  return found;
}

}  // namespace

PartPocket part_pocket(const Loops& piece, double clearance, double least_radius, const Cancel& cancel) {
  const auto made = [](Loops outlines, bool parallel) {
    Region own = flattened(outlines, fine_chords);
    return PartPocket{std::move(outlines), std::move(own), parallel};
  };
  if (clearance <= 0) return made(piece, true);
  const double reach = 2 * (clearance + tolerance::snap);
  const Region polygons = flattened(piece, fine_chords);
  if (moves_whole(piece, clearance) && narrowest(polygons, false, reach).width > reach)
    return made(nudged(piece, clearance), true);
  return made(refitted(without_skins(grown(polygons, clearance, cancel), cancel), refit_tolerance, least_radius),
              false);
}

Loops run_together(const std::vector<PartPocket>& pockets, double least_radius, const Cancel& cancel) {
  Loops all;
  const auto add = [&](const Loops& loops) { all.insert(all.end(), loops.begin(), loops.end()); };
  for (const std::vector<int>& ours : touching(pockets)) {
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
