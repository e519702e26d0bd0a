#include "solid/Solid.hpp"

#include <BRepCheck_Analyzer.hxx>
#include <BRep_Builder.hxx>
#include <Geom_BSplineCurve.hxx>
#include <Geom_Plane.hxx>
#include <Standard_Failure.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Vertex.hxx>
#include <TopoDS_Wire.hxx>
#include <algorithm>
#include <gp_Pln.hxx>
#include <map>
#include <memory>

#include "plane/Tolerance.hpp"
#include "solid/CompositeWall.hpp"
#include "solid/EdgeCurve.hpp"
#include "solid/EllipseWall.hpp"
#include "solid/FormPatch.hpp"
#include "solid/HoleWall.hpp"
#include "solid/Patch.hpp"
#include "solid/RoundWall.hpp"

namespace sagitta {
namespace {

constexpr double least_tolerance = tolerance::confusion;
/// A deviation is measured at samples. Between them it may be half as much again, up to this much. mm.
constexpr double unseen = 1e-6;

class Builder {
 public:
  explicit Builder(const Shell& shell) : shell_(shell) {}

  TopoDS_Solid run() {
    measure();
    vertices_.reserve(shell_.vertices.size());
    edges_.reserve(shell_.edges.size());
    curves_.reserve(shell_.edges.size());
    for (const ShellVertex& v : shell_.vertices) {
      TopoDS_Vertex vertex;
      brep_.MakeVertex(vertex, gp_Pnt(v.p.x, v.p.y, v.z), least_tolerance);
      vertices_.push_back(vertex);
    }
    for (const ShellEdge& edge : shell_.edges) add_edge(edge);
    TopoDS_Shell closed;
    brep_.MakeShell(closed);
    for (const ShellFace* face : in_order()) {
      here_ = name(shell_, *face);
      brep_.Add(closed, face->kind == ShellFace::Kind::wall ? wall(*face) : level_or_moved(*face));
    }
    closed.Closed(true);
    TopoDS_Solid solid;
    brep_.MakeSolid(solid);
    brep_.Add(solid, closed);
    return solid;
  }

  const std::string& here() const { return here_; }

 private:
  /// The faces as the shell has them, but those with very many edges last. The kernel's STEP writer looks at all edges
  /// of a face for each edge that it meets there first; the walls beside them have few.
  std::vector<const ShellFace*> in_order() const {
    constexpr std::size_t many = 1000;
    std::vector<const ShellFace*> faces;
    for (const ShellFace& face : shell_.faces) faces.push_back(&face);
    std::stable_partition(faces.begin(), faces.end(), [](const ShellFace* face) {
      std::size_t edges = 0;
      for (const auto& loop : face->loops) edges += loop.size();
      return edges <= many;
    });
    return faces;
  }

  /// The reach that the patches need.
  void measure() {
    for (const ShellEdge& edge : shell_.edges) {
      if (edge.upright) continue;
      for (const Point p : outermost(edge)) {
        low_ = std::min(low_, p.x);
        high_ = std::max(high_, p.x);
        if (edge.bound.kind == BoundingSurface::Kind::offset_surface && !shell_.plan.surface.flat)
          slant_ = std::max(slant_, std::abs(p.y) / shell_.plan.surface.radius(p.x));
      }
    }
  }

  /// Along a straight edge x changes evenly, and y over a radius that does so too one way only: its ends tell.
  std::vector<Point> outermost(const ShellEdge& edge) const {
    const bool even = !edge.segment.is_arc() && edge.run.empty() && edge.crossing < 0 && shell_.plan.surface.r2 == 0;
    return even ? std::vector{shell_.at(edge, 0), shell_.at(edge, 1)} : shell_.places(edge);
  }

