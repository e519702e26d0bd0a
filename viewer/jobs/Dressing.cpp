#include "jobs/Dressing.hpp"

#include <algorithm>
#include <utility>

#include "board/SlotCut.hpp"

namespace sagitta::viewer {

Vec surface_normal(const Surface& s, double x, double y) {
  if (s.flat) return unit({static_cast<float>(s.fall_start && x > *s.fall_start ? s.fall_slope : 0), 0, 1});
  const double r = s.radius(x), root = std::sqrt(std::max(r * r - y * y, 1e-6));
  const double fall = s.fall_start && x > *s.fall_start ? s.fall_slope : 0;
  const double dx = -fall - s.radius_slope(x) * (1 - r / root), dy = -y / root;
  return unit({static_cast<float>(-dx), static_cast<float>(-dy), 1});
}

namespace {

/// Faces that turn by less than this into each other show no crisp edge: cosine of 2 degrees.
constexpr float crisp = 0.99939f;
/// The same where the mesh does not know its faces and every facet counts as one: cosine of 30 degrees.
constexpr float crisp_facets = 0.866f;
/// Marks a facet that stands for a face of its own.
constexpr std::uint32_t facet = 0x80000000u;

Vec vec(const std::array<float, 3>& p) { return {p[0], p[1], p[2]}; }

/// Vertices of a render mesh, one for each point of each face.
class Dresser {
 public:
  /// `filled`: strips fill the slots, so that these have no edge of their own.
  Dresser(const Surface& surface, const Shell& shell, const Mesh& mesh, bool filled)
      : surface_(surface), shell_(shell), mesh_(mesh), filled_(filled), newest_(mesh.points.size(), nothing) {}

  void add(std::size_t triangle, const Appearance& cloth) {
    const auto& t = mesh_.triangles[triangle];
    const Vec a = vec(mesh_.points[t[0]]), b = vec(mesh_.points[t[1]]), c = vec(mesh_.points[t[2]]);
    const Vec normal = cross(b - a, c - a);
    for (const std::uint32_t point : t) {
      const std::uint32_t v = vertex(face_of(triangle), point, cloth);
      skin.vertices[v].normal = skin.vertices[v].normal + normal;
      skin.triangles.push_back(v);
    }
  }

  void finish() {
    for (std::size_t i = 0; i < skin.vertices.size(); ++i) {
      RenderVertex& v = skin.vertices[i];
      if (faces_[i] & facet) {
        v.normal = unit(v.normal);
        continue;
      }
      const ShellFace& face = shell_.faces[faces_[i]];
      const bool on_surface =
          face.kind == ShellFace::Kind::top && face.bound.kind == BoundingSurface::Kind::offset_surface;
      v.normal = on_surface ? surface_normal(surface_, v.position.x, v.position.y) : unit(v.normal);
    }
    skin.bound();
  }

  /// Lines where two faces meet at an angle. Every side of a triangle waits at its lower point for the side that runs
  /// the other way.
  void add_edges() {
    struct Side {
      std::uint32_t other, triangle;
      bool up;  ///< runs from the lower point to the higher
    };
    std::vector<std::uint32_t> start(mesh_.points.size() + 1, 0);
    const auto each_side = [&](const auto& take) {
      for (std::size_t t = 0; t < mesh_.triangles.size(); ++t)
        for (std::size_t i = 0; i < 3; ++i)
          take(mesh_.triangles[t][i], mesh_.triangles[t][(i + 1) % 3], static_cast<std::uint32_t>(t));
    };
    each_side([&](std::uint32_t a, std::uint32_t b, std::uint32_t) { ++start[std::min(a, b) + 1]; });
    for (std::size_t p = 1; p < start.size(); ++p) start[p] += start[p - 1];
    std::vector<Side> sides(start.back());
    std::vector<std::uint32_t> next(start.begin(), start.end() - 1);
    each_side([&](std::uint32_t a, std::uint32_t b, std::uint32_t t) {
      sides[next[std::min(a, b)]++] = {std::max(a, b), t, a < b};
    });
    for (std::uint32_t p = 0; p + 1 < start.size(); ++p)
      for (std::uint32_t i = start[p]; i < start[p + 1]; ++i)
        for (std::uint32_t j = start[p]; sides[i].up && j < start[p + 1]; ++j)
          if (!sides[j].up && sides[j].other == sides[i].other)
            add_edge(p, sides[i].other, sides[i].triangle, sides[j].triangle);
  }

  RenderMesh skin;

 private:
  static constexpr std::uint32_t nothing = 0xffffffffu;

  void add_edge(std::uint32_t from, std::uint32_t to, std::size_t t, std::size_t other) {
    if (face_of(t) == face_of(other)) return;
    const std::uint32_t a = at(face_of(t), from), b = at(face_of(other), from);
    if (filled_ && (is_slot(face_of(t)) || is_slot(face_of(other)))) return;
    if (dot(skin.vertices[a].normal, skin.vertices[b].normal) > (face_of(t) & facet ? crisp_facets : crisp)) return;
    skin.edges.push_back(a);
    skin.edges.push_back(at(face_of(t), to));
  }
  bool is_slot(std::uint32_t face) const {
    const int feature = face & facet ? -1 : shell_.faces[face].feature;
    return feature >= 0 && shell_.plan.features[static_cast<std::size_t>(feature)].id.kind == FeatureId::Kind::slot;
  }
  std::uint32_t face_of(std::size_t triangle) const {
    const std::int32_t face = mesh_.face[triangle];
    return face < 0 ? facet | static_cast<std::uint32_t>(triangle) : static_cast<std::uint32_t>(face);
  }
  /// The vertex of a point on a face, `nothing` when there is none yet.
  std::uint32_t at(std::uint32_t face, std::uint32_t point) const {
    std::uint32_t v = newest_[point];
    while (v != nothing && faces_[v] != face) v = earlier_[v];
    return v;
  }
  std::uint32_t vertex(std::uint32_t face, std::uint32_t point, const Appearance& cloth) {
    if (const std::uint32_t there = at(face, point); there != nothing) return there;
    const auto made = static_cast<std::uint32_t>(skin.vertices.size());
    skin.vertices.push_back({vec(mesh_.points[point]), {}, cloth.colour, static_cast<float>(cloth.finish), 0});
    faces_.push_back(face);
    earlier_.push_back(std::exchange(newest_[point], made));
    return made;
  }

  const Surface& surface_;
  const Shell& shell_;
  const Mesh& mesh_;
  const bool filled_;
  std::vector<std::uint32_t> newest_;           ///< of each point: the vertex made last
  std::vector<std::uint32_t> faces_, earlier_;  ///< of each vertex: its face, the one made before it at its point
};

}  // namespace

RenderMesh dress_body(const PreparedBoard& board, const Shell& shell, const Mesh& mesh) {
  Dresser dresser(board.surface(), shell, mesh, slot_cut(board.board()) == SlotCut::lines);
  const Appearance wood = appearance_of(board.board(), board.board().blank.material);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) dresser.add(t, wood);
  dresser.finish();
  dresser.add_edges();
  return std::move(dresser.skin);
}

}  // namespace sagitta::viewer
