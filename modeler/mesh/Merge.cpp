#include "mesh/Merge.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_map>

namespace sagitta {
namespace {

using Vertex = std::uint32_t;
using Triangle = std::array<Vertex, 3>;
using Vector = std::array<double, 3>;

bool has(const Triangle& t, Vertex v) { return std::find(t.begin(), t.end(), v) != t.end(); }

double dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

class Merger {
 public:
  Merger(Mesh& mesh, double step) : mesh_(mesh), step_(step) {}

  double run() {
    find_short_sides();
    if (sides_.empty()) return 0;
    gone_.resize(mesh_.triangles.size());
    for (std::uint32_t t = 0; t < mesh_.triangles.size(); ++t)
      for (const Vertex v : mesh_.triangles[t])
        if (const auto found = around_.find(v); found != around_.end()) found->second.push_back(t);
    // A side that may not go at first may once another is gone.
    while (std::erase_if(sides_, [&](const auto& side) { return collapsed(side.first, side.second); }) > 0) continue;
    drop_what_is_gone();
    return moved_;
  }

 private:
  bool equal(Vertex a, Vertex b) const {
    for (std::size_t k = 0; k < 3; ++k) {
      const double p = mesh_.points[a][k], q = mesh_.points[b][k];
      if (std::abs(p - q) > step_ || std::llround(p / step_) != std::llround(q / step_)) return false;
    }
    return true;
  }

  void find_short_sides() {
    for (const Triangle& t : mesh_.triangles)
      for (std::size_t k = 0; k < 3; ++k)
        if (const Vertex a = t[k], b = t[(k + 1) % 3]; a < b && equal(a, b)) {
          sides_.emplace_back(a, b);
          around_[a], around_[b];
        }
  }

  /// The point that a merged one has become.
  Vertex now(Vertex v) const {
    for (auto found = became_.find(v); found != became_.end(); found = became_.find(v)) v = found->second;
    return v;
  }

  /// The triangles about a point.
  std::vector<std::uint32_t> star(Vertex v) {
    std::vector<std::uint32_t>& star = around_.at(v);
    std::erase_if(star, [&](std::uint32_t t) { return gone_[t]; });
    return star;
  }

  std::vector<Vertex> neighbours(const std::vector<std::uint32_t>& star, Vertex v) const {
    std::vector<Vertex> found;
    for (const std::uint32_t t : star)
      for (const Vertex other : mesh_.triangles[t])
        if (other != v) found.push_back(other);
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
  }

  /// Whether the side is gone, now or before.
  bool collapsed(Vertex first, Vertex second) {
    const Vertex a = std::min(now(first), now(second)), b = std::max(now(first), now(second));
    if (a == b) return true;
    const std::vector<std::uint32_t> about_a = star(a), about_b = star(b);
    if (!may_go(a, b, about_a, about_b)) return false;
    if (keeps_sides_up(about_b, b, a)) {
      move(about_b, b, a);
    } else if (keeps_sides_up(about_a, a, b)) {
      move(about_a, a, b);
    } else {
      return false;
    }
    return true;
  }

  /// The link condition. Four triangles in all are a tetrahedron, of which nothing would be left.
  bool may_go(Vertex a, Vertex b, const std::vector<std::uint32_t>& about_a,
              const std::vector<std::uint32_t>& about_b) const {
    const auto beside =
        std::count_if(about_a.begin(), about_a.end(), [&](std::uint32_t t) { return has(mesh_.triangles[t], b); });
    const std::vector<Vertex> of_a = neighbours(about_a, a), of_b = neighbours(about_b, b);
    std::vector<Vertex> both;
    std::set_intersection(of_a.begin(), of_a.end(), of_b.begin(), of_b.end(), std::back_inserter(both));
    constexpr std::size_t tetrahedron = 4;
    return beside == 2 && both.size() == 2 && about_a.size() + about_b.size() - 2 > tetrahedron;
  }

  Vector normal(const Triangle& t) const {
    Vector u, v;
    for (std::size_t k = 0; k < 3; ++k) {
      u[k] = double{mesh_.points[t[1]][k]} - double{mesh_.points[t[0]][k]};
      v[k] = double{mesh_.points[t[2]][k]} - double{mesh_.points[t[0]][k]};
    }
    return {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
  }

  /// Whether the triangles of a star look the same way when its middle moves.
  bool keeps_sides_up(const std::vector<std::uint32_t>& star, Vertex from, Vertex to) const {
    return std::all_of(star.begin(), star.end(), [&](std::uint32_t t) {
      Triangle after = mesh_.triangles[t];
      if (has(after, to)) return true;
      std::replace(after.begin(), after.end(), from, to);
      return dot(normal(mesh_.triangles[t]), normal(after)) > 0;
    });
  }

  void move(const std::vector<std::uint32_t>& star, Vertex from, Vertex to) {
    for (const std::uint32_t t : star) {
      if (has(mesh_.triangles[t], to)) {
        gone_[t] = true;
        continue;
      }
      std::replace(mesh_.triangles[t].begin(), mesh_.triangles[t].end(), from, to);
      around_.at(to).push_back(t);
    }
    became_[from] = to;
    const auto &p = mesh_.points[from], &q = mesh_.points[to];
    moved_ = std::max(moved_, std::hypot(double{p[0]} - q[0], double{p[1]} - q[1], double{p[2]} - q[2]));
  }

  void drop_what_is_gone() {
    std::size_t kept = 0;
    for (std::size_t t = 0; t < gone_.size(); ++t) {
      if (gone_[t]) continue;
      mesh_.triangles[kept] = mesh_.triangles[t];
      if (t < mesh_.face.size()) mesh_.face[kept] = mesh_.face[t];
      ++kept;
    }
    mesh_.triangles.resize(kept);
    mesh_.face.resize(std::min(kept, mesh_.face.size()));
    std::vector<Vertex> place(mesh_.points.size());
    Vertex next = 0;
    for (Vertex v = 0; v < place.size(); ++v) {
      if (became_.contains(v)) continue;
      mesh_.points[next] = mesh_.points[v];
      place[v] = next++;
    }
    mesh_.points.resize(next);
    for (Triangle& t : mesh_.triangles)
      for (Vertex& v : t) v = place[v];
  }

  Mesh& mesh_;
  double step_;
  std::vector<std::pair<Vertex, Vertex>> sides_;
  std::unordered_map<Vertex, std::vector<std::uint32_t>> around_;  ///< the triangles about the ends of short sides
  std::unordered_map<Vertex, Vertex> became_;
  std::vector<bool> gone_;
  double moved_ = 0;
};

}  // namespace

double merge_equal_points(Mesh& mesh, double step) { return Merger(mesh, step).run(); }

}  // namespace sagitta
