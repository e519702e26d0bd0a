#include "plan/Arrangement.hpp"

#include <algorithm>
#include <cstdint>
#include <unordered_map>
#include <utility>

#include "plan/Meet.hpp"
#include "plan/NearPairs.hpp"
#include "plan/PlanarGraph.hpp"
#include "plan/Rounding.hpp"
#include "plan/Slender.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

/// A point on a input curve: before clustering, an index into the cloud.
struct Stop {
  double t = 0;
  int point = 0;
};

struct Cloud {
  std::vector<Point> points;
  std::vector<std::vector<Stop>> stops;  ///< for each input curve
};

void meet_all(const std::vector<InputCurve>& strands, Cloud& cloud) {
  std::vector<Box> boxes;
  for (const InputCurve& strand : strands) boxes.push_back(bounds(strand.segment));
  std::vector<Meeting> meetings;
  near_pairs(boxes, tolerance::vertex, [&](int i, int j) {
    meetings.clear();
    meet(strands[i].segment, strands[j].segment, meetings);
    for (const Meeting& m : meetings) {
      cloud.stops[i].push_back({m.on_first, static_cast<int>(cloud.points.size())});
      cloud.stops[j].push_back({m.on_second, static_cast<int>(cloud.points.size())});
      cloud.points.push_back(m.p);
    }
  });
}

Cloud gather(const std::vector<InputCurve>& strands) {
  Cloud cloud;
  cloud.stops.resize(strands.size());
  for (std::size_t i = 0; i < strands.size(); ++i)
    for (const double t : {0.0, 1.0}) {
      cloud.stops[i].push_back({t, static_cast<int>(cloud.points.size())});
      cloud.points.push_back(t == 0 ? strands[i].segment.a : strands[i].segment.b);
    }
  meet_all(strands, cloud);
  return cloud;
}

/// Points within tolerance::vertex of each other (chains included) become one vertex, at the earliest of them: drawn
/// ends come before computed meetings. Returns the vertex of each point.
std::vector<int> cluster(const std::vector<Point>& points, std::vector<Point>& vertices) {
  DisjointSets groups(points.size());
  const double size = 4 * tolerance::vertex;
  const auto bucket = [&](double v) { return static_cast<std::int64_t>(std::floor(v / size)); };
  const auto key = [](std::int64_t x, std::int64_t y) { return x * 0x9E3779B97F4A7C15 + y; };
  std::unordered_map<std::uint64_t, int> latest;  // in each square of a grid; before it: earlier
  latest.reserve(points.size());
  std::vector<int> earlier(points.size(), -1);
  for (int i = 0; i < static_cast<int>(points.size()); ++i) {
    const Point p = points[i];
    for (std::int64_t x = bucket(p.x - tolerance::vertex); x <= bucket(p.x + tolerance::vertex); ++x)
      for (std::int64_t y = bucket(p.y - tolerance::vertex); y <= bucket(p.y + tolerance::vertex); ++y) {
        const auto found = latest.find(key(x, y));
        for (int j = found == latest.end() ? -1 : found->second; j >= 0; j = earlier[j])
          if (distance(p, points[j]) <= tolerance::vertex) groups.join(i, j);
      }
    const auto [here, fresh] = latest.try_emplace(key(bucket(p.x), bucket(p.y)), i);
    if (!fresh) earlier[i] = std::exchange(here->second, i);
  }
  std::vector<int> vertex(points.size(), -1);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const int r = groups.of(static_cast<int>(i));
    if (vertex[r] < 0) {
      vertex[r] = static_cast<int>(vertices.size());
      vertices.push_back(points[r]);
    }
    vertex[i] = vertex[r];
  }
  return vertex;
}

void weave(const InputCurve& strand, std::vector<Stop> stops, const std::vector<int>& vertex,
           const std::vector<Point>& points, EdgeInserter& weaver) {
  std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.t < b.t; });
  // A input curve's own ends outrank meetings that clamp to the same parameter.
  const int first = vertex[stops.front().point], last = vertex[stops.back().point];
  int at = first;
  double from = 0;
  for (const Stop& stop : stops) {
    const int v = vertex[stop.point];
    if (v == at) continue;
    const CurveSegment segment = part_between(strand.segment, from, stop.t, points[at], points[v]);
    weaver.add({at, v, segment, strand.source, {{strand.loop, 1}}});
    at = v;
    from = stop.t;
    if (v == last) break;
  }
}

/// Winding numbers by walking from face to face; each edge passed changes them by what runs along it.
std::vector<std::vector<int>> covers(const Subdivision& map, const PlanarGraph& web) {
  std::vector<std::vector<std::pair<int, int>>> counts(map.faces.size());
  std::vector<std::vector<HalfEdge>> borders(map.faces.size());
  for (HalfEdge h = 0; h < 2 * static_cast<int>(map.edges.size()); ++h) borders[map.face(h)].push_back(h);
  std::vector<bool> seen(map.faces.size(), false);
  std::vector<int> queue{0};
  seen[0] = true;
  for (std::size_t i = 0; i < queue.size(); ++i) {
    for (const HalfEdge h : borders[queue[i]]) {
      const int beyond = map.face(h ^ 1);
      if (seen[beyond]) continue;
      seen[beyond] = true;
      auto count = counts[queue[i]];
      for (const Passing& passing : web.edges[h >> 1].passings) {
        if (passing.loop < 0) continue;
        const int change = (h & 1 ? 1 : -1) * passing.sign;  // to the left of a loop is one more
        auto found = std::lower_bound(count.begin(), count.end(), std::pair{passing.loop, -1000});
        if (found == count.end() || found->first != passing.loop) found = count.insert(found, {passing.loop, 0});
        found->second += change;
        if (found->second == 0) count.erase(found);
      }
      counts[beyond] = std::move(count);
      queue.push_back(beyond);
    }
  }
  std::vector<std::vector<int>> result(map.faces.size());
  for (std::size_t f = 0; f < counts.size(); ++f)
    for (const auto& [loop, winding] : counts[f])
      if (winding > 0) result[f].push_back(loop);
  return result;
}

Subdivision map_of(const PlanarGraph& web) {
  Subdivision map;
  map.vertices = web.points;
  for (const GraphEdge& made : web.edges) {
    PlanEdge& edge = map.edges.emplace_back();
    edge.from = made.from;
    edge.to = made.to;
    edge.segment = made.segment;
    edge.source = made.source;
  }
  map.build_faces();
  return map;
}

}  // namespace

std::vector<double> Arrangement::covered(int loops) const {
  std::vector<double> sums(static_cast<std::size_t>(loops), 0);
  for (std::size_t f = 1; f < map.faces.size(); ++f) {
    const double own = covers[f].empty() ? 0 : area(map, static_cast<int>(f));
    for (const int loop : covers[f]) sums[static_cast<std::size_t>(loop)] += own;
  }
  return sums;
}

Arrangement arrange(const std::vector<InputCurve>& strands, double snap) {
  PlanarGraph web;
  const Cloud cloud = gather(strands);
  const std::vector<int> vertex = cluster(cloud.points, web.points);
  EdgeInserter weaver(web, 2 * tolerance::vertex);
  for (std::size_t i = 0; i < strands.size(); ++i) weave(strands[i], cloud.stops[i], vertex, web.points, weaver);
  round_off(web, snap);
  Arrangement result;
  result.map = map_of(web);
  result.covers = covers(result.map, web);
  return result;
}

}  // namespace sagitta
