#include "plan/Rounding.hpp"

#include <algorithm>
#include <optional>

#include "plan/Cusps.hpp"
#include "plan/Meet.hpp"
#include "plan/NearPairs.hpp"
#include "plan/Seats.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Features that were drawn back leave one snap between them: rounding must not close that again.
constexpr double reach_of_snap = 0.9;
/// Where edges with a common end part: a little more than the reach, so that the new points stay two.
constexpr double parting = 1.1;
/// Arcs nearer than this run side by side. mm.
constexpr double side_by_side = 0.01;
/// Far more than any arrangement needs; it ends by itself (see DEVELOPERS.md).
constexpr int most_rounds = 200;

/// A point through which an edge must pass.
struct Stop {
  double t = 0;
  int point = -1;
};

/// An edge leaves its neighbour here: the part before `at` is replaced by the neighbour's and a step across.
struct Parting {
  int along = -1;          ///< the neighbour
  bool along_from = true;  ///< the common end is where the neighbour begins
  bool from = true;        ///< and where this edge begins
  double t_along = 0;      ///< on the neighbour
  int on_along = -1;       ///< point there
  Stop at;                 ///< on this edge
};

class Rounder {
 public:
  Rounder(PlanarGraph& web, double snap) : web_(web), reach_(reach_of_snap * snap), seats_(web.points, reach_) {}

  void run() {
    look();
    if (!slid_.empty() || crowded_) {
      seat_again();
      look();
    }
    for (int round = 0; round < most_rounds && moved_; ++round) {
      weave();
      look();
    }
  }

 private:
  const GraphEdge& edge(int e) const { return web_.edges[e]; }
  Point point(int i) const { return web_.points[i]; }
  static bool ends_in(const GraphEdge& e, int v) { return e.from == v || e.to == v; }

  /// Finds what must be done.
  void look() {
    const std::size_t count = web_.edges.size();
    stops_.assign(count, {});
    partings_.assign(count, std::nullopt);
    slid_.clear();
    moved_ = crowded_ = false;
    std::vector<Box> boxes;
    boxes.reserve(count);
    for (const GraphEdge& e : web_.edges) {
      boxes.push_back(bounds(e.segment));
      crowded_ = crowded_ || distance(point(e.from), point(e.to)) < reach_;
    }
    std::vector<std::pair<int, int>> beside;
    near_pairs(boxes, reach_, [&](int i, int j) {
      if (!plainly_apart(edge(i), edge(j))) cross(i, j);
      face_each_other(i, j);
      for (const int v : {edge(i).from, edge(i).to})
        if (ends_in(edge(j), v)) beside.emplace_back(std::minmax(i, j));
    });
    for (const auto& [i, j] : beside) part(i, j);
  }

  /// Two lines with a common end cross nowhere else: only their other ends may be near.
  bool plainly_apart(const GraphEdge& a, const GraphEdge& b) const {
    if (a.segment.is_arc() || b.segment.is_arc()) return false;
    if (!ends_in(a, b.from) && !ends_in(a, b.to)) return false;
    for (const auto& [one, other] : {std::pair{&a, &b}, std::pair{&b, &a}})
      for (const int v : {one->from, one->to})
        if (!ends_in(*other, v) && passes_near(other->segment, point(v), reach_)) return false;
    return true;
  }

  bool common_end(int i, int j, Point p) const {
    for (const int v : {edge(i).from, edge(i).to})
      if (point(v) == p && ends_in(edge(j), v)) return true;
    return false;
  }

  /// Notes where two edges meet or come near.
  void cross(int i, int j) {
    meetings_.clear();
    meet(edge(i).segment, edge(j).segment, meetings_, reach_);
    for (const Meeting& m : meetings_) {
      if (common_end(i, j, m.p)) continue;
      int at = seats_.near(m.p);
      if (at >= 0 && ends_in(edge(i), at) && ends_in(edge(j), at)) continue;
      note_crowd(i, j, m.p);
      if (at < 0) at = seats_.add(m.p);
      stop(i, m.on_first, at);
      stop(j, m.on_second, at);
    }
  }

  /// Two ends nearer together than the reach, or an end near an edge of a greater feature, which it slides onto.
  void note_crowd(int i, int j, Point p) {
    for (const auto& [own, other] : {std::pair{i, j}, std::pair{j, i}})
      for (const int v : {edge(own).from, edge(own).to}) {
        if (!(point(v) == p) || ends_in(edge(other), v)) continue;
        for (const int w : {edge(other).from, edge(other).to}) crowded_ = crowded_ || distance(p, point(w)) < reach_;
        slid_.push_back({v, other});
      }
  }

