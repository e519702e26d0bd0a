#include "inlay/Meetings.hpp"

#include <algorithm>
#include <map>

#include "inlay/NarrowPlaces.hpp"
#include "inlay/OpenClose.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/Clusters.hpp"
#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

constexpr double beside = 0.001;  // mm; between a wall and the pockets that it parts

struct Way {
  double size = 0;
  Point middle;
};

/// The shortest way from the points of one outline to the other outline, where it is shorter than the best so far.
void shorten(const Region& points, const OutlineIndex& outline, Way& best) {
  for (const Polygon& polygon : points)
    for (const Point p : polygon) {
      if (!outline.reaches(p, best.size)) continue;
      if (const auto nearest = outline.nearest(p); nearest.distance < best.size)
        best = {nearest.distance, between(p, nearest.p, 0.5)};
    }
}

/// The shortest way between two outlines, where it is shorter than `most`.
Way shortest(const Region& a, const OutlineIndex& of_a, const Region& b, const OutlineIndex& of_b, double most) {
  Way best{most, {}};
  shorten(a, of_b, best);
  shorten(b, of_a, best);
  return best;
}

/// One piece with what is asked of it again and again.
struct Looked {
  const Island* island;
  const Region* piece;
  OutlineIndex index;
};

bool touches(const Region& part, const Region& pocket) {
  const OutlineIndex index(pocket);
  return std::any_of(part.begin(), part.end(), [&](const Polygon& polygon) {
    return std::any_of(polygon.begin(), polygon.end(), [&](Point p) { return index.reaches(p, beside); });
  });
}

}  // namespace

std::vector<PartMeeting> meetings_of(const std::vector<Island>& islands, const IslandCut& cut) {
  if (cut.clearance <= 0) return {};
  std::vector<Looked> looked;
  std::vector<Box> boxes;
  for (const Island& island : islands)
    for (const IslandPart& part : island.parts) {
      looked.push_back({&island, &part.piece_polygons, OutlineIndex(part.piece_polygons)});
      boxes.push_back(bounds(part.piece_polygons));
    }
  std::vector<PartMeeting> found;
  const double reach = 3 * cut.clearance - tolerance::snap;
  std::map<const Island*, OutlineIndex> drawn;
  const auto drawn_index = [&](const Island& island) -> const OutlineIndex& {
    return drawn.try_emplace(&island, island.drawn).first->second;
  };
  for (const std::vector<int>& near : clusters(boxes, reach))
    for (std::size_t k = 0; k < near.size(); ++k)
      for (std::size_t i = 0; i < k; ++i) {
        const Looked &a = looked[near[i]], &b = looked[near[k]];
        if (a.island == b.island || !boxes[near[i]].overlaps(boxes[near[k]], reach)) continue;
        if (!a.index.reaches(*b.piece, reach)) continue;
        const Way way = shortest(*a.piece, a.index, *b.piece, b.index, reach);
        if (way.size >= reach) continue;
        const Region &drawn_a = a.island->drawn, &drawn_b = b.island->drawn;
        const OutlineIndex &of_a = drawn_index(*a.island), &of_b = drawn_index(*b.island);
        // Both have a point near the middle: they are no further apart than these two.
        const double most = of_a.nearest(way.middle).distance + of_b.nearest(way.middle).distance + tolerance::snap;
        const double apart = shortest(drawn_a, of_a, drawn_b, of_b, most).size;
        found.push_back({near[i], near[k], way.size - 2 * cut.clearance, apart, way.middle});
      }
  return found;
}

Region wall_between(const Region& a, const Region& b, const IslandCut& cut, const Cancel& cancel) {
  const double reach = cut.clearance + 3 * cut.radius;
  const Box one = bounds(a).grown(reach), other = bounds(b).grown(reach);
  const Point low{std::max(one.low.x, other.low.x), std::max(one.low.y, other.low.y)},
      high{std::min(one.high.x, other.high.x), std::min(one.high.y, other.high.y)};
  const Region window{{low, {high.x, low.y}, high, {low.x, high.y}}};
  const Region both = intersection(union_of(a, b, cancel), window, cancel);
  const Region cuttable = opened(closed(both, cut.clearance / 2, cancel), cut.radius, cancel);
  Region wall;
  for (const Region& part : true_parts(difference(cuttable, both, cancel)))
    if (touches(part, a) && touches(part, b)) wall.insert(wall.end(), part.begin(), part.end());
  return wall;
}

}  // namespace sagitta
