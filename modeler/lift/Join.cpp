#include <algorithm>
#include <map>
#include <optional>

#include "lift/Faces.hpp"
#include "plan/Slender.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

class Joiner {
 public:
  explicit Joiner(Shell& shell) : shell_(shell), became_(shell.edges.size()) {
    for (std::size_t i = 0; i < became_.size(); ++i) became_[i] = {static_cast<int>(i), true};
  }

  void run() {
    std::vector<std::vector<int>> at(shell_.vertices.size());
    for (int e = 0; e < static_cast<int>(shell_.edges.size()); ++e) {
      at[shell_.edges[e].from].push_back(e);
      at[shell_.edges[e].to].push_back(e);
    }
    for (int v = 0; v < static_cast<int>(at.size()); ++v)
      if (at[v].size() == 2) join(v, resolve({at[v][0], true}).edge, resolve({at[v][1], true}).edge);
    rewrite_loops();
    drop_unused();
  }

 private:
  Coedge resolve(Coedge use) const {
    while (became_[use.edge].edge != use.edge) {
      const Coedge next = became_[use.edge];
      use = {next.edge, next.forward == use.forward};
    }
    return use;
  }

  bool continues(const ShellEdge& a, const ShellEdge& b) {
    if (a.upright || b.upright || a.crossing >= 0 || b.crossing >= 0 || a.bound != b.bound) return false;
    if (a.segment.is_arc() != b.segment.is_arc()) return false;
    if (a.segment.is_arc())
      return a.segment.centre == b.segment.centre && a.segment.radius == b.segment.radius && !turns_too_far(a, b) &&
             !beside_slender(a);
    const Point d = a.segment.b - a.segment.a, e = b.segment.b - b.segment.a;
    return std::abs(cross(d, e)) <= tolerance::confusion * std::min(length(d), length(e));  // as for walls
  }

  /// The kernel's adaptive integrals come out wrong over a curved face whose edge turns back on itself: more than half
  /// a circle stays two edges there.
  static bool turns_too_far(const ShellEdge& a, const ShellEdge& b) {
    const double sweep = std::abs(a.segment.sweep + b.segment.sweep);
    return a.bound.kind == BoundingSurface::Kind::offset_surface && sweep > std::numbers::pi + tolerance::vertex;
  }

  /// The arcs of a slender face are parted at places that face each other, and stay so.
  bool beside_slender(const ShellEdge& edge) {
    const PlanEdge& below = shell_.plan.map.edges[edge.chain.front() >> 1];
    return is_slender(below.left) || is_slender(below.right);
  }

  bool is_slender(int face) {
    if (face == 0) return false;
    std::optional<bool>& known = slender_[face];
    if (!known) known = mean_width(shell_.plan.map, face) < slender;
    return *known;
  }

  void reverse(int e) {
    ShellEdge& edge = shell_.edges[e];
    std::swap(edge.from, edge.to);
    edge.segment = edge.segment.reversed();
    std::reverse(edge.chain.begin(), edge.chain.end());
    for (HalfEdge& h : edge.chain) h ^= 1;
  }

  /// b is taken into a.
  void join(int v, int a, int b) {
    if (a == b || !continues(shell_.edges[a], shell_.edges[b])) return;
    ShellEdge& one = shell_.edges[a];
    const int far_a = one.from == v ? one.to : one.from;
    const int far_b = shell_.edges[b].from == v ? shell_.edges[b].to : shell_.edges[b].from;
    if (far_a == far_b) return;  // no edge closes on itself
    const bool same_way = (one.to == v) == (shell_.edges[b].from == v);
    if (!same_way) reverse(b);
    const ShellEdge two = shell_.edges[b];
    const bool after = one.to == v;
    const ShellEdge& head = after ? one : two;
    const ShellEdge& tail = after ? two : one;
    CurveSegment segment = line(head.segment.a, tail.segment.b);
    if (one.segment.is_arc()) {
      segment = head.segment;
      segment.b = tail.segment.b;
      segment.sweep += tail.segment.sweep;
    }
    std::vector<HalfEdge> chain = head.chain;
    chain.insert(chain.end(), tail.chain.begin(), tail.chain.end());
    const int from = head.from, to = tail.to;
    one.from = from;
    one.to = to;
    one.segment = segment;
    one.chain = std::move(chain);
    became_[b] = {a, same_way};
  }

  void rewrite_loops() {
    for (ShellFace& face : shell_.faces)
      for (auto& loop : face.loops) {
        for (Coedge& use : loop) use = resolve(use);
        loop.erase(std::unique(loop.begin(), loop.end()), loop.end());
        while (loop.size() > 1 && loop.front() == loop.back()) loop.pop_back();
      }
  }

  void drop_unused() {
    std::vector<bool> dropped(became_.size());
    for (std::size_t e = 0; e < dropped.size(); ++e) dropped[e] = became_[e].edge != static_cast<int>(e);
    drop_edges(shell_, dropped);
  }

  Shell& shell_;
  std::map<int, std::optional<bool>> slender_;  ///< faces of the plan
  std::vector<Coedge> became_;                  ///< the edge that took this one in, and whether it runs the same way
};

}  // namespace

void join_edges(Shell& shell) { Joiner(shell).run(); }

void drop_edges(Shell& shell, const std::vector<bool>& dropped) {
  std::vector<int> edge_place(shell.edges.size(), -1), vertex_place(shell.vertices.size(), -1);
  std::vector<ShellEdge> edges;
  std::vector<ShellVertex> vertices;
  for (std::size_t e = 0; e < shell.edges.size(); ++e) {
    if (dropped[e]) continue;
    edge_place[e] = static_cast<int>(edges.size());
    edges.push_back(std::move(shell.edges[e]));
  }
  for (ShellEdge& edge : edges)
    for (int* end : {&edge.from, &edge.to}) {
      if (vertex_place[*end] < 0) {
        vertex_place[*end] = static_cast<int>(vertices.size());
        vertices.push_back(shell.vertices[*end]);
      }
      *end = vertex_place[*end];
    }
  for (ShellFace& face : shell.faces)
    for (auto& loop : face.loops)
      for (Coedge& use : loop) use.edge = edge_place[use.edge];
  shell.edges = std::move(edges);
  shell.vertices = std::move(vertices);
}

}  // namespace sagitta
