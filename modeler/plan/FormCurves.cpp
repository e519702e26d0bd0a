#include "plan/FormCurves.hpp"

#include <algorithm>

#include "plan/Roots.hpp"
#include "plan/ScallopBranches.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A vertex nearer than this to where two branches of a curve meet is on both. mm.
constexpr double on_border = 1e-3;

class Branches {
 public:
  Branches(FaceEdges& faces, int face, std::shared_ptr<const SurfacePair> meeting)
      : faces_(faces), map_(faces.map), face_(face), meeting_(std::move(meeting)), box_(faces.box(face)) {}

  void of_scallop(std::vector<int> nodes) {
    const ScallopBranches branches(*meeting_);
    for (int i = 1; i < ScallopBranches::branches; ++i) add_tips(branches, i, nodes);
    for (int i = 0; i < ScallopBranches::branches; ++i) {
      std::vector<int> branch;
      for (const int v : nodes) {
        const Point p = map_.vertices[v];
        if (p.x > branches.border(i, p.y) - on_border && p.x < branches.border(i + 1, p.y) + on_border)
          branch.push_back(v);
      }
      link(std::move(branch), &Point::y, [&](double y) -> std::optional<Point> {
        const std::optional<double> x = branches.x(i, y);
        return x ? std::optional(Point{*x, y}) : std::nullopt;
      });
    }
  }

  void of_bevel(std::vector<int> nodes) {
    link(std::move(nodes), &Point::x, [&](double x) -> std::optional<Point> {
      const auto gap = [&](double y) { return meeting_->gap({x, y}); };
      const std::optional<double> y = root_between(gap, box_.low.y, box_.high.y);
      return y ? std::optional(Point{x, *y}) : std::nullopt;
    });
  }

 private:
  /// Vertices within the face where the curve turns back from one branch to the next, on the line between them.
  void add_tips(const ScallopBranches& branches, int i, std::vector<int>& nodes) {
    constexpr int samples = 32;
    const auto on_line = [&](double t) {
      const double y = box_.low.y + t * (box_.high.y - box_.low.y);
      return Point{branches.border(i, y), y};
    };
    for (const double t : contacts_of([&](double t) { return meeting_->gap(on_line(t)); }, tolerance::height, samples))
      faces_.add_vertex(face_, on_line(t), nodes);
  }

