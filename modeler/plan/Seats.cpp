#include "plan/Seats.hpp"

namespace sagitta {

Seats::Seats(std::vector<Point>& points, double radius) : points_(&points), radius_(radius) {
  grid_.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) keep(static_cast<int>(i));
}

int Seats::near(Point p) const {
  int best = -1;
  double least = radius_;
  const Key bx = bucket(p.x), by = bucket(p.y);
  for (Key x = bx - 1; x <= bx + 1; ++x)
    for (Key y = by - 1; y <= by + 1; ++y) {
      const auto [first, last] = grid_.equal_range(key(x, y));
      for (auto it = first; it != last; ++it) {
        const double away = distance((*points_)[it->second], p);
        if (away > least || (away == least && (best < 0 || it->second > best))) continue;
        least = away;
        best = it->second;
      }
    }
  return best;
}

int Seats::add(Point p) {
  points_->push_back(p);
  keep(static_cast<int>(points_->size()) - 1);
  return static_cast<int>(points_->size()) - 1;
}

Seats::Key Seats::bucket(double v) const { return static_cast<Key>(std::floor(v / radius_)); }

void Seats::keep(int i) { grid_.emplace(key(bucket((*points_)[i].x), bucket((*points_)[i].y)), i); }

}  // namespace sagitta
