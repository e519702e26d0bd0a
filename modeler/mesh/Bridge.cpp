#include <algorithm>

#include "mesh/Ears.hpp"
#include "mesh/Turn.hpp"

namespace sagitta {
namespace {

bool crosses(Point a, Point b, Point p, Point q) {
  if (a == p || a == q || b == p || b == q) return false;
  return turn(a, b, p) * turn(a, b, q) <= 0 && turn(p, q, a) * turn(p, q, b) <= 0;
}

class Bridger {
 public:
  explicit Bridger(const std::vector<std::vector<Point>>& loops) {
    int at = 0;
    for (const auto& loop : loops) {
      const int first = at;
      for (const Point p : loop) {
        points_.push_back(p);
        sides_.emplace_back(at, at + 1 - first == static_cast<int>(loop.size()) ? first : at + 1);
        ++at;
      }
      starts_.push_back(first);
    }
    starts_.push_back(at);
  }

  std::vector<int> run() {
    std::vector<int> ring;
    for (int i = 0; i < starts_[1]; ++i) ring.push_back(i);
    for (std::size_t hole = 1; hole + 1 < starts_.size(); ++hole) let_in(starts_[hole], starts_[hole + 1], ring);
    return ring;
  }

 private:
  bool in_sight(int a, int b) const {
    return std::none_of(sides_.begin(), sides_.end(),
                        [&](const auto& s) { return crosses(points_[a], points_[b], points_[s.first], points_[s.second]); });
  }

  /// Whether the way from a ring's corner to p starts inside the ring: a place that is visited twice has two corners.
  bool starts_inside(const std::vector<int>& ring, std::size_t r, Point p) const {
    const Point last = points_[ring[(r + ring.size() - 1) % ring.size()]], at = points_[ring[r]];
    const Point next = points_[ring[(r + 1) % ring.size()]];
    const bool left_of_both = turn(last, at, p) > 0, left_of_next = turn(at, next, p) > 0;
    return turn(last, at, next) >= 0 ? left_of_both && left_of_next : left_of_both || left_of_next;
  }

  void let_in(int first, int end, std::vector<int>& ring) {
    double least = 1e300;
    std::size_t place = 0;
    int corner = first;
    for (std::size_t r = 0; r < ring.size(); ++r)
      for (int i = first; i < end; ++i) {
        const double d = distance(points_[ring[r]], points_[i]);
        if (d < least && starts_inside(ring, r, points_[i]) && in_sight(ring[r], i)) {
          least = d;
          place = r;
          corner = i;
        }
      }
    sides_.emplace_back(ring[place], corner);
    std::vector<int> detour;
    for (int k = 0; k <= end - first; ++k) detour.push_back(first + (corner - first + k) % (end - first));
    detour.push_back(ring[place]);
    ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(place) + 1, detour.begin(), detour.end());
  }

  std::vector<Point> points_;
  std::vector<std::pair<int, int>> sides_;
  std::vector<int> starts_;
};

}  // namespace

std::vector<int> bridged(const std::vector<std::vector<Point>>& loops) { return Bridger(loops).run(); }

}  // namespace sagitta
