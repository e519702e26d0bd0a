#include "mesh/MeshFlaw.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "mesh/Allowance.hpp"

namespace sagitta {
namespace {

using Vertex = std::uint32_t;

/// A directed edge, seen from its first vertex.
struct Spoke {
  Vertex to = 0;
  std::uint32_t triangle = 0;
};

/// All directed edges of a mesh, by the vertex that they begin at.
class Spokes {
 public:
  explicit Spokes(const Mesh& mesh) : first_(mesh.points.size() + 1, 0), spokes_(3 * mesh.triangles.size()) {
    for (const auto& t : mesh.triangles)
      for (const Vertex v : t) ++first_[v + 1];
    std::partial_sum(first_.begin(), first_.end(), first_.begin());
    std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
    for (std::uint32_t i = 0; i < mesh.triangles.size(); ++i)
      for (std::size_t k = 0; k < 3; ++k) spokes_[next[mesh.triangles[i][k]]++] = {mesh.triangles[i][(k + 1) % 3], i};
    for (Vertex v = 0; v < mesh.points.size(); ++v)
      std::sort(begin(v), end(v), [](const Spoke& a, const Spoke& b) { return a.to < b.to; });
  }

  Spoke* begin(Vertex v) { return spokes_.data() + first_[v]; }
  Spoke* end(Vertex v) { return spokes_.data() + first_[v + 1]; }
  std::size_t count(Vertex v) const { return first_[v + 1] - first_[v]; }
  /// The first spoke from one vertex to another; null when there is none.
  const Spoke* find(Vertex from, Vertex to) {
    const Spoke* const at =
        std::lower_bound(begin(from), end(from), to, [](const Spoke& s, Vertex wanted) { return s.to < wanted; });
    return at != end(from) && at->to == to ? at : nullptr;
  }

 private:
  std::vector<std::uint32_t> first_;
  std::vector<Spoke> spokes_;
};

class Judge {
 public:
  explicit Judge(const Mesh& mesh) : mesh_(mesh) {}

  std::optional<Flaw> run(long euler) {
    if (mesh_.triangles.empty() || names_nothing()) return flaw_;
    if (equal_points()) return flaw_;
    Spokes spokes(mesh_);
    for (Vertex v = 0; v < mesh_.points.size(); ++v)
      if (wrong_about(v, spokes)) return flaw_;
    const long found = euler_of(spokes);
    if (found == euler) return std::nullopt;
    tell(Flaw::Kind::euler, "V - E + F is " + std::to_string(found) + " instead of " + std::to_string(euler), 0, 0);
    return flaw_;
  }

 private:
  bool tell(Flaw::Kind kind, const std::string& what, Vertex at, std::uint32_t triangle) {
    flaw_.kind = kind;
    flaw_.what = what;
    for (std::size_t i = 0; i < 3; ++i) flaw_.at[i] = mesh_.points[at][i];
    flaw_.face = triangle < mesh_.face.size() ? mesh_.face[triangle] : -1;
    return true;
  }

  bool names_nothing() {
    const auto beyond = [&](const auto& t) {
      return std::any_of(t.begin(), t.end(), [&](Vertex v) { return v >= mesh_.points.size(); });
    };
    if (std::none_of(mesh_.triangles.begin(), mesh_.triangles.end(), beyond)) return false;
    flaw_.what = "a triangle names a point that is not there";
    return true;
  }

  bool equal_points() {
    std::vector<Vertex> order(mesh_.points.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto& p = mesh_.points;
    std::sort(order.begin(), order.end(), [&](Vertex a, Vertex b) { return p[a] < p[b]; });
    const auto twin = std::adjacent_find(order.begin(), order.end(), [&](Vertex a, Vertex b) { return p[a] == p[b]; });
    if (twin != order.end()) return tell(Flaw::Kind::equal_points, "two points are equal", *twin, no_triangle);
    for (std::uint32_t i = 0; i < mesh_.triangles.size(); ++i) {
      const auto& [a, b, c] = mesh_.triangles[i];
      if (a == b || b == c || c == a) return tell(Flaw::Kind::equal_points, "a triangle has two equal corners", a, i);
    }
    return false;
  }

  /// Every spoke of v is there once and has its reverse once, in another triangle.
  bool wrong_about(Vertex v, Spokes& spokes) {
    for (const Spoke* s = spokes.begin(v); s != spokes.end(v); ++s) {
      if (s + 1 != spokes.end(v) && s[1].to == s->to)
        return tell(Flaw::Kind::edge_use, "two triangles use a side the same way round", v, s->triangle);
      const Spoke* const back = spokes.find(s->to, v);
      if (!back) return tell(Flaw::Kind::edge_use, "a side belongs to one triangle only", v, s->triangle);
      if (third(s->triangle, v, s->to) == third(back->triangle, v, s->to))
        return tell(Flaw::Kind::doubled, "two triangles lie back to back", v, s->triangle);
    }
    return spokes.count(v) > 0 && ring_about(v, spokes) != spokes.count(v) &&
           tell(Flaw::Kind::vertex_use, "wood meets wood in a point only", v, spokes.begin(v)->triangle);
  }

  /// How many triangles follow each other about v.
  std::size_t ring_about(Vertex v, Spokes& spokes) const {
    const Spoke* s = spokes.begin(v);
    const std::uint32_t first = s->triangle;
    std::size_t count = 0;
    do {
      s = spokes.find(v, third(s->triangle, v, s->to));
      ++count;
    } while (s && s->triangle != first && count <= spokes.count(v));
    return count;
  }

  Vertex third(std::uint32_t triangle, Vertex a, Vertex b) const {
    const auto& t = mesh_.triangles[triangle];
    return *std::find_if(t.begin(), t.end(), [&](Vertex v) { return v != a && v != b; });
  }

  long euler_of(const Spokes& spokes) const {
    long used = 0;
    for (Vertex v = 0; v < mesh_.points.size(); ++v) used += spokes.count(v) > 0;
    const long triangles = static_cast<long>(mesh_.triangles.size());
    return used - 3 * triangles / 2 + triangles;
  }

  static constexpr auto no_triangle = static_cast<std::uint32_t>(-1);
  const Mesh& mesh_;
  Flaw flaw_{Flaw::Kind::empty, "it has no triangles", {}, -1};
};

}  // namespace

std::optional<Flaw> equal_points(const Mesh& mesh, double step) {
  std::vector<std::array<long long, 3>> rounded;
  rounded.reserve(mesh.points.size());
  for (const auto& [x, y, z] : mesh.points)
    rounded.push_back({std::llround(x / step), std::llround(y / step), std::llround(z / step)});
  std::sort(rounded.begin(), rounded.end());
  const auto twin = std::adjacent_find(rounded.begin(), rounded.end());
  if (twin == rounded.end()) return std::nullopt;
  Flaw flaw{Flaw::Kind::equal_points, "two points are equal when they are written", {}, -1};
  for (std::size_t i = 0; i < 3; ++i) flaw.at[i] = static_cast<double>((*twin)[i]) * step;
  return flaw;
}

std::optional<Flaw> flaw_in(const Mesh& mesh, long euler) { return Judge(mesh).run(euler); }

std::optional<Flaw> flaw_in(const Mesh& mesh, const Shell& shell, double planned) {
  if (auto flaw = flaw_in(mesh, 2 - 2 * static_cast<long>(genus(shell)))) return flaw;
  return volume_flaw(shell, volume(mesh), planned, volume_allowance(mesh, shell));
}

}  // namespace sagitta
