#include "oracle/Tools.hpp"

#include <BRepAlgoAPI_Common.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Geom_Circle.hxx>
#include <TopExp_Explorer.hxx>
#include <algorithm>
#include <cmath>
#include <gp_Pln.hxx>
#include <map>

#include "oracle/Patch.hpp"
#include "oracle/Pocket.hpp"

namespace sagitta::oracle {
namespace {

/// Tools end this far above and below the wood, mm.
constexpr double past = 5;

TopoDS_Edge edge_of(const CurveSegment& segment, const TopoDS_Vertex& a, const TopoDS_Vertex& b, double z) {
  if (!segment.is_arc()) return BRepBuilderAPI_MakeEdge(a, b).Edge();
  const gp_Dir up(0, 0, segment.sweep > 0 ? 1 : -1);
  const Handle(Geom_Circle) circle =
      new Geom_Circle(gp_Ax2(gp_Pnt(segment.centre.x, segment.centre.y, z), up, gp_Dir(1, 0, 0)), segment.radius);
  const double start = segment.sweep > 0 ? segment.start : -segment.start;
  return BRepBuilderAPI_MakeEdge(circle, a, b, start, start + std::abs(segment.sweep)).Edge();
}

/// The loop's face at height z, drawn up to `top`. Two vertices for each joint of the loop at least.
TopoDS_Shape prism(const Loop& loop, double z, double top) {
  const std::size_t n = loop.size();
  std::vector<TopoDS_Vertex> corner;
  for (const CurveSegment& segment : loop)
    corner.push_back(BRepBuilderAPI_MakeVertex(gp_Pnt(segment.a.x, segment.a.y, z)).Vertex());
  BRepBuilderAPI_MakeWire wire;
  for (std::size_t i = 0; i < n; ++i) wire.Add(edge_of(loop[i], corner[i], corner[(i + 1) % n], z));
  const TopoDS_Face face = BRepBuilderAPI_MakeFace(gp_Pln(gp_Pnt(0, 0, z), gp_Dir(0, 0, 1)), wire.Wire()).Face();
  return BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, top - z)).Shape();
}

Box box_of(const Loop& loop) {
  Box box;
  for (const CurveSegment& segment : loop) {
    const Box b = bounds(segment);
    box.add(b.low);
    box.add(b.high);
  }
  return box;
}

struct Builder {
  const Work& work;
  bool parallel;
  double roof = work.top + past;
  Box reach = box_of(work.outline);
  TopTools_ListOfShape tools{};
  std::map<double, std::vector<Loop>> trimmed{};  ///< arc floors that no single patch gives, by how far they lie down

  bool falls_in(double x0, double x1) const {
    return work.surface.fall_start && *work.surface.fall_start > x0 && *work.surface.fall_start < x1;
  }
  bool fallen(double x) const { return work.surface.fall_start && x > *work.surface.fall_start; }
  double widest() const { return std::max(std::abs(reach.low.y), std::abs(reach.high.y)); }

  /// All above the surface moved down by `offset`, between two square walls.
  void add_over(double offset, double x0, double x1, TopTools_ListOfShape& out) const {
    if (falls_in(x0, x1)) {
      add_over(offset, x0, *work.surface.fall_start, out);
      add_over(offset, *work.surface.fall_start, x1, out);
      return;
    }
    const Surface& s = work.surface;
    const bool low = fallen(0.5 * (x0 + x1));
    if (s.flat) {
      out.Append(over_plane(offset, low, x0, x1));
      return;
    }
    const double half = half_angle_past(s, x0, x1, widest());
    out.Append(s.r2 == 0 ? solid_over(ruled_patch(s, offset, low, {{1, 0}, x0}, {{1, 0}, x1}, half), roof)
                         : solid_over(quadratic_patch(s, offset, low, x0, x1, half), roof));
  }

