#include <algorithm>
#include <map>

#include "lift/Faces.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

/// Joins cells over edges on which both have the same bound on one of their sides.
class LevelFaces {
 public:
  LevelFaces(Shell& shell, const std::vector<EdgeHeights>& over, Side side)
      : shell_(shell), map_(shell.plan.map), over_(over), side_(side), groups_(shell.plan.cells.size()) {}

  void run() {
    for (const PlanEdge& edge : map_.edges)
      if (bound(edge.left).kind != BoundingSurface::Kind::none && bound(edge.left) == bound(edge.right))
        groups_.join(edge.left, edge.right);
    std::vector<bool> seen(map_.next.size(), false);
    for (HalfEdge h = 0; h < static_cast<int>(map_.next.size()); ++h)
      if (!seen[h] && shell_edge(h) >= 0) add_loop(h, seen);
  }

 private:
  const BoundingSurface& bound(int cell) const { return bound_of(shell_.plan.cells[cell], side_); }
  /// The shell edge that borders the face to the left of h; -1 where the face goes on.
  int shell_edge(HalfEdge h) const {
    const EdgeHeights& over = over_[h >> 1];
    const int height = over.border_of(side_, (h & 1) != 0);
    return height < 0 ? -1 : over.heights[height].shell_edge;
  }

  void add_loop(HalfEdge first, std::vector<bool>& seen) {
    std::vector<Coedge> loop;
    double twice_area = 0;
    HalfEdge h = first;
    do {
      seen[h] = true;
      loop.push_back({shell_edge(h), (h & 1) == 0});
      twice_area += swept(h);
      h = map_.next[h];
      while (shell_edge(h) < 0) h = map_.next[h ^ 1];
    } while (h != first);
    if (!looks_up(side_)) {
      std::reverse(loop.begin(), loop.end());
      for (Coedge& use : loop) use.forward = !use.forward;
    }
    std::vector<std::vector<Coedge>>& loops = face_of(map_.face(first)).loops;
    loops.insert(twice_area > 0 ? loops.begin() : loops.end(), std::move(loop));
  }

  double swept(HalfEdge h) const {
    double sum = 0;
    Point last = map_.vertices[map_.origin(h)];
    for (int i = 1; i <= 8; ++i) {
      const Point p = map_.at(map_.edges[h >> 1], h & 1 ? 1 - i / 8.0 : i / 8.0);
      sum += cross(last, p);
      last = p;
    }
    return sum;
  }

  ShellFace& face_of(int cell) {
    const auto [found, fresh] = faces_.try_emplace(groups_.of(cell), static_cast<int>(shell_.faces.size()));
    if (fresh) {
      ShellFace face;
      const Cell& below = shell_.plan.cells[cell];
      const bool hole = side_ == Side::trough || side_ == Side::vault;
      face.kind = looks_up(side_) ? ShellFace::Kind::top : ShellFace::Kind::bottom;
      face.bound = bound(cell);
      face.feature = hole ? below.hole_feature : side_ == Side::top ? below.feature : below.bottom_feature;
      shell_.faces.push_back(std::move(face));
    }
    return shell_.faces[found->second];
  }

  Shell& shell_;
  const Subdivision& map_;
  const std::vector<EdgeHeights>& over_;
  const Side side_;
  DisjointSets groups_;
  std::map<int, int> faces_;
};

}  // namespace

void add_level_faces(Shell& shell, const std::vector<EdgeHeights>& over) {
  for (const Side side : sides) LevelFaces(shell, over, side).run();
}

}  // namespace sagitta
