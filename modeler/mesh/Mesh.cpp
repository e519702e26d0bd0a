#include "mesh/Mesh.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "mesh/Bands.hpp"
#include "mesh/Deviation.hpp"
#include "mesh/EdgePolyline.hpp"
#include "mesh/Merge.hpp"
#include "mesh/Points.hpp"
#include "mesh/Shared.hpp"
#include "plane/Tolerance.hpp"
#include "surface/FormBend.hpp"

namespace sagitta {
namespace {

constexpr double most_parts = 4000;  ///< of a stretch of a line

/// What of the aim a chord along the board may stray by, and a facet's twist; the bands' width takes 0.375. Where the
/// triangles suit the surface (stretch_of) the three add up to what a triangle strays by; else it may be more.
constexpr double share_along = 0.15, suited_share_along = 0.4, share_of_twist = 0.2;
/// A form's triangles are at most so much longer across the board than along it, and whole powers of 2, with which
/// 32-bit floats stay exact.
constexpr double most_stretch = 256;

class Mesher {
 public:
  Mesher(const Shell& shell, double deviation, const Cancel& cancel)
      : shell_(shell), surface_(shell.plan.surface), aim_(deviation), cancel_(cancel) {}

  Mesh run() {
    trails_ = edge_polylines(shell_, aim_);
    for (const ShellVertex& v : shell_.vertices) points_.at(rounded(v.p), v.z);
    for (const bool holes : {false, true})
      for (std::size_t f = 0; f < shell_.faces.size(); ++f) {
        if (cancel_.wanted()) return {};
        const ShellFace& face = shell_.faces[f];
        if (face.bound.round() != holes) continue;
        const std::size_t before = mesh_.triangles.size();
        add_face(face);
        if (holes) keep_apart(before);
        mesh_.face.insert(mesh_.face.end(), mesh_.triangles.size() - before, static_cast<std::int32_t>(f));
      }
    turn_shared_sides(mesh_.triangles, mesh_.face);
    mesh_.points = std::move(points_.points);
    mesh_.deviation += merge_equal_points(mesh_, told_apart);
    return std::move(mesh_);
  }

 private:
  /// The triangles from index `first` on, a hole's wall, share no inner side with other faces.
  void keep_apart(std::size_t first) {
    for (; kept_ < first; ++kept_) add_edges(edges_, mesh_.triangles[kept_]);
    turn_shared_sides(mesh_.triangles, first, edges_);
  }

  void add_face(const ShellFace& face) {
    if (face.kind == ShellFace::Kind::wall) return add_wall(face);
    face.bound.round() ? add_round_wall(face) : add_spread(face);
  }

  struct Corner {
    PolylinePoint at;
    int id = -1;
  };
  using Corners = std::vector<Corner>;

  static void add_to(Corners& corners, const PolylinePoint& at, int id) {
    if (corners.empty() || corners.back().id != id) corners.push_back({at, id});
  }

  /// All points of a face's loop, each once where neighbours fall together.
  Corners boundary(const std::vector<Coedge>& loop) {
    Corners corners;
    for (const Coedge use : loop) {
      const ShellEdge& edge = shell_.edges[use.edge];
      if (edge.upright) {
        const ShellVertex& v = shell_.vertices[shell_.start(use)];
        const PolylinePoint at{rounded(v.p), v.p};
        add_to(corners, at, points_.at(at.p, v.z));
      } else if (use.forward) {
        for (const HalfEdge h : edge.chain) follow(h, edge.bound, corners);
      } else {
        for (auto h = edge.chain.rbegin(); h != edge.chain.rend(); ++h) follow(*h ^ 1, edge.bound, corners);
      }
    }
    while (corners.size() > 1 && corners.front().id == corners.back().id) corners.pop_back();
    return corners;
  }

  /// A form or a round wall may be so steep that rounding a place changes its height by more than points are told apart
  /// by: there all faces take the height of the exact place.
  int point(const PolylinePoint& at, const BoundingSurface& bound) {
    const bool steep = bound.round() || bound.form != 0;
    return points_.at(at.p, height(surface_, bound, steep ? at.exact : at.p));
  }

  /// The points of a plan half-edge from its origin on, its target left out.
  void follow(HalfEdge h, const BoundingSurface& bound, Corners& out) {
    const PlanEdge& edge = shell_.plan.map.edges[h >> 1];
    const std::vector<PolylinePoint>& inner = trails_.edges[h >> 1];
    const BoundingSurface& over = height_along(shell_.plan.map, edge, bound);
    const auto add = [&](const PolylinePoint& at) { add_to(out, at, point(at, over)); };
    add(trails_.vertices[h & 1 ? edge.to : edge.from]);
    if (h & 1) {
      for (auto at = inner.rbegin(); at != inner.rend(); ++at) add(*at);
    } else {
      for (const PolylinePoint& at : inner) add(at);
    }
  }

