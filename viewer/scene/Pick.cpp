#include "scene/Pick.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

namespace {

struct Vec3 {
  double x, y, z;
};
Vec3 wide(const std::array<float, 3>& p) { return {p[0], p[1], p[2]}; }
Vec3 wide(Vec p) { return {p.x, p.y, p.z}; }
Vec3 minus(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
Vec3 times(Vec3 a, Vec3 b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
double with(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

/// Distance along the ray, or nothing. Moeller and Trumbore, "Fast, minimum storage ray/triangle intersection",
/// Journal of Graphics Tools 2 (1997), with triangles seen from behind left out.
std::optional<double> meet(Vec3 from, Vec3 along, Vec3 a, Vec3 b, Vec3 c) {
  const Vec3 ab = minus(b, a), ac = minus(c, a), p = times(along, ac);
  const double det = with(ab, p);
  if (det <= 0) return std::nullopt;
  const Vec3 t = minus(from, a);
  const double u = with(t, p);
  if (u < 0 || u > det) return std::nullopt;
  const Vec3 q = times(t, ab);
  const double v = with(along, q);
  if (v < 0 || u + v > det) return std::nullopt;
  const double distance = with(ac, q) / det;
  return distance > 0 ? std::optional(distance) : std::nullopt;
}

float pixels_apart(const Camera& camera, Vec a, Pixel pointer) {
  const auto p = camera.project(a);
  return p ? std::hypot(p->x - pointer.x, p->y - pointer.y) : 1e9f;
}

Vec nearest_on(Vec a, Vec b, Vec p) {
  const float l = dot(b - a, b - a);
  const float s = l > 0 ? std::clamp(dot(p - a, b - a) / l, 0.0f, 1.0f) : 0;
  return a + s * (b - a);
}

Vec point(const Mesh& mesh, std::uint32_t i) { return {mesh.points[i][0], mesh.points[i][1], mesh.points[i][2]}; }
Vec point(const ShellVertex& v) {
  return {static_cast<float>(v.p.x), static_cast<float>(v.p.y), static_cast<float>(v.z)};
}

struct Nearest {
  float pixels;
  Vec place;
  bool found = false;
};

void offer(Nearest& best, const Camera& camera, Pixel pointer, Vec place) {
  const float pixels = pixels_apart(camera, place, pointer);
  if (pixels < best.pixels) best = {pixels, place, true};
}

/// The shell's vertices around the face that was hit.
Nearest nearest_corner(const Shell& shell, const ShellFace& face, const Camera& camera, Pixel pointer, float reach) {
  Nearest best{reach, {}};
  for (const auto& loop : face.loops)
    for (const Coedge& use : loop) {
      const ShellEdge& edge = shell.edges[static_cast<std::size_t>(use.edge)];
      for (const int v : {edge.from, edge.to})
        offer(best, camera, pointer, point(shell.vertices[static_cast<std::size_t>(v)]));
    }
  return best;
}

/// The mesh's lines around the face that was hit.
Nearest nearest_edge(const Mesh& mesh, const Hit& hit, const Camera& camera, Pixel pointer, float reach) {
  Nearest best{reach, {}};
  std::vector<std::uint64_t> lines;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    if (mesh.face[t] != hit.face) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint64_t a = mesh.triangles[t][i], b = mesh.triangles[t][(i + 1) % 3];
      lines.push_back(std::min(a, b) << 32 | std::max(a, b));
    }
  }
  std::sort(lines.begin(), lines.end());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const bool shared = (i > 0 && lines[i - 1] == lines[i]) || (i + 1 < lines.size() && lines[i + 1] == lines[i]);
    if (shared) continue;
    offer(best, camera, pointer,
          nearest_on(point(mesh, static_cast<std::uint32_t>(lines[i] >> 32)),
                     point(mesh, static_cast<std::uint32_t>(lines[i])), hit.place));
  }
  return best;
}

Nearest nearest_slot(const Layout& layout, const Hit& hit, const Camera& camera, Pixel pointer, float reach) {
  Nearest best{reach, {}};
  for (const Slot& slot : layout.slots) {
    const Vec a{static_cast<float>(slot.bass_end.x), static_cast<float>(slot.bass_end.y), hit.place.z};
    const Vec b{static_cast<float>(slot.treble_end.x), static_cast<float>(slot.treble_end.y), hit.place.z};
    offer(best, camera, pointer, nearest_on(a, b, hit.place));
  }
  return best;
}

}  // namespace

std::optional<Hit> cast(const Mesh& mesh, const Ray& ray, std::optional<float> cut) {
  const Vec3 from = wide(ray.from), along = wide(ray.along);
  std::optional<Hit> best;
  for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
    const auto& [i, j, k] = mesh.triangles[t];
    const auto distance = meet(from, along, wide(mesh.points[i]), wide(mesh.points[j]), wide(mesh.points[k]));
    if (!distance || (best && *distance >= best->distance)) continue;
    if (cut && from.x + *distance * along.x < *cut) continue;
    best = Hit{*distance, {}, {}, t, mesh.face[t]};
  }
  if (!best) return best;
  best->place = ray.from + static_cast<float>(best->distance) * ray.along;
  const auto& [i, j, k] = mesh.triangles[best->triangle];
  best->normal = unit(cross(point(mesh, j) - point(mesh, i), point(mesh, k) - point(mesh, i)));
  return best;
}

FeatureId feature_at(const Shell& shell, const Hit& hit) {
  return hit.face < 0 ? FeatureId{FeatureId::Kind::board}
                      : id_of(shell, shell.faces[static_cast<std::size_t>(hit.face)]);
}

std::string name_at(const Shell& shell, const Hit& hit) {
  return hit.face < 0 ? feature_name(feature_at(shell, hit))
                      : name(shell, shell.faces[static_cast<std::size_t>(hit.face)]);
}

Picked snapped(const Shell& shell, const Mesh& mesh, const Layout& layout, const Hit& hit, const Camera& camera,
               float reach) {
  if (hit.face < 0) return {Snap::face, hit.place, hit.normal, name_at(shell, hit)};
  const ShellFace& face = shell.faces[static_cast<std::size_t>(hit.face)];
  const Pixel pointer = camera.project(hit.place).value_or(Pixel{});
  if (const Nearest corner = nearest_corner(shell, face, camera, pointer, reach); corner.found)
    return {Snap::corner, corner.place, hit.normal, name(shell, face)};
  if (const Nearest slot = nearest_slot(layout, hit, camera, pointer, reach);
      slot.found && face.kind == ShellFace::Kind::top)
    return {Snap::slot_centre, slot.place, hit.normal, name(shell, face)};
  if (const Nearest edge = nearest_edge(mesh, hit, camera, pointer, reach); edge.found)
    return {Snap::edge, edge.place, hit.normal, name(shell, face)};
  return {Snap::face, hit.place, hit.normal, name(shell, face)};
}

Measured measure(const Picked& a, const Picked& b) {
  constexpr float parallel = 0.99998f;  // cosine of about a third of a degree
  const Vec d = b.place - a.place;
  Measured m{length(d), std::abs(d.x), std::abs(d.y), std::abs(d.z), std::nullopt};
  if (a.snap == Snap::face && b.snap == Snap::face && std::abs(dot(a.normal, b.normal)) > parallel)
    m.faces = std::abs(dot(d, a.normal));
  return m;
}

std::optional<int> inlay_of(const FeatureId& id) {
  const bool inlay = id.kind == FeatureId::Kind::inlay || id.kind == FeatureId::Kind::piece;
  return inlay && id.index >= 0 ? std::optional(id.index) : std::nullopt;
}

}  // namespace sagitta::viewer
