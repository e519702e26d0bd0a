#include "inlay/Narrowest.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

struct Side {
  Point a, b, way;   ///< way: unit vector from a to b
  double along = 0;  ///< length of outline before it
  int loop = 0;
};

/// Sides that follow each other, their box and the directions that they take.
struct Stretch {
  std::size_t first = 0, last = 0;
  Box box;
  Point way;                   ///< of the first
  double left = 0, right = 0;  ///< radians that others turn away from it
};

constexpr std::size_t most_sides = 16;

double turn(Point a, Point b) { return std::atan2(cross(a, b), dot(a, b)); }

double apart(const Box& a, const Box& b) {
  const double x = std::max({0.0, a.low.x - b.high.x, b.low.x - a.high.x});
  const double y = std::max({0.0, a.low.y - b.high.y, b.low.y - a.high.y});
  return std::sqrt(x * x + y * y);
}

class NeckSearch {
 public:
  NeckSearch(const Region& region, bool inside, double opposite)
      : inside_(inside), opposite_(opposite), least_turn_(std::acos(opposite)) {
    std::size_t count = 0;
    for (const Polygon& polygon : region) count += polygon.size();
    sides_.reserve(count);
    for (const Polygon& polygon : region) add(polygon);
    std::sort(stretches_.begin(), stretches_.end(),
              [](const Stretch& a, const Stretch& b) { return a.box.low.x < b.box.low.x; });
  }

  Narrowest run(double most) {
    for (const double look : {most / 64, most / 16, most / 4, most}) {
      search(look);
      if (best_.width <= look) break;
    }
    return best_;
  }

  /// Whether any is less than `than`.
  bool any(double than) {
    search(than, true);
    return best_.width < than;
  }

  /// For each side.
  std::vector<double> each(double most) {
    widths_.assign(sides_.size(), Narrowest{}.width);
    search(most);
    return std::move(widths_);
  }

 private:
  void add(const Polygon& polygon) {
    double along = 0;
    const std::size_t begin = sides_.size();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const double size = std::sqrt(dot(b - a, b - a));
      if (size > 0) sides_.push_back({a, b, (1 / size) * (b - a), along, static_cast<int>(perimeters_.size())});
      along += size;
    }
    perimeters_.push_back(along);
    for (std::size_t first = begin; first < sides_.size(); first += most_sides) {
      Stretch stretch{first, std::min(first + most_sides, sides_.size()), {}, sides_[first].way};
      for (std::size_t i = stretch.first; i < stretch.last; ++i) {
        stretch.box.add(sides_[i].a);
        stretch.box.add(sides_[i].b);
        const double away = turn(stretch.way, sides_[i].way);
        stretch.left = std::max(stretch.left, away);
        stretch.right = std::max(stretch.right, -away);
      }
      stretches_.push_back(stretch);
    }
  }

  bool may_face(const Stretch& s, const Stretch& t) const {
    const double away = turn(s.way, t.way);  // the greatest turn from one of s to one of t
    return std::max(away + t.left + s.right, -away + t.right + s.left) >= least_turn_;
  }

  /// `once`: the first that is found serves.
  void search(double look, bool once = false) {
    for (std::size_t i = 0; i < stretches_.size() && !(once && best_.width < look); ++i)
      for (std::size_t k = i; k < stretches_.size(); ++k) {
        const double reach = std::min(look, best_.width);
        const Stretch &s = stretches_[i], &t = stretches_[k];
        if (t.box.low.x > s.box.high.x + reach) break;
        if (t.box.low.y > s.box.high.y + reach || s.box.low.y > t.box.high.y + reach) continue;
        if (apart(s.box, t.box) > reach || !may_face(s, t)) continue;
        compare(s, t, look);
        if (i != k) compare(t, s, look);
      }
  }

  void compare(const Stretch& from, const Stretch& to, double look) {
    for (std::size_t i = from.first; i < from.last; ++i) {
      const Side& s = sides_[i];
      const Point p = between(s.a, s.b, 0.5), inward = inside_ ? left_of(s.way) : -1.0 * left_of(s.way);
      if (apart({p, p}, to.box) > std::min(look, best_.width)) continue;
      for (std::size_t k = to.first; k < to.last; ++k) {
        const Side& t = sides_[k];
        if (dot(t.way, s.way) > opposite_) continue;
        const double size = dot(t.b - t.a, t.way);
        const Point q = t.a + std::clamp(dot(p - t.a, t.way), 0.0, size) * t.way;
        const double ahead = dot(q - p, inward), square = dot(q - p, q - p);
        if (ahead <= 0 || 4 * ahead * ahead <= square || square >= ahead * std::min(look, best_.width)) continue;
        // The width is that of the disc that touches here and passes through q.
        if (!one_corner(s, t, std::sqrt(square))) found(i, k, {square / ahead, between(p, q, 0.5)});
      }
    }
  }

  void found(std::size_t i, std::size_t k, const Narrowest& width) {
    if (widths_.empty()) {
      best_ = width;
    } else {
      for (const std::size_t side : {i, k}) widths_[side] = std::min(widths_[side], width.width);
    }
  }

  bool one_corner(const Side& s, const Side& t, double away) const {
    if (s.loop != t.loop) return false;
    const double way = std::abs(s.along - t.along);
    return std::min(way, perimeters_[s.loop] - way) < 4 * away;
  }

  bool inside_;
  double opposite_, least_turn_;  ///< greatest cosine between directions that face each other, and its angle
  std::vector<Side> sides_;
  std::vector<Stretch> stretches_;
  std::vector<double> perimeters_;  ///< for each loop
  Narrowest best_;
  std::vector<double> widths_;  ///< of each side, where they are asked for
};

}  // namespace

Narrowest narrowest(const Region& region, bool inside, double most, double opposite) {
  return NeckSearch(region, inside, opposite).run(most);
}

bool narrower(const Region& region, bool inside, double than) { return NeckSearch(region, inside, facing).any(than); }

std::vector<std::vector<double>> widths(const Region& region, bool inside, double most) {
  const std::vector<double> flat = NeckSearch(region, inside, facing).each(most);
  std::vector<std::vector<double>> found;
  auto from = flat.begin();
  for (const Polygon& polygon : region) {
    found.emplace_back(from, from + static_cast<std::ptrdiff_t>(polygon.size()));
    from += static_cast<std::ptrdiff_t>(polygon.size());
  }
  return found;
}

}  // namespace sagitta