  /// Arcs that run side by side are parted at places that face each other: then polylines in place of them do not
  /// cross, whoever draws them.
  void face_each_other(int i, int j) {
    if (!edge(i).segment.is_arc() || !edge(j).segment.is_arc()) return;
    for (const auto& [own, other] : {std::pair{i, j}, std::pair{j, i}})
      for (const int v : {edge(other).from, edge(other).to}) {
        const CurveSegment& arc = edge(own).segment;
        const double off = std::abs(distance(point(v), arc.centre) - arc.radius);
        if (off < reach_ || off > side_by_side || dot(point(v) - arc.centre, point(v) - edge(other).segment.centre) < 0)
          continue;
        const auto t = passes_near(arc, point(v), side_by_side);
        if (!t || *t <= 0 || *t >= 1 || near_end(own, arc.at(*t))) continue;
        const int near = seats_.near(arc.at(*t));
        stop(own, *t, near >= 0 ? near : seats_.add(arc.at(*t)));
      }
  }

  bool near_end(int e, Point p) const {
    constexpr double clear = 3 * side_by_side;
    return distance(point(edge(e).from), p) < clear || distance(point(edge(e).to), p) < clear;
  }

  /// Whether both parts are shorter than the whole: then no edge is parted without end. The chord of an arc of more
  /// than two radians may be shorter than its part's: there the turn counts.
  bool shortens(const GraphEdge& whole, double t, int at) const {
    if (turns_far(whole)) return std::min(t, 1 - t) * whole.segment.length() > reach_ / 2;
    const double length = distance(point(whole.from), point(whole.to));
    return distance(point(whole.from), point(at)) < length && distance(point(at), point(whole.to)) < length;
  }

  static bool turns_far(const GraphEdge& e) { return e.segment.is_arc() && std::abs(e.segment.sweep) > 2; }

  void stop(int e, double t, int at) {
    const GraphEdge& whole = edge(e);
    if (ends_in(whole, at)) return;
    if (!shortens(whole, t, at)) return;
    for (const Stop& other : stops_[e])
      if (other.point == at) return;
    stops_[e].push_back({t, at});
    moved_ = true;
  }

  /// Edges that leave a common end side by side: the lesser one is led along the other up to where they are apart.
  void part(int i, int j) {
    if (edge(j).source.feature < edge(i).source.feature) std::swap(i, j);
    for (const bool along_from : {true, false})
      for (const bool from : {true, false}) {
        const int common = along_from ? edge(i).from : edge(i).to;
        if (common != (from ? edge(j).from : edge(j).to)) continue;
        if (const auto where = parting_of(i, along_from, j, from)) partings_[j] = where;
      }
  }

  std::optional<Parting> parting_of(int i, bool along_from, int j, bool from) {
    if (!stops_[i].empty() || !stops_[j].empty() || partings_[i] || partings_[j]) return std::nullopt;
    const CurveSegment &along = edge(i).segment, &own = edge(j).segment;
    const double length = along.length();
    if (length < longest_cusp || own.length() < longest_cusp) return std::nullopt;
    const auto at = [&](double s) { return along.at((along_from ? s : length - s) / length); };
    const double wide = parting * reach_;
    const auto beside = [&](double s) { return passes_near(own, at(s), wide).has_value(); };
    if (!beside(longest_cusp)) return std::nullopt;
    double low = longest_cusp, high = 0;
    constexpr int samples = 64;
    for (int k = 1; k <= samples && high == 0; ++k) {
      const double s = longest_cusp + (length - longest_cusp) * k / samples;
      (beside(s) ? low : high) = s;
    }
    for (int k = 0; k < 60 && high > 0; ++k) (beside((low + high) / 2) ? low : high) = (low + high) / 2;
    return parting_at(i, along_from, j, from, (along_from ? low : length - low) / length);  // high 0: its very end
  }

  std::optional<Parting> parting_at(int i, bool along_from, int j, bool from, double t) {
    const Point p = edge(i).segment.at(t);
    const auto own = passes_near(edge(j).segment, p, 2 * parting * reach_);
    if (!own) return std::nullopt;
    const Point q = edge(j).segment.at(*own);
    const auto seat = [&](Point place) {
      const int near = seats_.near(place);
      return near >= 0 ? near : seats_.add(place);
    };
    Parting where{i, along_from, from, t, seat(p), {*own, seat(q)}};
    if (where.on_along == where.at.point || ends_in(edge(j), where.on_along)) return std::nullopt;
    const int common = from ? edge(j).from : edge(j).to;
    if (where.on_along == common || where.at.point == common) return std::nullopt;
    stop(i, t, where.on_along);
    moved_ = true;
    return where;
  }