  /// The face's loops, counter-clockwise from above, their corners drawn flat by `flat`.
  template <class Flat>
  std::vector<std::vector<BandPoint>> flat_loops(const ShellFace& face, Flat flat) {
    std::vector<std::vector<BandPoint>> loops;
    for (const auto& loop : face.loops) {
      std::vector<BandPoint> points;
      for (const Corner& corner : boundary(loop)) points.push_back({flat(corner.at), corner.id});
      if (face.kind != ShellFace::Kind::top) std::reverse(points.begin(), points.end());
      if (points.size() > 2) loops.push_back(std::move(points));
    }
    return loops;
  }

  void add_triangle(int a, int b, int c) {
    if (a == b || b == c || c == a) return;
    mesh_.triangles.push_back(
        {static_cast<std::uint32_t>(a), static_cast<std::uint32_t>(b), static_cast<std::uint32_t>(c)});
  }

  void add_spread(const ShellFace& face) {
    const bool top = face.kind == ShellFace::Kind::top;
    const auto loops = flat_loops(face, [](const PolylinePoint& at) { return at.p; });
    stretch_ = stretch_of(face, loops);
    const auto between = [&](const BandPoint& a, const BandPoint& b) { return fill(face.bound, a, b); };
    const std::size_t first = mesh_.triangles.size();
    for (const auto& [a, b, c] : triangulate_in_bands(loops, trails_.lines, between, stretch_))
      top ? add_triangle(a, b, c) : add_triangle(c, b, a);
    if (face.bound.plane(surface_)) return;
    const Deviation deviation(surface_, face.bound);
    mesh_.deviation =
        std::max(mesh_.deviation, deviation.of(points_.points, loops, std::span(mesh_.triangles).subspan(first)));
  }

  /// A trough, a vault or a roll, in bands along its axis: between two of them its wall is as good as plane, but for
  /// what the axis bends along the board.
  void add_round_wall(const ShellFace& face) {
    const Tunnel& tunnel = face.bound.tunnel;
    const std::vector<double>& lines = trails_.across[tunnel];
    const auto loops = flat_loops(face, [&](const PolylinePoint& at) {
      const double across = tunnel.across(at.exact);
      const auto line = std::lower_bound(lines.begin(), lines.end(), across - tolerance::same);
      const bool on_line = line != lines.end() && std::abs(*line - across) <= tolerance::same;
      return Point{tunnel.along(at.exact), on_line ? *line : across};
    });
    const auto between = [&](const BandPoint& a, const BandPoint& b) { return fill_along(face.bound, a, b); };
    for (const auto& [a, b, c] : triangulate_in_bands(loops, lines, between)) {
      face.kind == ShellFace::Kind::top ? add_triangle(a, b, c) : add_triangle(c, b, a);
      measure_round(face.bound, a, b, c);
    }
  }

  /// Points along a line beside the axis, close enough for the bend of a roll's axis.
  std::vector<BandPoint> fill_along(const BoundingSurface& bound, const BandPoint& a, const BandPoint& b) {
    std::vector<BandPoint> points;
    if (bound.of_hole()) return points;
    const auto place = [&](double t) {
      return bound.tunnel.at(a.p.x + t * (b.p.x - a.p.x), a.p.y + t * (b.p.y - a.p.y));
    };
    const auto axis = [&](double t) { return axis_of(surface_, bound, place(t).x); };
    const double sag = std::abs(axis(0.5) - (axis(0) + axis(1)) / 2);
    const int parts = static_cast<int>(std::min(most_parts, std::ceil(std::sqrt(sag / (share_along * aim_)))));
    for (int i = 1; i < parts; ++i) {
      const double t = static_cast<double>(i) / parts;
      const Point exact = place(t);
      points.push_back({{a.p.x + t * (b.p.x - a.p.x), a.p.y}, point({rounded(exact), exact}, bound)});
    }
    return points;
  }

