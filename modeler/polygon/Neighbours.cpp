#include "polygon/Neighbours.hpp"

#include <algorithm>
#include <cstdint>

#include "polygon/Clusters.hpp"
#include "polygon/DisjointSets.hpp"
#include "polygon/PolygonFigures.hpp"

namespace sagitta {
namespace {

constexpr double most_cells = 500;           // along the larger side of what is looked at
constexpr std::size_t worth_looking = 3000;  // points

/// Which polygons pass through which cells of a grid.
class CellVisits {
 public:
  CellVisits(Point low, double cell) : low_(low), cell_(cell) {}

  void add(const Polygon& polygon, int own) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const double square = dot(b - a, b - a);
      const int n = square < cell_ * cell_ / 4 ? 1 : 1 + static_cast<int>(std::sqrt(square) / (cell_ / 2));
      for (int k = 0; k < n; ++k) {
        const Visit visit{key(between(a, b, 1.0 * k / n)), own};
        if (visits_.empty() || visits_.back() != visit) visits_.push_back(visit);
      }
    }
  }

  /// Joins polygons that pass through one cell or through cells beside each other.
  void join(DisjointSets& groups) {
    std::sort(visits_.begin(), visits_.end());
    visits_.erase(std::unique(visits_.begin(), visits_.end()), visits_.end());
    // Cells before the own one: the others look back at it.
    for (const std::int64_t beside : {std::int64_t{0}, std::int64_t{1}, row - 1, row, row + 1}) {
      auto at = visits_.begin();
      for (const Visit& visit : visits_) {
        while (at->first < visit.first - beside) ++at;
        for (auto other = at; other->first == visit.first - beside && *other != visit; ++other)
          groups.join(visit.second, other->second);
      }
    }
  }

 private:
  using Visit = std::pair<std::int64_t, int>;
  static constexpr std::int64_t row = std::int64_t{1} << 20;
  std::int64_t key(Point p) const {
    return static_cast<std::int64_t>((p.x - low_.x) / cell_) + 1 +
           row * static_cast<std::int64_t>((p.y - low_.y) / cell_);
  }

  Point low_;
  double cell_;
  std::vector<Visit> visits_;
};

std::vector<Neighbours> of_cluster(const std::vector<const Polygon*>& polygons, const std::vector<Box>& boxes,
                                   const std::vector<int>& cluster, double reach) {
  Box whole;
  for (const int i : cluster) whole.add(boxes[i].low), whole.add(boxes[i].high);
  const double size = std::max(whole.high.x - whole.low.x, whole.high.y - whole.low.y);
  CellVisits cells(whole.low, std::max({2 * reach, size / most_cells, 1e-3}));
  for (const int i : cluster) cells.add(*polygons[i], i);
  DisjointSets groups(polygons.size());
  cells.join(groups);
  std::vector<Neighbours> found;
  std::vector<int> place(polygons.size(), -1);
  for (const int i : cluster) {
    int& own = place[groups.of(i)];
    if (own < 0) own = static_cast<int>(found.size()), found.emplace_back();
    found[own].members.push_back(i);
  }
  for (Neighbours& group : found)
    for (const int i : cluster) {
      if (groups.of(i) == groups.of(group.members.front())) continue;
      const Point p = polygons[group.members.front()]->front();
      const Box& box = boxes[i];
      if (p.x > box.low.x && p.x < box.high.x && p.y > box.low.y && p.y < box.high.y && contains(*polygons[i], p))
        group.about.push_back(i);
    }
  return found;
}

}  // namespace

std::vector<Neighbours> neighbours(const std::vector<const Polygon*>& polygons, double reach) {
  std::vector<Box> boxes;
  for (const Polygon* polygon : polygons) boxes.push_back(bounds(*polygon));
  std::vector<Neighbours> found;
  for (const std::vector<int>& cluster : clusters(boxes, reach)) {
    std::size_t points = 0;
    for (const int i : cluster) points += polygons[i]->size();
    if (cluster.size() < 3 || points < worth_looking) {
      found.push_back({cluster, {}});
    } else {
      for (Neighbours& group : of_cluster(polygons, boxes, cluster, reach)) found.push_back(std::move(group));
    }
  }
  return found;
}

}  // namespace sagitta
