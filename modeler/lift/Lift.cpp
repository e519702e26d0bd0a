#include <algorithm>

#include "lift/Faces.hpp"
#include "lift/Heights.hpp"
#include "lift/Shell.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

/// One end of a wall at a plan vertex, found by going about it counter-clockwise.
struct WallEnd {
  int wall = -1;           ///< index into Lifter::walls_
  bool at_from = true;     ///< the plan edge starts here
  bool wood_ahead = true;  ///< the wood follows counter-clockwise
};

/// Two drawn segments of one circle meet over a plan vertex, from shell vertex `low` to the next.
struct RoundJoint {
  int low = -1;
  WallEnd a, b;
};

class Lifter {
 public:
  explicit Lifter(Plan plan) { shell_.plan = std::move(plan); }

  Shell run() {
    walls_of_edge_.resize(map_.edges.size());
    over_.reserve(map_.edges.size());
    for (const PlanEdge& edge : map_.edges) over_.push_back(heights_over(shell_.plan, edge));
    shell_.edges.reserve(4 * map_.edges.size());
    for (int e = 0; e < static_cast<int>(map_.edges.size()); ++e) {
      lift_edges(e);
      for (const Wall& wall : over_[e].walls) {
        WallPiece piece;
        piece.plan_edge = e;
        piece.low = over_[e].heights[wall.low].shell_edge;
        piece.high = over_[e].heights[wall.high].shell_edge;
        piece.wood_left = wall.wood_left;
        walls_of_edge_[e].push_back(static_cast<int>(walls_.size()));
        walls_.push_back(std::move(piece));
      }
    }
    place_vertices();
    raise_uprights();
    add_level_faces(shell_, over_);
    add_walls(shell_, walls_);
    join_edges(shell_);
    join_smooth_walls(shell_);
    return std::move(shell_);
  }

 private:
  void lift_edges(int e) {
    const PlanEdge& edge = map_.edges[e];
    for (Height& h : over_[e].heights) {
      if (!h.used) continue;
      h.shell_edge = static_cast<int>(shell_.edges.size());
      ShellEdge lifted;
      lifted.bound = h.bound;
      lifted.segment = edge.segment;
      lifted.crossing = edge.crossing;
      lifted.chain = {2 * e};
      shell_.edges.push_back(std::move(lifted));
    }
  }

  /// Heights that meet at a plan vertex become one vertex; a level's height is kept exactly.
  void place_vertices() {
    struct Seat {
      double z;
      bool level;
      int* end;
    };
    std::vector<std::vector<Seat>> seats(map_.vertices.size());
    for (ShellEdge& edge : shell_.edges) {
      const PlanEdge& below = map_.edges[edge.chain.front() >> 1];
      for (const bool start : {true, false}) {
        const int v = start ? below.from : below.to;
        seats[v].push_back({height(shell_.plan.surface, edge.bound, map_.vertices[v]),
                            edge.bound.kind == BoundingSurface::Kind::level, start ? &edge.from : &edge.to});
      }
    }
    first_vertex_.assign(map_.vertices.size() + 1, 0);
    for (std::size_t v = 0; v < seats.size(); ++v) {
      first_vertex_[v] = static_cast<int>(shell_.vertices.size());
      std::sort(seats[v].begin(), seats[v].end(), [](const Seat& a, const Seat& b) { return a.z < b.z; });
      for (std::size_t i = 0; i < seats[v].size(); ++i) {
        const Seat& seat = seats[v][i];
        if (i == 0 || seat.z - seats[v][i - 1].z > tolerance::height)
          shell_.vertices.push_back({map_.vertices[v], seat.z});
        else if (seat.level)
          shell_.vertices.back().z = seat.z;
        *seat.end = static_cast<int>(shell_.vertices.size()) - 1;
      }
    }
    first_vertex_.back() = static_cast<int>(shell_.vertices.size());
  }

  std::vector<HalfEdge> star(int v) const {
    std::vector<HalfEdge> out;
    const HalfEdge first = outgoing_[v];
    if (first < 0) return out;
    HalfEdge h = first;
    do {
      out.push_back(h);
      h = map_.next_around_vertex[h];
    } while (h != first);
    return out;
  }

