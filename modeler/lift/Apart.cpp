#include "lift/Apart.hpp"

#include <algorithm>
#include <numeric>

namespace sagitta {
namespace {

/// Which faces hang together by shared edges.
class Groups {
 public:
  explicit Groups(const Shell& shell) : first_(shell.edges.size(), -1), parent_(shell.faces.size()) {
    std::iota(parent_.begin(), parent_.end(), 0);
    for (int face = 0; face < static_cast<int>(shell.faces.size()); ++face)
      for (const auto& loop : shell.faces[face].loops)
        for (const ShellUse use : loop) {
          int& other = first_[use.edge];
          if (other < 0) other = face;
          const int a = root(face), b = root(other);
          parent_[std::max(a, b)] = std::min(a, b);
        }
  }
  int root(int face) {
    while (parent_[face] != face) face = parent_[face] = parent_[parent_[face]];
    return face;
  }

 private:
  std::vector<int> first_, parent_;
};

/// Copies faces with the edges and vertices that they use.
class Part {
 public:
  explicit Part(const Shell& whole) : whole_(whole), edge_(whole.edges.size(), -1), vertex_(whole.vertices.size(), -1) {
    part_.plan = whole.plan;
  }
  void add(const ShellFace& face) {
    ShellFace& copy = part_.faces.emplace_back(face);
    for (auto& loop : copy.loops)
      for (ShellUse& use : loop) use.edge = edge(use.edge);
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

std::vector<Shell> apart(const Shell& shell) {
  Groups groups(shell);
  std::vector<Shell> parts;
  for (int first = 0; first < static_cast<int>(shell.faces.size()); ++first) {
    if (groups.root(first) != first) continue;
    Part part(shell);
    for (int face = first; face < static_cast<int>(shell.faces.size()); ++face)
      if (groups.root(face) == first) part.add(shell.faces[face]);
    parts.push_back(part.take());
  }
  return parts;
}

}  // namespace sagitta