  /// Draws a branch: at(p) is its point where the coordinate `over` is p. It is parted where its other coordinate turns
  /// back, and where it strays far from its chord.
  template <class At>
  void link(std::vector<int> nodes, double Point::*over, At at) {
    std::sort(nodes.begin(), nodes.end(),
              [&](int a, int b) { return map_.vertices[a].*over < map_.vertices[b].*over; });
    for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
      const double from = map_.vertices[nodes[i]].*over, to = map_.vertices[nodes[i + 1]].*over;
      if (to - from <= tolerance::vertex) {
        join(nodes[i], nodes[i + 1]);
        continue;
      }
      const std::optional<Point> middle = at((from + to) / 2);
      const PlanEdge chord = faces_.chord(face_, nodes[i], nodes[i + 1]);
      if (!middle || !faces_.holds(face_, *middle) || faces_.has(face_, chord, *middle)) continue;
      if (as_deep_all_along())
        map_.edges.push_back(chord);
      else
        follow(nodes[i], nodes[i + 1], turns(from, to, over, at));
    }
  }

  /// A straight edge between two nodes that the branch passes without changing `over`, as it does beside a place where
  /// it turns back: both heights are one along it.
  void join(int from, int to) {
    const Point a = map_.vertices[from], b = map_.vertices[to], middle = between(a, b, 0.5);
    if (distance(a, b) <= tolerance::vertex || std::abs(meeting_->gap(middle)) > tolerance::height) return;
    const auto joined = [&](const PlanEdge& edge) {  // by the branch that it turns back from
      return std::minmax(edge.from, edge.to) == std::minmax(from, to) && edge.crossing < 0;
    };
    if (faces_.holds(face_, middle) && std::none_of(map_.edges.begin(), map_.edges.end(), joined))
      map_.edges.push_back(faces_.chord(face_, from, to));
  }

  /// A scallop meets the moved playing surface on lines of one share of its space, which are straight.
  bool as_deep_all_along() const {
    return meeting_->upper.scalloped() && meeting_->other.kind == BoundingSurface::Kind::offset_surface &&
           meeting_->other.form == 0;
  }

  /// Where along a branch its other coordinate turns back: the gap does not change along `over` there.
  template <class At>
  std::vector<Point> turns(double from, double to, double Point::*over, At at) const {
    constexpr int samples = 16;
    constexpr double step = 1e-4;  // mm, for the slope by central differences
    const auto slope = [&](double t) {
      const std::optional<Point> p = at(from + t * (to - from));
      if (!p) return 0.0;
      Point before = *p, after = *p;
      before.*over -= step;
      after.*over += step;
      return (meeting_->gap(after) - meeting_->gap(before)) / (2 * step);
    };
    std::vector<Point> found;
    for (const double t : contacts_of(slope, tolerance::same, samples))
      if (const std::optional<Point> p = at(from + t * (to - from))) found.push_back(*p);
    return found;
  }

  void follow(int from, int to, const std::vector<Point>& turns) {
    IntersectionCurve curve;
    curve.meeting = meeting_;
    crossing_ = static_cast<int>(map_.crossings.size());
    map_.crossings.push_back(curve);
    int last = from;
    for (const Point p : turns) {
      const auto beside = [&](int v) { return distance(map_.vertices[v], p) <= 10 * tolerance::vertex; };
      if (beside(last) || beside(to)) continue;
      const int v = static_cast<int>(map_.vertices.size());
      map_.vertices.push_back(p);
      add(last, v, 0);
      last = v;
    }
    add(last, to, 0);
  }

  /// How far the curve turns away from the chord at p, as a sine; the gap's gradient is square to it.
  double turned_away(Point p, Point chord) const {
    constexpr double step = 1e-4;  // mm, for the gradient by central differences
    const auto slope = [&](Point way) { return meeting_->gap(p + step * way) - meeting_->gap(p - step * way); };
    const Point gradient{slope({1, 0}), slope({0, 1})};
    return length(gradient) > 0 ? std::abs(dot(unit(gradient), unit(chord))) : 0;
  }

  /// One edge, or several where the curve turns far from its chord, as it does beside a saddle: shorter where it bends
  /// more.
  void add(int from, int to, int depth) {
    constexpr int deepest = 12;
    constexpr double most_turn = 0.4, shortest = 0.02;
    const Point a = map_.vertices[from], b = map_.vertices[to];
    const Point middle = map_.crossings[static_cast<std::size_t>(crossing_)].at(a, b, 0.5);
    const bool turns = std::max({turned_away(a, b - a), turned_away(middle, b - a), turned_away(b, b - a)}) > most_turn;
    if (depth < deepest && distance(a, b) > shortest && turns) {
      const int v = static_cast<int>(map_.vertices.size());
      map_.vertices.push_back(middle);
      add(from, v, depth + 1);
      return add(v, to, depth + 1);
    }
    PlanEdge edge = faces_.chord(face_, from, to);
    edge.crossing = crossing_;
    map_.edges.push_back(edge);
  }

  FaceEdges& faces_;
  Subdivision& map_;
  int face_;
  std::shared_ptr<const SurfacePair> meeting_;
  Box box_;
  int crossing_ = -1;
};

}  // namespace

bool joins(const Surface& surface, const BoundingSurface& form, const BoundingSurface& other) {
  if (other.kind == BoundingSurface::Kind::level)
    return surface.flat && !form.fallen && other.value == surface.thickness - form.value;
  return other.form == 0 && other.value == form.value;
}

void divide_at_form(FaceEdges& faces, int face, const std::shared_ptr<const SurfacePair>& meeting,
                    std::vector<int> nodes) {
  Branches branches(faces, face, meeting);
  meeting->upper.scalloped() ? branches.of_scallop(std::move(nodes)) : branches.of_bevel(std::move(nodes));
}

bool add_triple_points(FaceEdges& faces, int face, const SurfacePair& pair, const BoundingSurface& third,
                       std::vector<int>& nodes) {
  const ScallopBranches branches(pair);
  const Box box = faces.box(face);
  constexpr int samples = 64;
  bool grazes = false;
  const auto y_at = [&](double t) { return box.low.y + t * (box.high.y - box.low.y); };
  for (int i = 0; i < ScallopBranches::branches; ++i) {
    const auto gap = [&](double t) {  // where the branch is not, nothing is found
      const std::optional<double> x = branches.x(i, y_at(t));
      return x ? height(pair.surface, third, {*x, y_at(t)}) - height(pair.surface, pair.other, {*x, y_at(t)}) : 1.0;
    };
    for (const double t : contacts_of(gap, tolerance::height, samples)) {
      const std::optional<double> x = branches.x(i, y_at(t));
      if (!x) continue;
      const Point p{*x, y_at(t)};
      if (std::abs(gap(t)) <= tolerance::height)
        faces.add_vertex(face, p, nodes);
      else if (third.round() && third.tunnel.radius - std::abs(third.tunnel.across(p)) <= 4 * tolerance::vertex)
        grazes = grazes || faces.holds(face, p);
    }
  }
  return grazes;
}

}  // namespace sagitta
