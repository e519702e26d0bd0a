#include "mesh/Ears.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "mesh/Orient2d.hpp"

namespace sagitta {
namespace {

class EarCutter {
 public:
  explicit EarCutter(const std::vector<Point>& polygon) : points_(polygon) {
    const int n = static_cast<int>(polygon.size());
    for (int i = 0; i < n; ++i) {
      before_.push_back((i + n - 1) % n);
      after_.push_back((i + 1) % n);
      left_.push_back(i);
    }
    by_x_ = left_;
    std::sort(by_x_.begin(), by_x_.end(), [&](int a, int b) { return points_[a].x < points_[b].x; });
    is_left_.assign(polygon.size(), true);
    for (int i = 0; i < n; ++i) quality_.push_back(quality(i));
  }

  std::vector<std::array<int, 3>> run() {
    std::vector<std::array<int, 3>> triangles;
    while (left_.size() >= 3) {
      const auto worse = [&](int a, int b) { return quality_[a] < quality_[b]; };
      auto best = std::max_element(left_.begin(), left_.end(), worse);
      if (quality_[*best] <= 0) {
        for (const int i : left_)
          if (quality_[i] == blocked) quality_[i] = quality(i);
        best = std::max_element(left_.begin(), left_.end(), worse);
      }
      const int ear = *best;
      // Where nothing but a folded line is left, flat triangles close it: its two sides may be cut at different places.
      triangles.push_back({before_[ear], ear, after_[ear]});
      left_.erase(best);
      is_left_[ear] = false;
      const int a = before_[ear], b = after_[ear];
      after_[a] = b;
      before_[b] = a;
      quality_[a] = quality(a);
      quality_[b] = quality(b);
    }
    return triangles;
  }

 private:
  static constexpr double blocked = -1;

  /// Whether corner j, or a side that leaves it where it coincides with a corner of the triangle, lies within.
  bool inside(int j, Point a, Point b, Point c) const {
    const Point p = points_[j];
    if (p == a) return enters(j, a, b, c);
    if (p == b) return enters(j, b, c, a);
    if (p == c) return enters(j, c, a, b);
    return orient2d(a, b, p) >= 0 && orient2d(b, c, p) >= 0 && orient2d(c, a, p) >= 0;
  }

  /// A polygon that visits a place twice (a bridge to a hole) may run through the triangle from there.
  bool enters(int j, Point corner, Point next, Point last) const {
    for (const int k : {before_[j], after_[j]})
      if (orient2d(corner, next, points_[k]) > 0 && orient2d(corner, points_[k], last) > 0) return true;
    return false;
  }

  /// Area over the longest side squared; `blocked` while another corner lies within; 0 where the corner is no ear.
  double quality(int i) const {
    const Point a = points_[before_[i]], b = points_[i], c = points_[after_[i]];
    const double area = orient2d(a, b, c);
    if (area <= 0) return 0;
    const double high = std::max({a.x, b.x, c.x});
    auto at = std::lower_bound(by_x_.begin(), by_x_.end(), std::min({a.x, b.x, c.x}),
                               [&](int j, double x) { return points_[j].x < x; });
    for (; at != by_x_.end() && points_[*at].x <= high; ++at)
      if (is_left_[*at] && *at != i && *at != before_[i] && *at != after_[i] && inside(*at, a, b, c)) return blocked;
    const double longest = std::max({dot(b - a, b - a), dot(c - b, c - b), dot(a - c, a - c)});
    return area / longest;
  }

  const std::vector<Point>& points_;
  std::vector<int> before_, after_, left_;
  std::vector<int> by_x_;      ///< all corners, rising in x
  std::vector<bool> is_left_;  ///< corners not cut off yet
  std::vector<double> quality_;
};

double twice_area(const std::vector<Point>& polygon, const std::vector<int>& corners) {
  double sum = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum += cross(polygon[corners[i]], polygon[corners[(i + 1) % corners.size()]]);
  return sum;
}

/// Two visits to one place that part a polygon into two counter-clockwise ones: the second part, taken out of
/// `corners`. Empty where there are none: the polygon goes round a hole that it touches, or along a bridge to one.
std::vector<int> taken_apart(const std::vector<Point>& polygon, std::vector<int>& corners) {
  std::map<std::pair<double, double>, std::size_t> visited;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point p = polygon[corners[i]];
    const auto [first, fresh] = visited.try_emplace({p.x, p.y}, i);
    if (fresh) continue;
    const auto from = corners.begin() + static_cast<std::ptrdiff_t>(first->second);
    const auto to = corners.begin() + static_cast<std::ptrdiff_t>(i);
    std::vector<int> inner(from, to), outer(corners.begin(), from);
    outer.insert(outer.end(), to, corners.end());
    if (twice_area(polygon, inner) > 0 && twice_area(polygon, outer) > 0) {
      corners = std::move(outer);
      return inner;
    }
    first->second = i;
  }
  return {};
}

/// The parts of a polygon that touches itself from outside, each a corner list of its own.
std::vector<std::vector<int>> parted(const std::vector<Point>& polygon) {
  std::vector<int> all(polygon.size());
  std::iota(all.begin(), all.end(), 0);
  std::vector<std::vector<int>> open{std::move(all)}, parts;
  while (!open.empty()) {
    std::vector<int> corners = std::move(open.back());
    open.pop_back();
    std::vector<int> inner = taken_apart(polygon, corners);
    if (inner.empty()) {
      parts.push_back(std::move(corners));
    } else {
      open.push_back(std::move(corners));
      open.push_back(std::move(inner));
    }
  }
  return parts;
}

}  // namespace

std::vector<std::array<int, 3>> cut_ears(const std::vector<Point>& polygon) {
  std::vector<std::array<int, 3>> triangles;
  for (const std::vector<int>& part : parted(polygon)) {
    std::vector<Point> corners;
    for (const int i : part) corners.push_back(polygon[i]);
    for (const auto& [a, b, c] : EarCutter(corners).run()) triangles.push_back({part[a], part[b], part[c]});
  }
  return triangles;
}

}  // namespace sagitta