  void measure_round(const BoundingSurface& bound, int a, int b, int c) {
    const auto& p = points_.points[a];
    const auto& q = points_.points[b];
    const auto& r = points_.points[c];
    const auto judge = [&](double u, double v, double w) {
      const Point at{u * p[0] + v * q[0] + w * r[0], u * p[1] + v * q[1] + w * r[1]};
      const double radius = rise_of(surface_, bound), across = radius / bound.tunnel.radius * bound.tunnel.across(at);
      const double rise = u * p[2] + v * q[2] + w * r[2] - axis_of(surface_, bound, at.x);
      mesh_.deviation = std::max(mesh_.deviation, std::abs(std::hypot(across, rise) - radius));
    };
    judge(0.5, 0.5, 0);
    judge(0, 0.5, 0.5);
    judge(0.5, 0, 0.5);
    judge(1.0 / 3, 1.0 / 3, 1.0 / 3);
  }

  /// Points along a band's line, close enough for the change of radius along the board: of the second derivatives
  /// D_xx = y^2 (R'^2/R^3 - R''/2R^2) and D_xy = -y R'/R^2 of the drop, the chord and the twist.
  std::vector<BandPoint> fill(const BoundingSurface& bound, const BandPoint& a, const BandPoint& b) {
    std::vector<BandPoint> points;
    if (bound.plane(surface_)) return points;
    const auto line = std::lower_bound(trails_.lines.begin(), trails_.lines.end(), a.p.y);
    double step = 0;  // the wider of the bands that meet here
    if (line != trails_.lines.begin()) step = a.p.y - *(line - 1);
    if (line + 1 < trails_.lines.end()) step = std::max(step, *(line + 1) - a.p.y);
    const double span = b.p.x - a.p.x;
    std::vector<double> places{0};
    while (places.back() < span) {
      const double from = places.back();
      const double wide = std::min(span, step_along(bound, {a.p.x + from, a.p.y}, step));
      const double next = std::min(wide, step_along(bound, {a.p.x + std::min(span, from + wide), a.p.y}, step));
      places.push_back(from + std::max(next, span / most_parts));
    }
    const double fit = span / places.back();
    for (std::size_t i = 1; i + 1 < places.size(); ++i) {
      const Point p = rounded({a.p.x + fit * places[i], a.p.y});
      points.push_back({p, point({p, p}, bound)});
    }
    return points;
  }

  /// The square root of how much more the face bends along the board than across it: triangles that are Delaunay once
  /// x is stretched by it stray least. D'Azevedo and Simpson, "On optimal interpolation triangle incidences", SIAM J.
  /// Sci. Stat. Comput. 10, 1989.
  double stretch_of(const ShellFace& face, const std::vector<std::vector<BandPoint>>& loops) const {
    if (loops.empty()) return 1;
    Point low = loops.front().front().p, high = low;
    for (const BandPoint& at : loops.front()) {
      low = {std::min(low.x, at.p.x), std::min(low.y, at.p.y)};
      high = {std::max(high.x, at.p.x), std::max(high.y, at.p.y)};
    }
    Bend bend = bend_of_form(surface_, face.bound.form, low.x, low.y, high.y);
    if (!surface_.flat) bend.across += 1 / surface_.radius(low.x);
    const double ratio = std::sqrt(bend.along / std::max(bend.across, bend.along / (most_stretch * most_stretch)));
    return std::exp2(std::round(std::log2(std::max(1.0, ratio))));
  }

  /// How far along the board a chord and the twist of a band `step` wide may reach from p: a chord of length h strays
  /// by h^2 |z''| / 8 (de Boor, A Practical Guide to Splines, ch. III), the diagonal of a facet by h step |z_xy| / 4.
  double step_along(const BoundingSurface& bound, Point p, double step) const {
    const Bend form = bend_of_form(surface_, bound.form, p.x, p.y - step, p.y + step);
    double bend = form.along, twist = form.mixed;
    if (!surface_.flat) {
      const double y = std::abs(p.y), r = surface_.radius(p.x), slope = surface_.radius_slope(p.x);
      const double steep = std::pow(r / std::sqrt(std::max(tolerance::same, (r - y) * (r + y))), 3);
      bend += steep * y * y * (slope * slope / (r * r * r) + std::abs(surface_.r2) / (r * r));
      twist += steep * y * std::abs(slope) / (r * r);
    }
    const double along = stretch_ > 1 ? suited_share_along : share_along;
    const double by_bend = bend > 0 ? std::sqrt(8 * along * aim_ / bend) : 1e300;
    const double by_twist = twist > 0 ? 4 * share_of_twist * aim_ / (twist * step) : 1e300;
    return std::min(by_bend, by_twist);
  }