  void add_edge(const ShellEdge& edge) {
    EdgeCurve curve = curve_of(shell_, edge);
    TopoDS_Edge made;
    brep_.MakeEdge(made, curve.curve, least_tolerance);
    int from = edge.from, to = edge.to;
    if (curve.reversed) std::swap(from, to);
    brep_.Add(made, TopoDS::Vertex(vertices_[from].Oriented(TopAbs_FORWARD)));
    brep_.Add(made, TopoDS::Vertex(vertices_[to].Oriented(TopAbs_REVERSED)));
    brep_.Range(made, curve.first, curve.last);
    const auto spline = Handle(Geom_BSplineCurve)::DownCast(curve.curve);  // it begins and ends in its outer poles
    widen(from, spline.IsNull() ? curve.curve->Value(curve.first) : spline->StartPoint());
    widen(to, spline.IsNull() ? curve.curve->Value(curve.last) : spline->EndPoint());
    edges_.push_back(made);
    curves_.push_back(std::move(curve));
  }

  void widen(int v, const gp_Pnt& end) {
    const ShellVertex& at = shell_.vertices[v];
    const double off = end.Distance(gp_Pnt(at.p.x, at.p.y, at.z));
    if (off > least_tolerance / 2) brep_.UpdateVertex(vertices_[v], 1.1 * off + least_tolerance);
  }

  void tolerate(const Coedge& use, double deviation) {
    if (deviation <= least_tolerance / 2) return;
    const double tolerance = deviation + std::min(deviation / 2, unseen) + least_tolerance;
    brep_.UpdateEdge(edges_[use.edge], tolerance);
    brep_.UpdateVertex(vertices_[shell_.edges[use.edge].from], tolerance);
    brep_.UpdateVertex(vertices_[shell_.edges[use.edge].to], tolerance);
  }

  /// Joined vertices may lie off the wall that stands on them.
  template <class Off>
  double off_at_ends(const Coedge& use, Off off) const {
    const ShellEdge& edge = shell_.edges[use.edge];
    return std::max(off(shell_.vertices[edge.from].p), off(shell_.vertices[edge.to].p));
  }

  using Loop = std::vector<Coedge>;

  /// A face within its loops, whose surface looks outward, or inward with `inside_out`.
  TopoDS_Face bounded(const Handle(Geom_Surface) & surface, const ShellFace& face, bool inside_out) {
    TopoDS_Face made = within(face.loops, surface, inside_out);
    const auto twice = [&](const Loop& loop) { return passes_twice(loop); };
    if (std::none_of(face.loops.begin(), face.loops.end(), twice) || BRepCheck_Analyzer(made).IsValid()) return made;
    // the kernel lost its way where a loop touches itself along a tangent
    return within(parted(face.loops), surface, inside_out);
  }

  bool passes_twice(const Loop& loop) {
    starts_.clear();
    for (const Coedge use : loop) starts_.push_back(shell_.start(use));
    std::sort(starts_.begin(), starts_.end());
    return std::adjacent_find(starts_.begin(), starts_.end()) != starts_.end();
  }

  TopoDS_Face within(const std::vector<Loop>& loops, const Handle(Geom_Surface) & surface, bool inside_out) {
    TopoDS_Face made;
    brep_.MakeFace(made, surface, least_tolerance);
    for (const Loop& loop : loops) {
      TopoDS_Wire wire;
      brep_.MakeWire(wire);
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const Coedge use = inside_out ? loop[loop.size() - 1 - i] : loop[i];
        const bool forward = (use.forward != inside_out) != curves_[use.edge].reversed;
        brep_.Add(wire, edges_[use.edge].Oriented(forward ? TopAbs_FORWARD : TopAbs_REVERSED));
      }
      wire.Closed(true);
      brep_.Add(made, wire);
    }
    if (inside_out) made.Reverse();
    return made;
  }

  /// The loops cut apart where they pass a vertex twice.
  std::vector<Loop> parted(const std::vector<Loop>& loops) const {
    std::vector<Loop> parts;
    for (const Loop& loop : loops) {
      Loop open;
      for (const Coedge use : loop) {
        const int v = shell_.start(use);
        const auto again = std::find_if(open.begin(), open.end(), [&](Coedge u) { return shell_.start(u) == v; });
        if (again != open.end()) {
          parts.emplace_back(again, open.end());
          open.erase(again, open.end());
        }
        open.push_back(use);
      }
      parts.push_back(std::move(open));
    }
    return parts;
  }

