#include "oracle/Hole.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "oracle/Gauss.hpp"

namespace sagitta::oracle {
namespace {

/// The hole in its own frame: s runs inward from the mouth, u to the left of it.
struct Frame {
  const SideHole& hole;
  Point at(double u, double s) const { return hole.dot.mouth + s * hole.dot.inward + u * left_of(hole.dot.inward); }
  /// Half height of the hole at p; negative beside it or past its end.
  double half_height(Point p) const {
    const Point to = p - hole.dot.mouth;
    const double s = dot(to, hole.dot.inward), u = dot(to, left_of(hole.dot.inward)), r = hole.dot.radius;
    return s < 0 || s > hole.dot.depth || std::abs(u) >= r ? -1 : std::sqrt((r - u) * (r + u));
  }
};

using Span = std::pair<double, double>;

/// Length of [low, high] outside the spans.
double length_outside(double low, double high, std::vector<Span> taken) {
  std::sort(taken.begin(), taken.end());
  double sum = 0;
  for (const auto& [from, to] : taken) {
    if (from > low) sum += std::max(0.0, std::min(from, high) - low);
    low = std::max(low, to);
  }
  return sum + std::max(0.0, high - low);
}

/// Every s where the line at u meets a line or circle of the plan.
void add_meetings(const std::vector<Strand>& strands, Point from, Point d, std::vector<double>& ss) {
  for (const Strand& t : strands) {
    if (t.radius == 0) {
      const Point e = t.b - t.a;
      if (cross(d, e) != 0) ss.push_back(cross(t.a - from, e) / cross(d, e));
      continue;
    }
    const double along = dot(t.centre - from, d), off = cross(d, t.centre - from);
    const double square = t.radius * t.radius - off * off;
    if (square <= 0) continue;
    ss.push_back(along - std::sqrt(square));
    ss.push_back(along + std::sqrt(square));
  }
}

/// Every u at which the stretches along the hole change: corners, the sides of circles, and where a level meets the
/// wall.
std::vector<double> breaks_across(const Sections& sections, const Frame& frame) {
  const double r = frame.hole.dot.radius;
  const Point left = left_of(frame.hole.dot.inward);
  std::vector<double> us{-r, r};
  const auto add = [&](const std::vector<Strand>& strands) {
    for (const Strand& t : strands) {
      us.push_back(dot(t.a - frame.hole.dot.mouth, left));
      if (t.radius == 0) continue;
      for (const double side : {-t.radius, t.radius}) us.push_back(dot(t.centre - frame.hole.dot.mouth, left) + side);
    }
  };
  add(sections.outline);
  for (const auto* regions : {&sections.cuts, &sections.pins})
    for (const Region& region : *regions) {
      add(region.strands);
      const double rise = region.value - frame.hole.z;
      if (region.floor == Cut::Floor::level && std::abs(rise) < r)
        for (const double side : {-1.0, 1.0}) us.push_back(side * std::sqrt((r - rise) * (r + rise)));
    }
  std::sort(us.begin(), us.end());
  std::erase_if(us, [&](double u) { return u < -r || u > r; });
  return us;
}

/// The cuts and pins that come near the hole, and the outline.
Sections near(const Sections& all, const Frame& frame) {
  Box box;
  const SideDot& d = frame.hole.dot;
  for (const double u : {-d.radius, d.radius})
    for (const double s : {0.0, d.depth}) box.add(frame.at(u, s));
  const auto far = [&](const Region& r) {
    return r.box.high.x < box.low.x || r.box.low.x > box.high.x || r.box.high.y < box.low.y || r.box.low.y > box.high.y;
  };
  Sections some = all;
  std::erase_if(some.cuts, far);
  std::erase_if(some.pins, far);
  return some;
}

}  // namespace

/// Absolute, mm^2 and mm^3: a millionth of the smallest board is ten thousand times more.
constexpr double inner = 1e-8, outer = 1e-7;

double hole_volume(const Work& work, const Sections& sections, std::size_t index) {
  const Frame frame{work.holes[index]};
  const SideDot& dot = frame.hole.dot;
  const Sections some = near(sections, frame);

  const auto taken_at = [&](double u, double s) {
    const Point p = frame.at(u, s);
    const auto [top, bottom] = some.column(p);
    const double h = std::sqrt(std::max(0.0, (dot.radius - u) * (dot.radius + u)));
    std::vector<Span> before;
    for (std::size_t i = 0; i < index; ++i) {
      const double other = Frame{work.holes[i]}.half_height(p);
      if (other > 0) before.push_back({work.holes[i].z - other, work.holes[i].z + other});
    }
    return length_outside(std::max(bottom, frame.hole.z - h), std::min(top, frame.hole.z + h), before);
  };
  const auto along_line = [&](double u) {
    std::vector<double> ss{0, dot.depth};
    add_meetings(some.outline, frame.at(u, 0), dot.inward, ss);
    for (const auto* regions : {&some.cuts, &some.pins})
      for (const Region& region : *regions) add_meetings(region.strands, frame.at(u, 0), dot.inward, ss);
    std::sort(ss.begin(), ss.end());
    std::erase_if(ss, [&](double s) { return s < 0 || s > dot.depth; });
    double sum = 0;
    for (std::size_t i = 0; i + 1 < ss.size(); ++i)
      sum += integral([&](double s) { return taken_at(u, s); }, ss[i], ss[i + 1], inner).value;
    return sum;
  };
  const std::vector<double> us = breaks_across(some, frame);
  double sum = 0;
  for (std::size_t i = 0; i + 1 < us.size(); ++i) sum += integral(along_line, us[i], us[i + 1], outer).value;
  return sum;
}

}  // namespace sagitta::oracle
