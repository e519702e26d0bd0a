#pragma once

/// Drawings of our own for tests.

#include <random>

#include "artwork/Artwork.hpp"

namespace sagitta::test {

inline StrokeLoop polygon(const std::vector<Point>& corners) {
  StrokeLoop loop;
  for (std::size_t i = 0; i < corners.size(); ++i) loop.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  return loop;
}

inline StrokeLoop box(Point low, Point high) { return polygon({low, {high.x, low.y}, high, {low.x, high.y}}); }

inline StrokeLoop disc(Point centre, double radius) {
  const Loop round = circle(centre, radius);
  return {round.begin(), round.end()};
}

/// A wavy closed outline of n Bezier curves about `centre`.
inline StrokeLoop wave(Point centre, int n, double radius, double swing, unsigned seed) {
  std::mt19937 dice(seed);
  const auto throw_ = [&] { return 2.0 * static_cast<double>(dice()) / 4294967295.0 - 1; };
  std::vector<Point> p(n), t(n);
  for (int i = 0; i < n; ++i)
    p[i] = centre + (radius + swing * throw_()) * turned({1, 0}, 2 * std::numbers::pi * i / n);
  for (int i = 0; i < n; ++i) t[i] = (1 / 6.0) * (p[(i + 1) % n] - p[(i + n - 1) % n]);
  StrokeLoop loop;
  for (int i = 0; i < n; ++i)
    loop.push_back(Bezier{p[i], p[i] + t[i], p[(i + 1) % n] - t[(i + 1) % n], p[(i + 1) % n]});
  return loop;
}

/// How many segments are drawn.
inline std::size_t strokes(const Artwork& artwork) {
  std::size_t sum = 0;
  for (const DrawnRegion& region : artwork.regions)
    for (const StrokeLoop& loop : region.outlines) sum += loop.size();
  return sum;
}

inline Artwork drawing(std::vector<std::pair<std::string, std::vector<StrokeLoop>>> regions) {
  Artwork artwork;
  for (auto& [colour, outlines] : regions) artwork.regions.push_back({colour, std::move(outlines)});
  return artwork;
}

inline StrokeLoop reversed(const StrokeLoop& loop) {
  StrokeLoop back;
  for (auto stroke = loop.rbegin(); stroke != loop.rend(); ++stroke) {
    if (const auto* curve = std::get_if<Bezier>(&*stroke)) {
      back.push_back(Bezier{curve->b, curve->d, curve->c, curve->a});
    } else {
      back.push_back(std::get<Piece>(*stroke).reversed());
    }
  }
  return back;
}

}  // namespace sagitta::test
