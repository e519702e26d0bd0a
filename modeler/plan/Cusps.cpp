#include "plan/Cusps.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Edges side by side part by less than this where they cross again within the snap: for radii down to 0.05 mm. radians
constexpr double side_by_side = 0.01;

/// An edge as it leaves a point.
struct Leaving {
  int edge = -1;
  bool from = true;  ///< the point is where the edge begins
};

class Untangler {
 public:
  Untangler(PlanarGraph& web, double reach) : web_(web), reach_(reach) {}

  void run() {
    constexpr int rounds = 4;  // an arc turned at one end turns at the other
    for (int round = 0; round < rounds; ++round)
      if (!untangle()) return;
  }

 private:
  bool untangle() {
    std::vector<std::vector<Leaving>> stars(web_.points.size());
    for (int e = 0; e < static_cast<int>(web_.edges.size()); ++e) {
      stars[static_cast<std::size_t>(web_.edges[e].from)].push_back({e, true});
      stars[static_cast<std::size_t>(web_.edges[e].to)].push_back({e, false});
    }
    bool changed = false;
    for (const auto& star : stars)
      for (std::size_t i = 0; i < star.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
          if (cross_again(star[k], star[i])) {
            touch(star[k], star[i]);
            changed = true;
          }
    return changed;
  }

  const GraphEdge& edge(const Leaving& l) const { return web_.edges[static_cast<std::size_t>(l.edge)]; }
  CurveSegment leaving(const Leaving& l) const { return l.from ? edge(l).segment : edge(l).segment.reversed(); }

  static double curvature(const CurveSegment& segment) {
    return segment.is_arc() ? (segment.sweep > 0 ? 1 : -1) / segment.radius : 0;
  }

  /// From the tangent of one to that of the other, counter-clockwise.
  static double between_tangents(const CurveSegment& one, const CurveSegment& other) {
    const Point a = one.slope(0), b = other.slope(0);
    return std::atan2(cross(a, b), dot(a, b));
  }

  /// Near their common end they are delta s + (k2 - k1) s^2 / 2 apart, s along them: zero again at -2 delta / (k2 -
  /// k1). That is a crossing of its own unless it lies within the reach, or the lens between is as good as flat and the
  /// arc that is turned moves no further than it is deep.
  bool cross_again(const Leaving& a, const Leaving& b) const {
    const CurveSegment one = leaving(a), other = leaving(b);
    const double delta = between_tangents(one, other), bend = curvature(other) - curvature(one);
    if (std::abs(delta) > side_by_side || bend == 0) return false;
    const double again = -2 * delta / bend, depth = std::abs(bend) * again * again / 8;
    if (again <= tolerance::same || again >= std::min(one.length(), other.length())) return false;
    const CurveSegment& turned = turns_first(a, b) ? one : other;
    const double moved = distance(turned.a, turned.b) * std::abs(delta) / 8;
    return again < 2 * reach_ || (depth <= tolerance::vertex && moved <= tolerance::vertex);
  }

  /// Whether it is the first that is turned: the arc, or the one of the lesser feature.
  bool turns_first(const Leaving& a, const Leaving& b) const {
    if (!edge(a).segment.is_arc() || !edge(b).segment.is_arc()) return edge(a).segment.is_arc();
    return edge(a).source.feature > edge(b).source.feature;
  }

  void touch(const Leaving& a, const Leaving& b) {
    const bool first = turns_first(a, b);
    const Leaving& turned = first ? a : b;
    const CurveSegment guide = leaving(first ? b : a), own = leaving(turned);
    const Point way = guide.slope(0), chord = own.b - own.a;
    const double sweep = 2 * std::atan2(cross(way, chord), dot(way, chord));  // the angle to the chord, twice
    const CurveSegment bent = arc_turning(own.a, own.b, sweep);
    web_.edges[static_cast<std::size_t>(turned.edge)].segment = turned.from ? bent : bent.reversed();
  }

  PlanarGraph& web_;
  double reach_;
};

}  // namespace

void untangle_cusps(PlanarGraph& web, double reach) { Untangler(web, reach).run(); }

}  // namespace sagitta
