#include "inlay/Island.hpp"

#include <algorithm>
#include <numeric>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/OpenClose.hpp"
#include "inlay/PartPocket.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/Extent.hpp"

namespace sagitta {
namespace {

/// Finds what lies near each island, from left to right.
void find_earlier(std::vector<Island>& islands, double reach) {
  std::vector<int> order(islands.size()), active;
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(),
            [&](int a, int b) { return std::pair(islands[a].box.low.x, a) < std::pair(islands[b].box.low.x, b); });
  for (const int i : order) {
    std::erase_if(active, [&](int k) { return islands[k].box.high.x + reach < islands[i].box.low.x; });
    for (const int k : active)
      if (islands[i].box.overlaps(islands[k].box, reach)) islands[std::max(i, k)].earlier.push_back(std::min(i, k));
    active.push_back(i);
  }
  for (Island& island : islands) std::sort(island.earlier.begin(), island.earlier.end());
}

/// What lies within the clearance of earlier pieces near an island.
Region taken_near(const std::vector<Island>& islands, int own, double reach) {
  Extent extent(islands[own].drawn);
  Region taken;
  for (const int k : islands[own].earlier)
    for (const IslandPart& part : islands[k].parts)
      if (extent.may_meet(Extent(part.clear()), reach))
        taken.insert(taken.end(), part.clear().begin(), part.clear().end());
  return taken;
}

IslandPart part_of(const Region& polygons, const IslandCut& cut, const Cancel& cancel) {
  IslandPart part;
  part.piece = fit_arc_splines(polygons, tolerance::refit, cut.radius, cut.radius);
  part.piece_polygons = flattened(part.piece, tolerance::fine_chords);
  PartPocket pocket = part_pocket(part.piece, part.piece_polygons, cut.clearance, cut.radius, cancel);
  part.kept_clear = std::move(pocket.grown_piece);
  part.pocket = std::move(pocket.outlines);
  part.pocket_polygons = std::move(pocket.polygons);
  return part;
}

/// The parts of an island lie a cutter's width apart. Where that is less than the clearance, a later part loses the
/// difference.
void add_parts(Island& island, const Region& polygons, const IslandCut& cut, const Region& taken,
               const Cancel& cancel) {
  Region before;
  if (2 * cut.radius < cut.clearance)
    for (const IslandPart& part : island.parts) before.insert(before.end(), part.clear().begin(), part.clear().end());
  if (before.empty() || intersection(polygons, before, cancel).empty()) {
    island.parts.push_back(part_of(polygons, cut, cancel));
    return;
  }
  Region all = taken;
  all.insert(all.end(), before.begin(), before.end());
  for (const Region& part :
       parts(open_close(difference(polygons, before, cancel), cut.fitted_radius(), all, cancel).region))
    if (area(part) > tolerance::crumb) island.parts.push_back(part_of(part, cut, cancel));
}

}  // namespace

double IslandCut::room() const { return std::min(tolerance::cutter_room, radius / 8); }

std::vector<Island> islands_of(const std::vector<Region>& drawn, const IslandCut& cut) {
  std::vector<Island> islands;
  for (int i = 0; i < static_cast<int>(drawn.size()); ++i)
    for (Region& part : parts(drawn[i])) {
      Island& island = islands.emplace_back();
      island.region = i;
      island.box = bounds(part);
      island.drawn = std::move(part);
    }
  find_earlier(islands, 2 * (cut.clearance + cut.fitted_radius()));
  return islands;
}

std::vector<std::vector<int>> turns_of(const std::vector<Island>& islands) {
  std::vector<std::vector<int>> found;
  std::vector<std::size_t> turn(islands.size());
  for (int i = 0; i < static_cast<int>(islands.size()); ++i) {
    for (const int k : islands[i].earlier) turn[i] = std::max(turn[i], turn[k] + 1);
    if (turn[i] >= found.size()) found.resize(turn[i] + 1);
    found[turn[i]].push_back(i);
  }
  return found;
}

void fit_island(std::vector<Island>& islands, int own, const IslandCut& cut, const Cancel& cancel) {
  Island& island = islands[own];
  const double radius = cut.fitted_radius();
  const Region taken = taken_near(islands, own, 2 * radius);
  OpenClosed made =
      open_close(taken.empty() ? island.drawn : difference(island.drawn, taken, cancel), radius, taken, cancel);
  island.narrow = made.narrow;
  if (cancel.wanted()) return;
  for (const Region& polygons : parts(made.region)) {
    if (cancel.wanted()) return;
    if (area(polygons) > tolerance::crumb) add_parts(island, polygons, cut, taken, cancel);
  }
}

}  // namespace sagitta