  void add_wall(const ShellFace& face) {
    for (const WallStrip& strip : face.strips) {
      const PlanEdge& edge = shell_.plan.map.edges[strip.plan_edge];
      std::vector<PolylinePoint> trail{trails_.vertices[edge.from]};
      trail.insert(trail.end(), trails_.edges[strip.plan_edge].begin(), trails_.edges[strip.plan_edge].end());
      trail.push_back(trails_.vertices[edge.to]);
      add_strip(trail, strip, strip_wood_left(face, edge));
      if (edge.segment.is_arc()) measure_round(edge.segment, trail);
    }
  }

  void add_strip(const std::vector<PolylinePoint>& trail, const WallStrip& strip, bool wood_left) {
    left_.clear();
    for (std::size_t i = 0; i + 1 < trail.size(); ++i) {
      if (trail[i].p == trail[i + 1].p) {
        left_.clear();
        continue;
      }
      column(trail[i + 1], strip, right_);
      if (left_.empty()) column(trail[i], strip, left_);
      add_panel(left_, right_, wood_left);
      left_.swap(right_);
    }
  }

  bool strip_wood_left(const ShellFace& face, const PlanEdge& edge) const {
    if (face.segment.is_arc()) return face.wood_left;
    const bool same_way = dot(face.segment.b - face.segment.a, edge.segment.b - edge.segment.a) > 0;
    return face.wood_left == same_way;
  }

  /// The points over a place from the strip's lower bound to its upper one.
  void column(const PolylinePoint& at, const WallStrip& strip, std::vector<int>& points) {
    const int low = point(at, strip.low), high = point(at, strip.high);
    points.assign(1, low);
    points_.add_strictly_between(at.p, low, high, points);
    if (high != low) points.push_back(high);
  }

  /// Triangles between two upright columns of points.
  void add_panel(const std::vector<int>& left, const std::vector<int>& right, bool wood_left) {
    std::size_t i = 0, j = 0;
    while (i + 1 < left.size() || j + 1 < right.size()) {
      const bool up_left = j + 1 == right.size() ||
                           (i + 1 < left.size() && points_.points[left[i + 1]][2] < points_.points[right[j + 1]][2]);
      const int third = up_left ? left[i + 1] : right[j + 1];
      wood_left ? add_triangle(left[i], right[j], third) : add_triangle(right[j], left[i], third);
      up_left ? ++i : ++j;
    }
  }

  void measure_round(const CurveSegment& arc, const std::vector<PolylinePoint>& trail) {
    for (std::size_t i = 0; i + 1 < trail.size(); ++i) {
      const Point middle = between(trail[i].p, trail[i + 1].p, 0.5);
      mesh_.deviation = std::max(mesh_.deviation, std::abs(distance(middle, arc.centre) - arc.radius));
    }
  }

  const Shell& shell_;
  const Surface& surface_;
  double aim_;
  const Cancel& cancel_;
  EdgePolylines trails_;
  double stretch_ = 1;  ///< of the face at work
  Points points_;
  Mesh mesh_;
  EdgeSet edges_;  ///< of the first `kept_` triangles
  std::size_t kept_ = 0;
  std::vector<int> left_, right_;  ///< columns of the wall at work
};

}  // namespace

Mesh make_mesh(const Shell& shell, double deviation, const Cancel& cancel) {
  constexpr int rounds = 8;  // a long triangle between sides of unlike density may stray further than its own sides
  Mesh best;
  for (int round = 0; round < rounds; ++round) {
    Mesh mesh = Mesher(shell, std::ldexp(deviation, -round), cancel).run();
    if (mesh.deviation <= deviation) return mesh;
    if (round == 0 || mesh.deviation < best.deviation) best = std::move(mesh);
  }
  return best;
}

void append(Mesh& all, const Mesh& other) {
  const auto first = static_cast<std::uint32_t>(all.points.size());
  all.points.insert(all.points.end(), other.points.begin(), other.points.end());
  for (const auto& [a, b, c] : other.triangles) all.triangles.push_back({first + a, first + b, first + c});
}

double volume(const Mesh& mesh) {
  double sum = 0;
  for (const auto& [a, b, c] : mesh.triangles) {
    const auto &p = mesh.points[a], &q = mesh.points[b], &r = mesh.points[c];
    const double qx = static_cast<double>(q[1]) * r[2] - static_cast<double>(q[2]) * r[1];
    const double qy = static_cast<double>(q[2]) * r[0] - static_cast<double>(q[0]) * r[2];
    const double qz = static_cast<double>(q[0]) * r[1] - static_cast<double>(q[1]) * r[0];
    sum += p[0] * qx + p[1] * qy + p[2] * qz;
  }
  return sum / 6;
}

}  // namespace sagitta
