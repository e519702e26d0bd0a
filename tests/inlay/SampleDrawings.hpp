#pragma once

/// Drawings of our own for tests.

#include <random>

#include "artwork/Artwork.hpp"

namespace sagitta::test {

inline PathLoop polygon(const std::vector<Point>& corners) {
  PathLoop loop;
  for (std::size_t i = 0; i < corners.size(); ++i) loop.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  return loop;
}

inline PathLoop box(Point low, Point high) { return polygon({low, {high.x, low.y}, high, {low.x, high.y}}); }

inline PathLoop disc(Point centre, double radius) {
  const Loop round = circle(centre, radius);
  return {round.begin(), round.end()};
}

/// A wavy closed outline of n Bezier curves about `centre`.
inline PathLoop wave(Point centre, int n, double radius, double swing, unsigned seed) {
  std::mt19937 dice(seed);
  const auto throw_ = [&] { return 2.0 * static_cast<double>(dice()) / 4294967295.0 - 1; };
  std::vector<Point> p(n), t(n);
  for (int i = 0; i < n; ++i)
    p[i] = centre + (radius + swing * throw_()) * turned({1, 0}, 2 * std::numbers::pi * i / n);
  for (int i = 0; i < n; ++i) t[i] = (1 / 6.0) * (p[(i + 1) % n] - p[(i + n - 1) % n]);
  PathLoop loop;
  for (int i = 0; i < n; ++i)
    loop.push_back(Bezier{p[i], p[i] + t[i], p[(i + 1) % n] - t[(i + 1) % n], p[(i + 1) % n]});
  return loop;
}

/// How many segments are drawn.
inline std::size_t strokes(const Artwork& artwork) {
  std::size_t sum = 0;
  for (const DrawnRegion& region : artwork.regions)
    for (const PathLoop& loop : region.outlines) sum += loop.size();
  return sum;
}

/// A comb of so many teeth, `gap` apart.
inline PathLoop comb(int teeth, double tooth, double gap, double length) {
  const double pitch = tooth + gap, back = 3;
  std::vector<Point> corners{{0, 0}, {teeth * pitch - gap, 0}};
  for (int i = teeth - 1; i >= 0; --i) {
    corners.insert(corners.end(), {{i * pitch + tooth, length}, {i * pitch, length}});
    if (i > 0) corners.insert(corners.end(), {{i * pitch, back}, {i * pitch - gap, back}});
  }
  return polygon(corners);
}

/// A band of n straight segments wound round so often, `pitch` from one turn to the next.
inline PathLoop spiral(int n, int turns, double width, double pitch) {
  const int half = n / 2 - 1;
  std::vector<Point> corners;
  for (int i = 0; i <= 2 * half + 1; ++i) {
    const bool out = i <= half;
    const double angle = 2 * std::numbers::pi * (1.5 + turns * std::sqrt(1.0 * (out ? i : 2 * half + 1 - i) / half));
    corners.push_back((pitch * angle / (2 * std::numbers::pi) + (out ? 0.5 : -0.5) * width) * turned({1, 0}, angle));
  }
  return polygon(corners);
}

inline Artwork drawing(std::vector<std::pair<std::string, std::vector<PathLoop>>> regions) {
  Artwork artwork;
  for (auto& [colour, outlines] : regions) artwork.regions.push_back({colour, std::move(outlines)});
  return artwork;
}

inline PathLoop reversed(const PathLoop& loop) {
  PathLoop back;
  for (auto stroke = loop.rbegin(); stroke != loop.rend(); ++stroke) {
    if (const auto* curve = std::get_if<Bezier>(&*stroke)) {
      back.push_back(Bezier{curve->b, curve->d, curve->c, curve->a});
    } else {
      back.push_back(std::get<CurveSegment>(*stroke).reversed());
    }
  }
  return back;
}

/// Wavy rings of so many curves about each other; with no gap each begins where the one inside it ends.
inline std::vector<std::vector<PathLoop>> rings(int count, int curves, double width, double gap) {
  std::vector<std::vector<PathLoop>> all;
  for (int i = 0; i < count; ++i) {
    const double inner = 5 + i * (width + gap);
    const unsigned seed = static_cast<unsigned>(gap > 0 ? 2 * i : i);
    all.push_back({wave({0, 0}, curves / 2, inner + width, 0.05, seed + 1),
                   reversed(wave({0, 0}, curves / 2, inner, 0.05, seed))});
  }
  return all;
}

/// Bands that share their wavy borders, n segments in all.
inline std::vector<PathLoop> bands(int count, int n) {
  std::mt19937 dice(5);
  const int along = n / (2 * count);
  std::vector<std::vector<Point>> borders(count + 1);
  for (int k = 0; k <= count; ++k)
    for (int i = 0; i <= along; ++i) {
      const double x = 200.0 * i / along, swing = k > 0 && k < count ? 5 * std::sin(1.1 * x + k) : 0;
      borders[k].push_back({x, 12 * k + swing + 0.1 * static_cast<double>(dice()) / 4294967295.0});
    }
  std::vector<PathLoop> all;
  for (int k = 0; k < count; ++k) {
    std::vector<Point> corners = borders[k];
    corners.insert(corners.end(), borders[k + 1].rbegin(), borders[k + 1].rend());
    all.push_back(polygon(corners));
  }
  return all;
}

}  // namespace sagitta::test
