#include "inlay/PartPocket.hpp"

#include <algorithm>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Biarc.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/Clusters.hpp"
#include "polygon/DisjointSets.hpp"
#include "polygon/Extent.hpp"

namespace sagitta {
namespace {

constexpr double one_way = 0.01;       // radians; more between two pieces is a corner
constexpr double least_piece = 0.001;  // mm; of a moved arc, and of its radius

/// Whether every piece has its own image when the outlines are moved out by `by`.
bool moves_whole(const Loops& loops, double by) {
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const CurveSegment &segment = loop[i], &next = loop[i + 1 < loop.size() ? i + 1 : 0];
      const Point in = end_direction(segment), out = unit(next.slope(0));
      if (dot(in, out) < 0 || std::abs(cross(in, out)) > one_way) return false;
      const double radius = segment.radius + (segment.sweep > 0 ? by : -by);
      if (segment.is_arc() && (radius < least_piece || radius * std::abs(segment.sweep) < least_piece)) return false;
    }
  return true;
}

Region without_skins(const Region& pocket, const Cancel& cancel) {
  if (!narrower(pocket, false, 2 * tolerance::snap)) return pocket;
  return offset(offset(pocket, tolerance::snap, cancel), -tolerance::snap, cancel);
}

/// The pockets of a figure on their way to one set of outlines.
class Pockets {
 public:
  Pockets(const std::vector<Island>& islands, const std::vector<PartMeeting>& meetings, const IslandCut& cut,
          const Cancel& cancel)
      : meetings_(meetings), cut_(cut), cancel_(cancel) {
    for (const Island& island : islands)
      for (const IslandPart& part : island.parts) parts_.push_back(&part);
  }

  Loops run() const {
    Loops all;
    const auto add = [&](const Loops& loops) { all.insert(all.end(), loops.begin(), loops.end()); };
    for (const std::vector<int>& ours : touching()) {
      if (cancel_.wanted()) return {};
      if (ours.size() == 1) {
        add(parts_[ours.front()]->pocket);
        continue;
      }
      for (const Region& part : parts(without_skins(together(ours), cancel_))) {
        if (cancel_.wanted()) return {};
        const int own = alone(part, ours);
        add(own >= 0 ? parts_[own]->pocket : fit_arc_splines(part, tolerance::refit, cut_.radius));
      }
    }
    return all;
  }

 private:
  const Region& polygons(int i) const { return parts_[i]->clear(); }

  /// The pockets in groups of those that meet or touch.
  std::vector<std::vector<int>> touching() const {
    std::vector<Extent> extents;
    for (const IslandPart* part : parts_) extents.emplace_back(part->clear());
    std::vector<Box> boxes;
    for (const Extent& extent : extents) boxes.push_back(extent.box());
    DisjointSets groups(parts_.size());
    for (const PartMeeting& meeting : meetings_) groups.join(meeting.a, meeting.b);
    for (const std::vector<int>& near : clusters(boxes, 2 * tolerance::snap))
      for (std::size_t i = 0; i < near.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
          if (groups.of(near[i]) != groups.of(near[k]) &&
              extents[near[i]].may_meet(extents[near[k]], 2 * tolerance::snap))
            groups.join(near[i], near[k]);
    std::vector<std::vector<int>> found(parts_.size());
    for (int i = 0; i < static_cast<int>(parts_.size()); ++i) found[groups.of(i)].push_back(i);
    std::erase_if(found, [](const auto& group) { return group.empty(); });
    return found;
  }

  Region together(const std::vector<int>& ours) const {
    Region all;
    for (const int i : ours) all.insert(all.end(), polygons(i).begin(), polygons(i).end());
    Region walls;
    for (const PartMeeting& meeting : meetings_) {
      if (meeting.wood <= 0 || !std::binary_search(ours.begin(), ours.end(), meeting.a)) continue;
      const Region wall = wall_between(polygons(meeting.a), polygons(meeting.b), cut_, cancel_);
      for (Polygon& polygon : offset(wall, tolerance::snap, cancel_)) walls.push_back(std::move(polygon));
    }
    all = filled(all, cancel_);
    return walls.empty() ? all : union_of(all, walls, cancel_);
  }

  /// The pocket among `ours` that is the part, whole and alone; -1: none.
  int alone(const Region& part, const std::vector<int>& ours) const {
    const Box box = bounds(part);
    for (const int i : ours) {
      const Region& own = polygons(i);
      if (own.size() != part.size()) continue;
      const Box other = bounds(own);
      if (distance(box.low, other.low) > tolerance::vertex || distance(box.high, other.high) > tolerance::vertex)
        continue;
      if (std::abs(area(own) - area(part)) < tolerance::snap * tolerance::snap) return i;
    }
    return -1;
  }

  const std::vector<PartMeeting>& meetings_;
  IslandCut cut_;
  const Cancel& cancel_;
  std::vector<const IslandPart*> parts_;
};

}  // namespace

PartPocket part_pocket(const Loops& piece, const Region& polygons, double clearance, double least_radius,
                       const Cancel& cancel) {
  if (clearance <= 0) return {piece, polygons, {}};
  PartPocket pocket;
  if (moves_whole(piece, clearance) && !narrower(polygons, false, 2 * (clearance + tolerance::snap))) {
    pocket.outlines = nudged(piece, clearance);
  } else {
    // Where the piece turns in as tightly as the cutter, its pocket does so more tightly by the clearance.
    pocket.grown_piece = offset(polygons, clearance, cancel);
    pocket.outlines = fit_arc_splines(without_skins(pocket.grown_piece, cancel), tolerance::refit, least_radius,
                                      std::max(0.0, least_radius - clearance));
  }
  pocket.polygons = flattened(pocket.outlines, tolerance::fine_chords);
  return pocket;
}

Loops run_together(const std::vector<Island>& islands, const std::vector<PartMeeting>& meetings, const IslandCut& cut,
                   const Cancel& cancel) {
  return Pockets(islands, meetings, cut, cancel).run();
}

}  // namespace sagitta
