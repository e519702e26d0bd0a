#include "mesh/Close.hpp"

#include <algorithm>

#include "plan/NearPairs.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A point nearer to an arc than this is left: rounded, it could not be told from its neighbour on the arc. mm.
constexpr double clear_of_neighbours = tolerance::snap / 2;

class Follower {
 public:
  Follower(const Subdivision& map, EdgePolylines& trails, double chords_within)
      : map_(map), trails_(trails), within_(chords_within) {}

  void run() {
    std::vector<Box> boxes;
    for (const PlanEdge& edge : map_.edges) boxes.push_back(bounds(edge.segment));
    near_pairs(boxes, 0, [&](int i, int j) {
      if (map_.edges[i].segment.is_arc() || map_.edges[j].segment.is_arc()) pairs_.emplace_back(i, j);
    });
    constexpr int rounds = 12;  // a new point may lie between another arc and its chord
    for (int round = 0; round < rounds && follow_all(); ++round) continue;
  }

 private:
  bool follow_all() {
    bool grown = false;
    for (const auto& [i, j] : pairs_) {
      grown = follow(i, j) || grown;
      grown = follow(j, i) || grown;
    }
    return grown;
  }

  /// Gives arc `e` the points that edge `other` asks for.
  bool follow(int e, int other) {
    if (!map_.edges[e].segment.is_arc()) return false;
    bool grown = false;
    const PlanEdge& beside = map_.edges[other];
    for (const int v : {beside.from, beside.to})
      if (v != map_.edges[e].from && v != map_.edges[e].to) grown = meet(e, trails_.vertices[v].p) || grown;
    for (const PolylinePoint& at : std::vector<PolylinePoint>(trails_.edges[other])) grown = meet(e, at.p) || grown;
    return grown;
  }

  /// Along an arc, 0 at its start and 1 at its end.
  static double parameter(const CurveSegment& arc, Point p) {
    const Point d = p - arc.centre;
    const double turn = std::remainder(std::atan2(d.y, d.x) - arc.start - arc.sweep / 2, 2 * std::numbers::pi);
    return 0.5 + turn / arc.sweep;
  }

  bool meet(int e, Point p) {
    const PlanEdge& edge = map_.edges[e];
    const CurveSegment& arc = edge.segment;
    const double inside = arc.radius - distance(p, arc.centre);
    if (inside < clear_of_neighbours || inside > within_) return false;
    const double t = parameter(arc, p);
    if (t <= 0 || t >= 1) return false;
    std::vector<PolylinePoint>& inner = trails_.edges[e];
    const auto after =
        std::find_if(inner.begin(), inner.end(), [&](const PolylinePoint& at) { return parameter(arc, at.exact) > t; });
    const Point a = after == inner.begin() ? trails_.vertices[edge.from].p : (after - 1)->p;
    const Point b = after == inner.end() ? trails_.vertices[edge.to].p : after->p;
    const double beyond = (arc.sweep > 0 ? -1 : 1) * cross(b - a, p - a);
    if (beyond < -tolerance::vertex * distance(a, b)) return false;
    const Point foot = arc.at(t);
    if (distance(foot, a) < clear_of_neighbours || distance(foot, b) < clear_of_neighbours) return false;
    inner.insert(after, {rounded(foot), foot});
    return true;
  }

  const Subdivision& map_;
  EdgePolylines& trails_;
  double within_;
  std::vector<std::pair<int, int>> pairs_;
};

}  // namespace

void follow_close_neighbours(const Subdivision& map, EdgePolylines& trails, double chords_within) {
  Follower(map, trails, chords_within).run();
}

}  // namespace sagitta
