#include "lift/Shell.hpp"

#include <algorithm>
#include <sstream>

namespace sagitta {
namespace {

Point along(const std::vector<CurveSegment>& run, double t) {
  double left = 0;
  for (const CurveSegment& segment : run) left += t * segment.length();
  std::size_t i = 0;
  for (; i + 1 < run.size() && left > run[i].length(); ++i) left -= run[i].length();
  return run[i].at(std::min(1.0, left / run[i].length()));
}

}  // namespace

Point Shell::at(const ShellEdge& edge, double t) const {
  const Point a = vertices[edge.from].p, b = vertices[edge.to].p;
  if (edge.upright) return a;
  if (!edge.run.empty()) return along(edge.run, t);
  if (edge.crossing >= 0) return plan.map.crossings[edge.crossing].at(a, b, t);
  return edge.segment.is_arc() ? edge.segment.at(t) : between(a, b, t);
}

std::vector<Point> Shell::places(const ShellEdge& edge) const {
  std::vector<Point> found{vertices[edge.from].p};
  const std::size_t pieces = std::max<std::size_t>(1, edge.run.size());
  for (std::size_t i = 0; i < pieces; ++i)
    for (const double t : {0.25, 0.5, 0.75, 1.0}) found.push_back(edge.run.empty() ? at(edge, t) : edge.run[i].at(t));
  return found;
}

FeatureId id_of(const Shell& shell, const ShellFace& face) {
  using Kind = FeatureId::Kind;
  if (face.feature > 0) return shell.plan.features[face.feature].id;
  switch (face.kind) {
    case ShellFace::Kind::bottom:
      return {Kind::glue_face};
    case ShellFace::Kind::wall:
      return {Kind::edge};
    case ShellFace::Kind::top:
      break;
  }
  const bool played = face.bound.kind == BoundingSurface::Kind::offset_surface || shell.plan.surface.flat;
  return {played ? Kind::playing_surface : Kind::blank_top};
}

std::string name(const Shell& shell, const ShellFace& face) {
  return face.feature > 0 ? shell.plan.features[face.feature].name : feature_name(id_of(shell, face));
}

int genus(const Shell& shell) {
  const int faces = static_cast<int>(shell.faces.size());
  int loops = 0;
  for (const ShellFace& face : shell.faces) loops += static_cast<int>(face.loops.size());
  const int euler =
      static_cast<int>(shell.vertices.size()) - static_cast<int>(shell.edges.size()) + faces - (loops - faces);
  return (2 - euler) / 2;
}

std::string unsound(const Shell& shell) {
  std::ostringstream wrong;
  std::vector<int> forward(shell.edges.size(), 0), backward(shell.edges.size(), 0);
  for (std::size_t f = 0; f < shell.faces.size(); ++f)
    for (const auto& loop : shell.faces[f].loops)
      for (std::size_t i = 0; i < loop.size(); ++i) {
        ++(loop[i].forward ? forward : backward)[loop[i].edge];
        if (shell.end(loop[i]) != shell.start(loop[(i + 1) % loop.size()]))
          wrong << "face " << f << " (" << name(shell, shell.faces[f]) << ") has an open loop\n";
      }
  for (std::size_t e = 0; e < shell.edges.size(); ++e)
    if (forward[e] != 1 || backward[e] != 1) {
      const Point p = shell.at(shell.edges[e], 0.5);
      wrong << "edge " << e << " at " << p.x << ", " << p.y << " is used " << forward[e] << " and " << backward[e]
            << " times\n";
    }
  return wrong.str();
}

}  // namespace sagitta