  TopoDS_Shape over_plane(double offset, bool low, double x0, double x1) const {
    const double y = widest() + past;
    const auto z = [&](double x) {
      return work.surface.thickness - offset - (low ? work.surface.fall_slope * (x - *work.surface.fall_start) : 0);
    };
    BRepBuilderAPI_MakeWire wire;
    const gp_Pnt a(x0, -y, z(x0)), b(x1, -y, z(x1)), c(x1, -y, roof), d(x0, -y, roof);
    for (const auto& [p, q] : {std::pair{a, b}, {b, c}, {c, d}, {d, a}}) wire.Add(BRepBuilderAPI_MakeEdge(p, q).Edge());
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(), gp_Vec(0, 2 * y, 0)).Shape();
  }

  /// The two walls of a straight slot that runs right across the wood.
  bool runs_across(const Cut& cut, Wall& first, Wall& last) const {
    if (cut.region.size() != 4 || cut.name.rfind("slot", 0) != 0) return false;
    std::vector<Wall> walls;
    for (const CurveSegment& side : cut.region) {
      Point n = left_of(unit(side.b - side.a));
      if (n.x < 0) n = -1.0 * n;
      if (n.x > 0.1 && side.length() > widest()) walls.push_back({n, dot(n, side.a)});
    }
    if (walls.size() != 2) return false;
    first = walls[0].d < walls[1].d ? walls[0] : walls[1];
    last = walls[0].d < walls[1].d ? walls[1] : walls[0];
    last.n = first.n;
    return reach.low.y > box_of(cut.region).low.y && reach.high.y < box_of(cut.region).high.y;
  }

  void add_arc(const Cut& cut) {
    const Surface& s = work.surface;
    const Box box = box_of(cut.region);
    const bool covers =
        box.low.x < reach.low.x && box.high.x > reach.high.x && box.low.y < reach.low.y && box.high.y > reach.high.y;
    if (covers) return add_over(cut.value, box.low.x, box.high.x, tools);
    Wall first, last;
    if (!runs_across(cut, first, last)) return trimmed[cut.value].push_back(cut.region);
    if (first.n.y == 0) return add_over(cut.value, first.d, last.d, tools);
    if (s.flat || s.r2 != 0 || falls_in(box.low.x - past, box.high.x + past))
      return trimmed[cut.value].push_back(cut.region);
    const double half = half_angle_past(s, box.low.x, box.high.x, widest());
    tools.Append(solid_over(ruled_patch(s, cut.value, fallen(box.low.x), first, last, half), roof));
  }

  void add(const Cut& cut) {
    if (cut.floor == Cut::Floor::arc)
      add_arc(cut);
    else
      tools.Append(prism(cut.region, cut.value > 0 ? cut.value : -past, roof));
  }

  /// Arc floors over other regions: the regions' prisms in common with all that lies above.
  void add_trimmed() {
    for (const auto& [offset, loops] : trimmed) {
      TopTools_ListOfShape regions, over;
      Box box = reach;
      for (const Loop& loop : loops) {
        const Box b = box_of(loop);
        box.add(b.low);
        box.add(b.high);
        regions.Append(prism(loop, -past, roof - 1));
      }
      add_over(offset, box.low.x - 1, box.high.x + 1, over);
      BRepAlgoAPI_Common common;
      common.SetArguments(regions);
      common.SetTools(over);
      common.SetRunParallel(parallel);
      common.Build();
      for (TopExp_Explorer it(common.Shape(), TopAbs_SOLID); it.More(); it.Next()) tools.Append(it.Current());
    }
  }
};

}  // namespace

TopoDS_Shape stock(const Work& work) { return prism(work.outline, 0, work.top); }

TopTools_ListOfShape tools(const Work& work, bool parallel) {
  Builder builder{work, parallel};
  for (const Cut& cut : work.cuts) builder.add(cut);
  builder.add_trimmed();
  for (const Pin& pin : work.pins) builder.tools.Append(prism(circle(pin.centre, pin.radius), -past, pin.depth));
  for (const Cut& hollow : work.hollows) builder.tools.Append(prism(hollow.region, -past, hollow.value));
  for (const SideHole& hole : work.holes) {
    const Point from = hole.dot.mouth - hole.dot.inward;
    const gp_Ax2 axis(gp_Pnt(from.x, from.y, hole.z), gp_Dir(hole.dot.inward.x, hole.dot.inward.y, 0));
    builder.tools.Append(BRepPrimAPI_MakeCylinder(axis, hole.dot.radius, hole.dot.depth + 1).Shape());
  }
  return builder.tools;
}

}  // namespace sagitta::oracle