  const Patch& patch(const BoundingSurface& bound) {
    auto& made = patches_[bound];
    if (!made) made = std::make_unique<Patch>(shell_.plan.surface, bound, low_ - 1, high_ + 1, slant_);
    return *made;
  }

  /// Heights within tolerance::height count as one; an edge may follow the other of the two.
  double height_apart(const ShellEdge& edge, const BoundingSurface& bound) const {
    double most = 0;
    if (edge.bound == bound) return most;
    if (edge.crossing >= 0 && meets_along(shell_.plan.map.crossings[edge.crossing], bound)) return most;
    for (const Point p : shell_.places(edge)) {
      const Surface& surface = shell_.plan.surface;
      most = std::max(most, std::abs(height(surface, edge.bound, p) - height(surface, bound, p)));
    }
    return most;
  }

  TopoDS_Face level_or_moved(const ShellFace& face) {
    const bool top = face.kind == ShellFace::Kind::top;
    for (const auto& loop : face.loops)
      for (const Coedge use : loop)
        tolerate(use, height_apart(shell_.edges[use.edge], face.bound) + curves_[use.edge].deviation);
    if (face.bound.kind == BoundingSurface::Kind::level) {
      const Handle(Geom_Surface) plane = new Geom_Plane(gp_Pnt(0, 0, face.bound.value), top ? gp::DZ() : -gp::DZ());
      return bounded(plane, face, false);
    }
    if (face.bound.of_hole()) return curved<HoleWall>(face, HoleWall(face.bound), true);
    if (face.bound.kind == BoundingSurface::Kind::roll || face.bound.form != 0)
      return curved<FormPatch>(face, FormPatch(shell_.plan.surface, face.bound, reach_of(face)), false);
    const Patch& moved = patch(face.bound);
    if (!moved.plane())
      for (const auto& loop : face.loops)
        for (const Coedge use : loop) {
          double deviation = curves_[use.edge].deviation;
          const Handle(Geom2d_Curve) pcurve = moved.pcurve(curves_[use.edge], deviation);
          brep_.UpdateEdge(edges_[use.edge], pcurve, moved.surface(), TopLoc_Location(), least_tolerance);
          tolerate(use, deviation);
        }
    return bounded(moved.surface(), face, false);
  }

  template <class Curved>
  TopoDS_Face curved(const ShellFace& face, const Curved& surface, bool inside_out) {
    for (const auto& loop : face.loops)
      for (const Coedge use : loop) {
        double deviation = curves_[use.edge].deviation;
        const Handle(Geom2d_Curve) pcurve = surface.pcurve(curves_[use.edge], deviation);
        brep_.UpdateEdge(edges_[use.edge], pcurve, surface.surface(), TopLoc_Location(), least_tolerance);
        tolerate(use, deviation);
      }
    return bounded(surface.surface(), face, inside_out);
  }

  /// The box that a face lies in, from above.
  Box reach_of(const ShellFace& face) const {
    Box box;
    for (const auto& loop : face.loops)
      for (const Coedge use : loop)
        for (const Point p : shell_.places(shell_.edges[use.edge])) box.add(p);
    return box;
  }

  TopoDS_Face wall(const ShellFace& face) {
    if (face.ellipse && face.ellipse->off == 0) return ellipse_wall(face);
    if (!face.run.empty()) return smooth_wall(face);
    return face.segment.is_arc() ? round_wall(face) : straight_wall(face);
  }

