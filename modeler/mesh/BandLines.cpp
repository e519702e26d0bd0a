#include "mesh/BandLines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "surface/FormBend.hpp"

namespace sagitta {
namespace {

/// Points further apart than this stay apart when rounded to floats. mm.
constexpr double clear_of_rounding = 1e-4;
constexpr double most_bands = 4000;

double on_grid(double y) { return rounded({0, y}).y; }

/// How tightly the playing surface curves where the plan reaches y or further: for each bound place, |y| and R; and
/// what its forms add.
class Curvature {
 public:
  Curvature(const Shell& shell, double low, double high) {
    const Surface& surface = shell.plan.surface;
    for (const ShellEdge& edge : shell.edges) {
      if (surface.flat || edge.upright || edge.bound.kind != BoundingSurface::Kind::offset_surface) continue;
      for (const Point p : shell.places(edge)) places_.emplace_back(std::abs(p.y), surface.radius(p.x));
    }
    for (const ShellFace& face : shell.faces)
      if (face.kind != ShellFace::Kind::wall && face.bound.kind == BoundingSurface::Kind::offset_surface)
        added_ = std::max(added_, bend_of_form(surface, face.bound.form, 0, low, high).across);
    std::sort(places_.begin(), places_.end());
    for (std::size_t i = places_.size(); i-- > 1;)
      places_[i - 1].second = std::min(places_[i - 1].second, places_[i].second);
  }

  /// The furthest |y| of the playing surface; 0 when it is flat.
  double reach() const { return places_.empty() ? 0 : places_.back().first; }

  /// The width over which a chord at y strays by `off` from the surface, square to it: S sqrt(8 off / R), and less
  /// where a form adds to 1/R.
  double width(double y, double off) const {
    const double of_arc = width_of_arc(y, off);
    return added_ > 0 ? 1 / std::hypot(1 / of_arc, std::sqrt(added_ / (8 * off))) : of_arc;
  }

 private:
  double width_of_arc(double y, double off) const {
    const auto place = std::lower_bound(places_.begin(), places_.end(), std::pair{std::abs(y), 0.0});
    if (place == places_.end()) return 1e300;
    const double r = place->second;
    return std::sqrt(std::max(0.0, (r - y) * (r + y))) * std::sqrt(8 * off / r);
  }