  /// Ends near an edge of a greater feature move onto it; then points nearer than the reach become the one that the
  /// greater feature has.
  void seat_again() {
    std::vector<int> rank(web_.points.size(), 1 << 30);
    for (const GraphEdge& e : web_.edges)
      for (const int v : {e.from, e.to}) rank[v] = std::min(rank[v], e.source.feature);
    for (const auto& [v, e] : slid_) {
      if (edge(e).source.feature >= rank[v]) continue;
      const auto t = passes_near(edge(e).segment, point(v), reach_);
      if (!t || *t <= 0 || *t >= 1) continue;
      web_.points[v] = edge(e).segment.at(*t);
      rank[v] = edge(e).source.feature;
    }
    std::vector<int> order;
    for (int v = 0; v < static_cast<int>(web_.points.size()); ++v) order.push_back(v);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return rank[a] < rank[b]; });
    std::vector<Point> seated;
    Seats seats(seated, reach_);
    std::vector<int> place(order.size());
    for (const int v : order) {
      const int near = seats.near(point(v));
      place[v] = near >= 0 ? near : seats.add(point(v));
    }
    for (GraphEdge& e : web_.edges) {
      e.from = place[e.from];
      e.to = place[e.to];
    }
    web_.points = std::move(seated);
    seats_ = Seats(web_.points, reach_);
    stops_.assign(web_.edges.size(), {});
    partings_.assign(web_.edges.size(), std::nullopt);
    weave();
  }

  /// Makes the edges anew, through their stops.
  void weave() {
    PlanarGraph woven;
    woven.points = web_.points;
    EdgeInserter weaver(woven, parting * reach_);
    for (int e = 0; e < static_cast<int>(web_.edges.size()); ++e) {
      if (partings_[e]) {
        add_parted(e, weaver);
      } else {
        add_through(edge(e), stops_[e], weaver);
      }
    }
    web_.edges = std::move(woven.edges);
  }

  void add_part(const GraphEdge& whole, Stop a, Stop b, EdgeInserter& weaver) const {
    if (a.point == b.point) return;
    GraphEdge part = whole;
    part.from = a.point;
    part.to = b.point;
    part.segment = part_between(whole.segment, a.t, b.t, point(a.point), point(b.point));
    weaver.add(std::move(part));
  }

  void add_through(const GraphEdge& whole, std::vector<Stop> stops, EdgeInserter& weaver) const {
    std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.t < b.t; });
    stops.insert(stops.begin(), {0, whole.from});
    stops.push_back({1, whole.to});
    const double length = distance(point(whole.from), point(whole.to));
    bool shorter = true;
    for (std::size_t k = 0; k + 1 < stops.size() && !turns_far(whole); ++k)
      shorter = shorter && distance(point(stops[k].point), point(stops[k + 1].point)) < length;
    if (!shorter && stops.size() > 3) stops.erase(stops.begin() + 2, stops.end() - 1);
    for (std::size_t k = 0; k + 1 < stops.size(); ++k) add_part(whole, stops[k], stops[k + 1], weaver);
  }

  void add_parted(int e, EdgeInserter& weaver) const {
    const Parting& where = *partings_[e];
    const GraphEdge& own = edge(e);
    const GraphEdge& along = edge(where.along);
    const Stop common{where.from ? 0.0 : 1.0, where.from ? own.from : own.to};
    const Stop far{where.from ? 1.0 : 0.0, where.from ? own.to : own.from};
    GraphEdge led = own, rest = own;
    if (!where.from) {  // run from the common end, whatever way the edge runs
      for (GraphEdge* side : {&led, &rest})
        for (Passing& passing : side->passings) passing.sign = -passing.sign;
      rest.segment = own.segment.reversed();
    }
    led.segment = where.along_from ? along.segment : along.segment.reversed();
    const double on_led = where.along_from ? where.t_along : 1 - where.t_along;
    const double on_rest = where.from ? where.at.t : 1 - where.at.t;
    add_part(led, {0, common.point}, {on_led, where.on_along}, weaver);
    GraphEdge step = rest;
    step.segment = line(point(where.on_along), point(where.at.point));
    add_part(step, {0, where.on_along}, {1, where.at.point}, weaver);
    add_part(rest, {on_rest, where.at.point}, {1, far.point}, weaver);
  }

  PlanarGraph& web_;
  double reach_;
  Seats seats_;
  std::vector<std::vector<Stop>> stops_;          ///< for each edge
  std::vector<std::optional<Parting>> partings_;  ///< for each edge
  std::vector<std::pair<int, int>> slid_;         ///< point, edge that it is near
  std::vector<Meeting> meetings_;
  bool moved_ = false;    ///< something has to be done
  bool crowded_ = false;  ///< points are nearer together than the reach
};

}  // namespace

void round_off(PlanarGraph& web, double snap) {
  Rounder(web, snap).run();
  untangle_cusps(web, reach_of_snap * snap);
}

}  // namespace sagitta
