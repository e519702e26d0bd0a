#include "polygon/OutlineIndex.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

/// Whether p lies within the square root of `reach` of the side from a to b.
bool within(Point p, Point a, Point b, double reach) {
  const Point d = b - a, way = p - a;
  const double square = dot(d, d), along = dot(way, d);
  if (along <= 0) return dot(way, way) <= reach;
  if (along >= square) return dot(p - b, p - b) <= reach;
  const double aside = cross(d, way);
  return aside * aside <= reach * square;
}

Point nearest_on(Point p, Point a, Point b) {
  const Point d = b - a;
  const double square = dot(d, d);
  return square == 0 ? a : between(a, b, std::clamp(dot(p - a, d) / square, 0.0, 1.0));
}

}  // namespace

OutlineIndex::OutlineIndex(const Region& region) {
  Box box;
  std::size_t count = 0;
  for (const Polygon& polygon : region) count += polygon.size();
  sides_.reserve(count);
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      box.add(polygon[i]);
      sides_.push_back({polygon[i], polygon[i + 1 < polygon.size() ? i + 1 : 0]});
    }
  if (sides_.empty()) return;
  const double width = box.high.x - box.low.x, height = box.high.y - box.low.y;
  low_ = box.low;
  // Outlines leave most of their box empty: sixteen cells a side still hold a few sides each where the outline is.
  size_ = std::max(
      {std::sqrt(width * height / (16.0 * static_cast<double>(sides_.size()))), width / 1e4, height / 1e4, 1e-3});
  columns_ = static_cast<long long>(width / size_) + 1;
  rows_ = static_cast<long long>(height / size_) + 1;
  starts_.assign(static_cast<std::size_t>(columns_ * rows_) + 1, 0);
  const auto each_cell = [&](const auto& visit) {
    for (int i = static_cast<int>(sides_.size()) - 1; i >= 0; --i) {
      const Side& s = sides_[i];
      const auto [left, right] = std::minmax({column(s.a.x), column(s.b.x)});
      const auto [lower, upper] = std::minmax({row(s.a.y), row(s.b.y)});
      if (left == right && lower == upper) {
        visit(left + lower * columns_, i);
        continue;
      }
      for (long long x = left; x <= right; ++x)
        for (long long y = lower; y <= upper; ++y) {
          const Point middle = low_ + size_ * Point{static_cast<double>(x) + 0.5, static_cast<double>(y) + 0.5};
          const Point away = nearest_on(middle, s.a, s.b) - middle;
          if (dot(away, away) <= size_ * size_) visit(x + y * columns_, i);
        }
    }
  };
  each_cell([&](long long cell, int) { ++starts_[cell]; });
  for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
  entries_.resize(static_cast<std::size_t>(starts_.back()));
  each_cell([&](long long cell, int i) { entries_[--starts_[cell]] = i; });
}

long long OutlineIndex::column(double x) const {
  return std::clamp(static_cast<long long>((x - low_.x) / size_), 0LL, columns_ - 1);
}
long long OutlineIndex::row(double y) const {
  return std::clamp(static_cast<long long>((y - low_.y) / size_), 0LL, rows_ - 1);
}

template <class Visit>
void OutlineIndex::around(Point p, double reach, Visit visit) const {
  for (long long x = column(p.x - reach); x <= column(p.x + reach); ++x)
    for (long long y = row(p.y - reach); y <= row(p.y + reach); ++y)
      for (int i = starts_[x + y * columns_]; i < starts_[x + y * columns_ + 1]; ++i) visit(sides_[entries_[i]]);
}

bool OutlineIndex::reaches(Point p, double reach) const {
  if (sides_.empty()) return false;
  const auto in_cell = [&](long long cell) {
    for (int i = starts_[cell]; i < starts_[cell + 1]; ++i) {
      const Side& s = sides_[entries_[i]];
      if (within(p, s.a, s.b, reach * reach)) return true;
    }
    return false;
  };
  if (in_cell(column(p.x) + row(p.y) * columns_)) return true;  // mostly
  for (long long x = column(p.x - reach); x <= column(p.x + reach); ++x)
    for (long long y = row(p.y - reach); y <= row(p.y + reach); ++y)
      if (in_cell(x + y * columns_)) return true;
  return false;
}

bool OutlineIndex::reaches(const Region& other, double reach) const {
  constexpr double step = 1;  // mm between the points that are asked for
  for (const Polygon& polygon : other)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const int n = std::max(1, static_cast<int>(std::ceil(std::sqrt(dot(b - a, b - a)) / step)));
      for (int k = 0; k < n; ++k)
        if (reaches(between(a, b, 1.0 * k / n), n == 1 ? reach + std::sqrt(dot(b - a, b - a)) / 2 : reach + step / 2))
          return true;
    }
  return false;
}

OutlineIndex::Nearest OutlineIndex::nearest(Point p) const {
  Nearest best;
  if (sides_.empty()) return best;
  double square = 1e300;
  const double far = std::max({std::abs(p.x - low_.x), std::abs(p.y - low_.y),
                               std::abs(p.x - low_.x - size_ * static_cast<double>(columns_)),
                               std::abs(p.y - low_.y - size_ * static_cast<double>(rows_))});
  for (double reach = size_ / 2;; reach *= 2) {
    around(p, reach, [&](const Side& s) {
      const Point q = nearest_on(p, s.a, s.b);
      const double way = dot(q - p, q - p);
      if (way < square) square = way, best.p = q;
    });
    if (square <= reach * reach || reach > 2 * far) {
      best.distance = std::sqrt(square);
      return best;
    }
  }
}

}  // namespace sagitta