  std::vector<std::pair<double, double>> places_;
  double added_ = 0;  ///< |z_yy| of any form, at most, 1/mm
};

/// Of several places about y, within a third of `step`, the first that is `enough` away from any vertex, or the
/// furthest.
double clear_line(double y, double step, const std::vector<double>& vertices, double enough = 10 * clear_of_points) {
  double best = y, most = -1;
  for (int k = 0; k <= 8; ++k) {
    const double at = on_grid(y - step * k / 24);
    const auto above = std::lower_bound(vertices.begin(), vertices.end(), at);
    double clear = 1e300;
    if (above != vertices.end()) clear = *above - at;
    if (above != vertices.begin()) clear = std::min(clear, at - *(above - 1));
    if (clear > most) {
      most = clear;
      best = at;
    }
    if (most > enough) break;
  }
  return best;
}

/// Lines over the plan, narrower apart where the surface is steep.
std::vector<double> lines_over(const Shell& shell, const std::vector<double>& vertices, double off) {
  const double low = vertices.front(), high = vertices.back();
  const double widest = (high - low) / 4, narrowest = (high - low) / most_bands;
  const Curvature curvature(shell, low, high);
  std::vector<double> lines;
  for (double y = low;;) {
    double step = std::min(widest, curvature.width(y, off));
    if (y < -curvature.reach()) step = std::min(step, std::max(narrowest, -curvature.reach() - y));
    step = std::clamp(std::min(step, curvature.width(y + step, off)), narrowest, widest);
    if (!(y + step < high)) break;
    y = clear_line(y + step, step, vertices);
    lines.push_back(y);
  }
  return lines;
}

/// What a loop covers in y.
struct Span {
  double low = 1e300, high = -1e300;
  void add(double y) {
    low = std::min(low, y);
    high = std::max(high, y);
  }
  double height() const { return high - low; }
};

/// The loops that none of the lines crosses for sure: chords reach less far than their arcs, by up to `short_of_arc`.
std::vector<Span> between_lines(const Shell& shell, const std::vector<double>& lines, double short_of_arc) {
  std::vector<Span> spans;
  for (const ShellFace& face : shell.faces) {
    if (face.kind == ShellFace::Kind::wall || face.bound.round()) continue;
    for (const auto& loop : face.loops) {
      Span span;
      for (const Coedge use : loop)
        for (const Point p : shell.places(shell.edges[use.edge])) span.add(p.y);
      const double short_by = std::min(short_of_arc, span.height() / 4);
      const auto line = std::upper_bound(lines.begin(), lines.end(), span.low + short_by);
      if (line == lines.end() || *line >= span.high - short_by) spans.push_back(span);
    }
  }
  return spans;
}

/// Spans in groups whose common part is half as high as the lowest of them, or higher: the common parts. Each group
/// gets one line in it, so there are few lines and no two of them are close together.
std::vector<Span> common_parts(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end(),
            [](const Span& a, const Span& b) { return std::pair(a.high, a.low) < std::pair(b.high, b.low); });
  std::vector<Span> parts;
  double lowest = 0;
  for (const Span& span : spans) {
    if (!parts.empty()) {
      const Span both{std::max(parts.back().low, span.low), parts.back().high};
      const double height = std::min(lowest, span.height());
      if (both.height() >= height / 2) {
        parts.back() = both;
        lowest = height;
        continue;
      }
    }
    parts.push_back(span);
    lowest = span.height();
  }
  return parts;
}

}  // namespace

std::vector<double> band_lines(const Shell& shell, const std::vector<PolylinePoint>& vertices, double off,
                               double short_of_arc) {
  std::vector<double> heights;
  for (const PolylinePoint& at : vertices) heights.push_back(at.p.y);
  std::sort(heights.begin(), heights.end());
  std::vector<double> lines = lines_over(shell, heights, off);
  for (const Span& part : common_parts(between_lines(shell, lines, short_of_arc)))
    lines.push_back(clear_line((part.low + part.high) / 2, part.height() / 2, heights));
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  return lines;
}

std::vector<double> lines_across(const Shell& shell, const ShellFace& face, double off) {
  const Tunnel& tunnel = face.bound.tunnel;
  std::vector<double> vertices;
  for (const auto& loop : face.loops)
    for (const Coedge use : loop) vertices.push_back(tunnel.across(shell.vertices[shell.start(use)].p));
  std::sort(vertices.begin(), vertices.end());
  const double step = 2 * std::acos(std::max(0.0, 1 - off / tunnel.radius));
  const int count = std::max(6, static_cast<int>(std::ceil(std::numbers::pi / step)));
  std::vector<double> lines;
  for (int i = 1; i < count; ++i) {
    const double angle = std::numbers::pi * (static_cast<double>(i) / count - 0.5);
    const double room = tunnel.radius * std::cos(angle) * std::numbers::pi / count;
    lines.push_back(clear_line(tunnel.radius * std::sin(angle), room, vertices, clear_of_rounding));
  }
  for (std::size_t island = 1; island < face.loops.size(); ++island) {
    double low = 1e300, high = -1e300;
    for (const Coedge use : face.loops[island])
      for (const double t : {0.0, 0.5}) {
        const double across = tunnel.across(shell.at(shell.edges[use.edge], t));
        low = std::min(low, across);
        high = std::max(high, across);
      }
    lines.push_back(clear_line((low + high) / 2, (high - low) / 2, vertices, clear_of_rounding));
  }
  return lines;
}

}  // namespace sagitta
