#include "surface/Surface.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "layout/LastFret.hpp"
namespace sagitta {
namespace {

void set_linear(Surface& surface, double at_nut, double at_end, double end) {
  surface.r0 = at_nut;
  surface.r1 = (at_end - at_nut) / end;
}

/// R = w^2/8h + h/2 with w = 2 (half + slope x) and h the drop at the nut's edge: the edge keeps its height.
void set_even_edge(Surface& surface, double at_nut, const Layout& layout) {
  surface.r0 = at_nut;
  const double half = layout.half_width_at_nut, slope = layout.half_width_slope;
  const double h = surface.drop(0, half);
  surface.r1 = half * slope / h;
  surface.r2 = slope * slope / (2 * h);
}

void add_scallops(Surface& surface, const Board& board, const Layout& layout) {
  if (!board.scallop) return;
  const Scallop& spec = *board.scallop;
  if (spec.to_fret >= static_cast<int>(layout.frets.size())) return;
  const auto place = [&](int fret) {
    double x = layout.frets[static_cast<std::size_t>(fret)].middle.x;
    if (fret == 0 && layout.nut && !board.scale.zero_fret) x = std::max(x, layout.nut->face.x);
    return x;
  };
  const auto lean = [&](int fret) {
    const FretLine& line = layout.frets[static_cast<std::size_t>(fret)];
    return (line.treble_edge.x - line.bass_edge.x) / (line.treble_edge.y - line.bass_edge.y);
  };
  const double first = place(spec.from_fret), last = place(spec.to_fret);
  for (int fret = spec.from_fret + 1; fret <= spec.to_fret; ++fret) {
    const double low = place(fret - 1), high = place(fret), part = ((low + high) / 2 - first) / (last - first);
    surface.scallops.push_back({fret, low + spec.land, lean(fret - 1), high - spec.land, lean(fret),
                                spec.depth.first + part * (spec.depth.second - spec.depth.first)});
  }
}

void add_worked_edges(Surface& surface, const Board& board, const Layout& layout) {
  if (!board.edges || (board.edges->roll == 0 && board.edges->bevel == 0)) return;
  for (const int side : {0, 1}) {
    const auto i = static_cast<std::size_t>(side);
    WorkedEdge edge{side == 0 ? -1 : 1, layout.edge_at_nut[i], layout.edge_slope[i], board.edges->roll};
    if (edge.roll == 0) {
      edge.bevel = board.edges->bevel;
      edge.steepness = 1 / std::tan(board.edges->bevel_angle_degrees * std::numbers::pi / 180);
    }
    surface.worked_edges.push_back(edge);
  }
}

}  // namespace

double Surface::crown(double x) const {
  return fall_start && x > *fall_start ? thickness - fall_slope * (x - *fall_start) : thickness;
}

double Surface::drop(double x, double y) const {
  if (flat) return 0;
  const double r = radius(x);
  return y * y / (r + std::sqrt(std::max(0.0, (r - y) * (r + y))));
}

double Surface::begins(const WorkedEdge& edge, double x) const {
  const double e = edge.reach(x), r = edge.roll;
  if (r == 0) return e - edge.bevel;
  return flat ? e - r : (e - r) * (1 + r / (radius(x) - r));
}

std::optional<double> Surface::worked_height(const WorkedEdge& edge, Point p) const {
  const double out = edge.side * p.y, e = edge.reach(p.x), r = edge.roll;
  if (out <= begins(edge, p.x)) return std::nullopt;
  if (r == 0) return height(p.x, e - edge.bevel) - edge.steepness * (out - (e - edge.bevel));
  const double aside = std::min(out - (e - r), r), inner = flat ? 0 : radius(p.x) - r;
  const double drop =
      flat ? 0 : (e - r) * (e - r) / (inner + std::sqrt(std::max(0.0, (inner - e + r) * (inner + e - r))));
  return crown(p.x) - drop - r + std::sqrt(std::max(0.0, (r - aside) * (r + aside)));
}

double Surface::lowest(double x, double y) const {
  double z = height(x, y);
  for (const ScallopedSpace& space : scallops)
    if (const double s = space.share(x, y); s > 0 && s < 1) z -= space.below(x, y);
  for (const WorkedEdge& edge : worked_edges)
    if (const auto worked = worked_height(edge, {x, y})) z = std::min(z, *worked);
  return z;
}

bool Surface::exists(double x, double y) const {
  if (flat) return true;
  return radius(x) > std::abs(y);
}

Surface surface_of(const Board& board, const Layout& layout) {
  const SurfaceSpec& spec = board.surface;
  Surface surface;
  surface.thickness = board.board.thickness;
  surface.fall_start = layout.fall_start;
  surface.fall_slope = layout.fall_slope;
  const double at_nut = spec.radius_at_nut.value_or(0);
  switch (spec.profile) {
    case Profile::flat:
      surface.flat = true;
      break;
    case Profile::single:
      surface.r0 = at_nut;
      break;
    case Profile::compound:
      set_linear(surface, at_nut, spec.radius_at_heel.value_or(at_nut),
                 spec.heel_at == HeelAt::heel ? layout.heel_end : last_fret(layout).middle.x);
      break;
    case Profile::string_line:
      surface.r0 = at_nut;
      surface.r1 = at_nut * layout.spread_slope / layout.spread_at_nut;
      break;
    case Profile::even_edge:
      set_even_edge(surface, at_nut, layout);
      break;
  }
  add_scallops(surface, board, layout);
  add_worked_edges(surface, board, layout);
  return surface;
}

}  // namespace sagitta
