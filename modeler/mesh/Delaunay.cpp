#include "mesh/Delaunay.hpp"

#include <algorithm>

#include "mesh/Orient2d.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Half-edge 3 t + k leaves corner k of triangle t for the next one.
class Flipper {
 public:
  Flipper(const std::vector<Point>& points, std::vector<std::array<int, 3>>& triangles)
      : points_(points), triangles_(triangles) {
    sort_sides();
    find_twins();
  }

  void run() {
    std::size_t left = 64 * sides_.size();  // Lawson's flips end by themselves; rounding may make two turn for ever
    while (!sides_.empty() && left-- > 0) {
      const Side side = sides_.back();
      sides_.pop_back();
      flip(side);
    }
  }

 private:
  struct Side {
    int from = 0, to = 0, at = 0;  ///< corners; the half-edge
  };

  static int after(int at) { return at % 3 == 2 ? at - 2 : at + 1; }
  int corner(int at) const { return triangles_[at / 3][at % 3]; }

  /// By `from`, then by `to`.
  void sort_sides() {
    const int count = 3 * static_cast<int>(triangles_.size());
    rows_.assign(points_.size() + 1, 0);
    for (int at = 0; at < count; ++at) ++rows_[corner(at) + 1];
    for (std::size_t i = 1; i < rows_.size(); ++i) rows_[i] += rows_[i - 1];
    sides_.resize(count);
    std::vector<int> next(rows_.begin(), rows_.end() - 1);
    for (int at = 0; at < count; ++at) sides_[next[corner(at)]++] = {corner(at), corner(after(at)), at};
    for (std::size_t i = 0; i + 1 < rows_.size(); ++i)
      std::sort(sides_.begin() + rows_[i], sides_.begin() + rows_[i + 1],
                [](const Side& a, const Side& b) { return a.to < b.to; });
  }

  void find_twins() {
    twin_.resize(sides_.size());
    for (const Side& side : sides_) {
      const auto end = sides_.begin() + rows_[side.to + 1];
      const auto twin = std::lower_bound(sides_.begin() + rows_[side.to], end, side.from,
                                         [](const Side& a, int to) { return a.to < to; });
      twin_[side.at] = twin != end && twin->to == side.from ? twin->at : -1;
    }
  }

  /// Whether the sum of the angles across a side, seen from c and d, is more than two right ones; relative, so that a
  /// tie is left as it is.
  static bool beyond(Point a, Point b, Point c, Point d) {
    const double sine = cross(a - c, b - c) * dot(b - d, a - d) + dot(a - c, b - c) * cross(b - d, a - d);
    return sine < -tolerance::same * (dot(b - a, b - a) * dot(d - c, d - c));
  }

  /// A side that was turned or has come into another triangle since it was laid aside is no longer at its half-edge: it
  /// was laid aside again then, if it is a side still. No other side joins c and d: it would cross this one.
  void flip(const Side& side) {
    const int h = side.at, g = twin_[h];
    if (g < 0 || corner(h) != side.from || corner(after(h)) != side.to) return;
    const int bc = after(h), ca = after(bc), ad = after(g), db = after(ad);
    const int a = side.from, b = side.to, c = corner(ca), d = corner(db);
    const Point pa = points_[a], pb = points_[b], pc = points_[c], pd = points_[d];
    if (!beyond(pa, pb, pc, pd)) return;
    if (orient2d(pd, pb, pc) <= 0 || orient2d(pc, pa, pd) <= 0) return;  // the four corners are not convex
    const int t = h / 3, u = g / 3;
    const std::array outer{twin_[db], twin_[bc], twin_[ca], twin_[ad]};
    triangles_[t] = {d, b, c};
    triangles_[u] = {c, a, d};
    join(3 * t, outer[0]);
    join(3 * t + 1, outer[1]);
    join(3 * u, outer[2]);
    join(3 * u + 1, outer[3]);
    join(3 * t + 2, 3 * u + 2);
    for (int k = 0; k < 3; ++k)
      for (const int at : {3 * t + k, 3 * u + k}) sides_.push_back({corner(at), corner(after(at)), at});
  }

  void join(int one, int other) {
    twin_[one] = other;
    if (other >= 0) twin_[other] = one;
  }

  const std::vector<Point>& points_;
  std::vector<std::array<int, 3>>& triangles_;
  std::vector<Side> sides_;  ///< to be looked at, the last one first
  std::vector<int> rows_;    ///< for each corner: where the sides that leave it begin
  std::vector<int> twin_;    ///< for each half-edge: the other one of its side, -1 on the polygon
};

}  // namespace

void flip_to_delaunay(const std::vector<Point>& points, std::vector<std::array<int, 3>>& triangles) {
  if (triangles.size() > 1) Flipper(points, triangles).run();
}

}  // namespace sagitta
