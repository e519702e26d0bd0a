#include "lift/ConnectedComponents.hpp"

#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

/// Which faces are connected by shared edges.
DisjointSets groups_of(const Shell& shell) {
  DisjointSets groups(shell.faces.size());
  std::vector<int> first(shell.edges.size(), -1);  // face of each edge
  for (int face = 0; face < static_cast<int>(shell.faces.size()); ++face)
    for (const auto& loop : shell.faces[face].loops)
      for (const Coedge use : loop) {
        int& other = first[use.edge];
        if (other < 0) other = face;
        groups.join(face, other);
      }
  return groups;
}

/// Copies faces with the edges and vertices that they use.
class Part {
 public:
  explicit Part(const Shell& whole) : whole_(whole), edge_(whole.edges.size(), -1), vertex_(whole.vertices.size(), -1) {
    part_.plan = whole.plan;
  }
  void add(const ShellFace& face) {
    ShellFace& copy = part_.faces.emplace_back(face);
    for (auto& loop : copy.loops)
      for (Coedge& use : loop) use.edge = edge(use.edge);
  }
  Shell take() { return std::move(part_); }

 private:
  int edge(int from) {
    if (edge_[from] >= 0) return edge_[from];
    ShellEdge copy = whole_.edges[from];
    copy.from = vertex(copy.from);
    copy.to = vertex(copy.to);
    edge_[from] = static_cast<int>(part_.edges.size());
    part_.edges.push_back(std::move(copy));
    return edge_[from];
  }
  int vertex(int from) {
    if (vertex_[from] < 0) {
      vertex_[from] = static_cast<int>(part_.vertices.size());
      part_.vertices.push_back(whole_.vertices[from]);
    }
    return vertex_[from];
  }

  const Shell& whole_;
  std::vector<int> edge_, vertex_;
  Shell part_;
};

}  // namespace

std::vector<Shell> connected_components(const Shell& shell) {
  DisjointSets groups = groups_of(shell);
  std::vector<Shell> parts;
  for (int first = 0; first < static_cast<int>(shell.faces.size()); ++first) {
    if (groups.of(first) != first) continue;
    Part part(shell);
    for (int face = first; face < static_cast<int>(shell.faces.size()); ++face)
      if (groups.of(face) == first) part.add(shell.faces[face]);
    parts.push_back(part.take());
  }
  return parts;
}

}  // namespace sagitta