  void raise_uprights() {
    outgoing_.assign(map_.vertices.size(), -1);
    for (HalfEdge h = 0; h < 2 * static_cast<int>(map_.edges.size()); ++h) outgoing_[map_.origin(h)] = h;
    for (std::size_t v = 0; v < map_.vertices.size(); ++v) {
      const auto around = star(static_cast<int>(v));
      for (int low = first_vertex_[v]; low + 1 < first_vertex_[v + 1]; ++low) raise(around, low);
    }
    join_round_walls();
  }

  /// Drawn segments of one circle become one wall, as long as that does not go all the way round.
  void join_round_walls() {
    DisjointSets groups(walls_.size());  // walls joined so far
    for (std::size_t w = 0; w < walls_.size(); ++w)
      for (const int other : walls_[w].joined) groups.join(static_cast<int>(w), other);
    std::vector<double> sweep(walls_.size(), 0);
    for (std::size_t w = 0; w < walls_.size(); ++w)
      sweep[groups.of(static_cast<int>(w))] += std::abs(map_.edges[walls_[w].plan_edge].segment.sweep);
    for (const RoundJoint& joint : round_joints_) {
      const int a = groups.of(joint.a.wall), b = groups.of(joint.b.wall);
      if (a == b || sweep[a] + sweep[b] > 2 * std::numbers::pi - tolerance::vertex) {
        raise_between(joint.low, joint.a, joint.b);
        continue;
      }
      walls_[joint.a.wall].joined.push_back(joint.b.wall);
      const double both = sweep[a] + sweep[b];
      groups.join(a, b);
      sweep[groups.of(a)] = both;
    }
  }

  /// The upright edge, or edges, from shell vertex `low` to the one above it.
  void raise(const std::vector<HalfEdge>& around, int low) {
    std::vector<WallEnd> ends;
    for (const HalfEdge h : around)
      for (const int w : walls_of_edge_[h >> 1]) {
        const WallPiece& wall = walls_[w];
        const bool at_from = !(h & 1);
        const int bottom = at_from ? shell_.edges[wall.low].from : shell_.edges[wall.low].to;
        const int top = at_from ? shell_.edges[wall.high].from : shell_.edges[wall.high].to;
        if (bottom <= low && top > low) ends.push_back({w, at_from, wall.wood_left == at_from});
      }
    if (ends.size() == 2 && stand_together(map_, walls_[ends[0].wall], walls_[ends[1].wall])) {
      if (same_drawn_piece(map_, walls_[ends[0].wall], walls_[ends[1].wall])) {
        walls_[ends[0].wall].joined.push_back(ends[1].wall);
      } else {
        round_joints_.push_back({low, ends[0], ends[1]});
      }
      return;
    }
    for (std::size_t i = 0; i < ends.size(); ++i)  // pairs enclose wood: where four walls meet, two edges part them
      if (ends[i].wood_ahead) raise_between(low, ends[i], ends[(i + 1) % ends.size()]);
  }

  void raise_between(int low, const WallEnd& a, const WallEnd& b) {
    const int upright = static_cast<int>(shell_.edges.size());
    ShellEdge edge;
    edge.upright = true;
    edge.from = low;
    edge.to = low + 1;
    shell_.edges.push_back(std::move(edge));
    for (const WallEnd& end : {a, b}) {
      WallPiece& wall = walls_[end.wall];
      wall.uprights.push_back({upright, wall.wood_left != end.at_from});
    }
  }

  Shell shell_;
  const Subdivision& map_ = shell_.plan.map;
  std::vector<EdgeHeights> over_;
  std::vector<WallPiece> walls_;
  std::vector<std::vector<int>> walls_of_edge_;
  std::vector<int> first_vertex_;  ///< shell vertices of a plan vertex, from here to the next entry
  std::vector<HalfEdge> outgoing_;
  std::vector<RoundJoint> round_joints_;
};

}  // namespace

Shell lift(Plan plan) { return Lifter(std::move(plan)).run(); }

}  // namespace sagitta