  TopoDS_Face smooth_wall(const ShellFace& face) {
    const CompositeWall smooth(shell_, face);
    for (const Coedge use : face.loops[0]) {
      const Handle(Geom2d_Curve) pcurve = smooth.pcurve(shell_.edges[use.edge], curves_[use.edge]);
      brep_.UpdateEdge(edges_[use.edge], pcurve, smooth.surface(), TopLoc_Location(), least_tolerance);
      const double off = off_at_ends(use, [&](Point p) { return smooth.off(p); });
      tolerate(use, std::max(curves_[use.edge].deviation + smooth.deviation(), off));
    }
    return bounded(smooth.surface(), face, face.wood_left != smooth.reversed());
  }

  TopoDS_Face ellipse_wall(const ShellFace& face) {
    const EllipseWall wall(shell_, face);
    for (const Coedge use : face.loops[0]) {
      const Handle(Geom2d_Curve) pcurve = wall.pcurve(shell_.edges[use.edge], curves_[use.edge]);
      brep_.UpdateEdge(edges_[use.edge], pcurve, wall.surface(), TopLoc_Location(), least_tolerance);
      tolerate(use, std::max(curves_[use.edge].deviation, off_at_ends(use, [&](Point p) { return wall.off(p); })));
    }
    const bool wood_inside = face.wood_left == (face.run.front().sweep > 0);
    return bounded(wall.surface(), face, !wood_inside);
  }

  TopoDS_Face straight_wall(const ShellFace& face) {
    const Point d = unit(face.segment.b - face.segment.a);
    int first = shell_.start(face.loops[0][0]), last = first;
    for (const Coedge use : face.loops[0]) {
      const int v = shell_.start(use);
      if (dot(d, shell_.vertices[v].p) < dot(d, shell_.vertices[first].p)) first = v;
      if (dot(d, shell_.vertices[v].p) > dot(d, shell_.vertices[last].p)) last = v;
    }
    const Point a = shell_.vertices[first].p, along = unit(shell_.vertices[last].p - a);
    const Point out = face.wood_left ? Point{along.y, -along.x} : Point{-along.y, along.x};
    const gp_Dir normal(out.x, out.y, 0);
    const gp_Ax3 axes(gp_Pnt(a.x, a.y, 0), normal, gp_Dir(along.x, along.y, 0));
    const Handle(Geom_Surface) plane = new Geom_Plane(axes);
    for (const auto& loop : face.loops)
      for (const Coedge use : loop) tolerate(use, off_at_ends(use, [&](Point p) { return std::abs(dot(out, p - a)); }));
    return bounded(plane, face, false);
  }

  TopoDS_Face round_wall(const ShellFace& face) {
    const RoundWall round(shell_, face);
    for (const auto& loop : face.loops)
      for (const Coedge use : loop) {
        double deviation = curves_[use.edge].deviation;
        const Handle(Geom2d_Curve) pcurve = round.pcurve(shell_.edges[use.edge], curves_[use.edge], deviation);
        brep_.UpdateEdge(edges_[use.edge], pcurve, round.surface(), TopLoc_Location(), least_tolerance);
        const auto off = [&](Point p) { return std::abs(distance(p, face.segment.centre) - face.segment.radius); };
        tolerate(use, deviation + off_at_ends(use, off));
      }
    const bool wood_inside = face.wood_left == (face.segment.sweep > 0);
    return bounded(round.surface(), face, !wood_inside);
  }

  const Shell& shell_;
  BRep_Builder brep_;
  std::vector<TopoDS_Vertex> vertices_;
  std::vector<TopoDS_Edge> edges_;
  std::vector<EdgeCurve> curves_;
  std::map<BoundingSurface, std::unique_ptr<Patch>> patches_;
  double low_ = 1e300, high_ = -1e300, slant_ = 0;
  std::string here_;
  std::vector<int> starts_;  ///< of the loop at work
};

}  // namespace

TopoDS_Solid make_solid(const Shell& shell) {
  Builder builder(shell);
  try {
    return builder.run();
  } catch (const Standard_Failure& failure) {
    throw BuildError(std::string(name(shell.plan.stage)), builder.here(), failure.GetMessageString());
  }
}

}  // namespace sagitta
