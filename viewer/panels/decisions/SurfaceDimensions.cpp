#include <cmath>

#include "decisions/Sketch.hpp"
#include "layout/LastFret.hpp"

namespace sagitta::viewer {

namespace {

/// How deep a space is scalloped, at its deepest.
void scallop_depth(Sketch& s, const ScallopedSpace& space) {
  const double x = space.x(0.5, 0), y = 0;
  s.between(s.at(x, y, s.surface.height(x, y) - space.depth), s.on(x, y, 0), s.mm(space.depth) + " deep");
}

void scallops(Sketch& s, const std::string& key) {
  if (s.surface.scallops.empty() || !s.board.scallop) return;
  const ScallopedSpace &first = s.surface.scallops.front(), &last = s.surface.scallops.back();
  const double land = s.board.scallop->land;
  if (key == "scallop.land") {
    s.between(s.on(first.x(0, 0) - land, 0), s.on(first.x(0, 0), 0), s.mm(land));
    return s.between(s.on(first.x(1, 0), 0), s.on(first.x(1, 0) + land, 0), s.mm(land));
  }
  if (key == "scallop.from_fret" || key == "scallop.to_fret") {
    const bool from = key == "scallop.from_fret";
    const int fret = from ? s.board.scallop->from_fret : s.board.scallop->to_fret;
    return s.note(s.on(from ? first.x(0, 0) - land : last.x(1, 0) + land, 0, 1), "slot " + std::to_string(fret));
  }
  scallop_depth(s, first);
  if (&first != &last) scallop_depth(s, last);
}

/// Where the face of each worked edge begins, and how far below the playing surface it meets the side.
void edges(Sketch& s, const std::string& key) {
  const double x = s.layout.heel_end / 2;
  for (const WorkedEdge& edge : s.surface.worked_edges) {
    const double outer = edge.side * edge.reach(x), inner = edge.side * s.surface.begins(edge, x);
    std::string text = edge.roll > 0 ? "R " + s.mm(edge.roll) : s.mm(edge.bevel) + " wide";
    if (key == "edges.bevel_angle") text = s.named(key);
    if (key == "edges.stage") text = s.board.edges->stage == EdgeStage::hand ? "by hand" : "on the machine";
    s.between(s.at(x, outer, s.surface.lowest(x, outer)), s.on(x, inner), text);
  }
}

}  // namespace

void dimension_surface(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  const double heel = l.heel_end, edge = -l.edge(0, heel);
  if (key.starts_with("scallop.")) return scallops(s, key);
  if (key.starts_with("edges.")) return edges(s, key);
  if (key == "surface.radius_at_nut") return s.radius_at(0);
  if (key == "surface.radius_at_heel")
    return s.radius_at(s.board.surface.heel_at == HeelAt::last_fret ? last_fret(l).middle.x : heel);
  if (key.starts_with("surface.fall") && l.fall_start) {
    s.note(s.on(*l.fall_start, 0, 1), "falls from here");
    return s.between(s.at(heel, 0, s.surface.thickness), s.on(heel, 0, 0), s.mm(s.surface.thickness - s.top(heel, 0)));
  }
  s.radius_at(0), s.radius_at(heel), s.height_at(0, -l.edge(0, 0)), s.height_at(heel, edge);
}

}  // namespace sagitta::viewer
