#include "plan/Seats.hpp"

#include <utility>

namespace sagitta {

Seats::Seats(std::vector<Point>& points, double radius) : points_(&points), radius_(radius) {
  latest_.reserve(points.size());
  earlier_.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) keep(static_cast<int>(i));
}

int Seats::near(Point p) const {
  int best = -1;
  double least = radius_;
  for (Key x = bucket(p.x - radius_); x <= bucket(p.x + radius_); ++x)
    for (Key y = bucket(p.y - radius_); y <= bucket(p.y + radius_); ++y) {
      const auto found = latest_.find(key(x, y));
      for (int i = found == latest_.end() ? -1 : found->second; i >= 0; i = earlier_[i]) {
        const double away = distance((*points_)[i], p);
        if (away > least || (away == least && (best < 0 || i > best))) continue;
        least = away;
        best = i;
      }
    }
  return best;
}

int Seats::add(Point p) {
  points_->push_back(p);
  keep(static_cast<int>(points_->size()) - 1);
  return static_cast<int>(points_->size()) - 1;
}

/// Squares four times as large as the radius: most places need only their own looked into.
Seats::Key Seats::bucket(double v) const { return static_cast<Key>(std::floor(v / (4 * radius_))); }

void Seats::keep(int i) {
  const auto [here, fresh] = latest_.try_emplace(key(bucket((*points_)[i].x), bucket((*points_)[i].y)), i);
  earlier_.push_back(fresh ? -1 : std::exchange(here->second, i));
}

}  // namespace sagitta
