#include "neck/PlaceFit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "neck/NeckPlace.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Places along each edge.
constexpr int stations = 48;
/// A motion is taken from afar while the neck's sides lie within this. mm.
constexpr double far_reach = 15;
/// Rounds of weighting anew.
constexpr int rounds = 8;
/// Distances below this weigh as this. mm.
constexpr double least_weighed = 0.002;

/// The end of a stretch that is nearest to where the edge should be.
std::optional<double> out_at(const std::vector<FaceSpan>& spans, int side, double edge, double reach) {
  std::optional<double> best;
  for (const FaceSpan& span : spans) {
    const double out = (side == 0 ? -span.low : span.high) - edge;
    if (std::abs(out) <= reach && (!best || std::abs(out) < std::abs(*best))) best = out;
  }
  return best;
}

/// Solves the symmetric equations of three unknowns by elimination; rows that say nothing give 0.
std::array<double, 3> solved(std::array<std::array<double, 4>, 3> rows, std::size_t count) {
  std::array<double, 3> result{};
  std::array<bool, 3> used{};
  for (std::size_t column = 0; column < count; ++column) {
    std::size_t best = column;
    for (std::size_t row = column; row < count; ++row)
      if (std::abs(rows[row][column]) > std::abs(rows[best][column])) best = row;
    std::swap(rows[column], rows[best]);
    if (std::abs(rows[column][column]) <= tolerance::same) continue;
    used[column] = true;
    for (std::size_t row = 0; row < count; ++row) {
      if (row == column) continue;
      const double part = rows[row][column] / rows[column][column];
      for (std::size_t k = 0; k < 4; ++k) rows[row][k] -= part * rows[column][k];
    }
  }
  for (std::size_t i = 0; i < count; ++i)
    if (used[i]) result[i] = rows[i][3] / rows[i][i];
  return result;
}

/// One step of weighted least squares: across, turn, along.
std::array<double, 3> step(const EdgeFit& fit, const BoardSeat& seat, Free free, bool by_distance) {
  std::array<std::array<double, 4>, 3> rows{};
  for (const EdgeSample& sample : fit.samples) {
    const double sign = sample.side == 0 ? -1 : 1;
    const double weight = by_distance ? 1 / std::max(std::abs(sample.out), least_weighed) : 1;
    const std::array<double, 3> move{sign, sign * sample.x, -seat.edge_slope[static_cast<std::size_t>(sample.side)]};
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t k = 0; k < 3; ++k) rows[i][k] += weight * move[i] * move[k];
      rows[i][3] += weight * move[i] * sample.out;
    }
  }
  return solved(rows, free == Free::all ? 3 : 2);
}

FlatMotion walked(const NeckOutlines& face, FlatMotion motion, const BoardSeat& seat, Free free, bool by_distance) {
  for (int i = 0; i < rounds; ++i) {
    const EdgeFit fit = edge_fit(face, motion, seat, i < 2 ? far_reach + seat.trim : capture(seat));
    if (fit.samples.size() < 8) return motion;
    const auto [across, turn, along] = step(fit, seat, free, by_distance);
    motion = shifted(motion, std::clamp(along, -20.0, 20.0), across, turn);
    if (std::abs(across) + std::abs(along) + std::abs(turn) * seat.heel_end < tolerance::vertex) break;
  }
  return motion;
}

}  // namespace

NeckOutlines laid(const NeckOutlines& face, const FlatMotion& motion) {
  NeckOutlines moved = face;
  const double c = std::cos(motion.angle), s = std::sin(motion.angle);
  for (auto& outline : moved)
    for (Place3& p : outline) {
      const double u = p[0] - motion.at.x, v = p[1] - motion.at.y;
      p = {c * u + s * v, c * v - s * u, p[2]};
    }
  return moved;
}

FlatMotion shifted(const FlatMotion& motion, double along, double across, double turn) {
  return {motion.at + turned({along, across}, motion.angle), motion.angle + turn};
}

double capture(const BoardSeat& seat) { return 6 + seat.trim; }

EdgeFit edge_fit(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat, double reach) {
  const NeckOutlines outlines = laid(face, motion);
  EdgeFit fit;
  double sum = 0;
  for (int i = 0; i < stations; ++i) {
    const double x = seat.compare_to * (i + 0.5) / stations;
    const std::vector<FaceSpan> spans = spans_at(outlines, x);
    for (const int side : {0, 1}) {
      const auto out = out_at(spans, side, seat.edge(side, x) + seat.trim, reach);
      if (out) fit.samples.push_back({x, side, *out});
      sum += out ? std::min(std::abs(*out), worst_side) : worst_side;
    }
  }
  fit.mean = sum / (2 * stations);
  fit.compared = static_cast<double>(fit.samples.size()) / (2 * stations);
  return fit;
}

EdgeFit edge_fit(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat) {
  return edge_fit(face, motion, seat, capture(seat));
}

FlatMotion refined(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat, Free free) {
  const FlatMotion shared = walked(face, motion, seat, free, false);
  const FlatMotion least = walked(face, shared, seat, free, true);
  return edge_fit(face, shared, seat).mean <= edge_fit(face, least, seat).mean + place_tolerance / 2 ? shared : least;
}

std::optional<MiddleLine> middle_line(std::vector<Point> points) {
  constexpr std::size_t fewest = 6;
  if (points.size() < fewest) return {};
  const auto median = [](std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
  };
  std::vector<double> slopes, heights;
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t k = i + 1; k < points.size(); ++k)
      if (std::abs(points[k].x - points[i].x) > tolerance::snap)
        slopes.push_back((points[k].y - points[i].y) / (points[k].x - points[i].x));
  if (slopes.empty()) return {};
  MiddleLine line;
  line.slope = median(slopes);
  for (const Point& p : points) heights.push_back(p.y - line.slope * p.x);
  line.at = median(heights);
  return line;
}

}  // namespace sagitta
