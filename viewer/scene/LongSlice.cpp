#include "scene/LongSlice.hpp"

#include <algorithm>
#include <cmath>

#include "neck/FaceSpans.hpp"
#include "neck/HeightChain.hpp"

namespace sagitta::viewer {

namespace {

/// Walls that lie exactly in the plane are cut at a small distance beside it.
constexpr double beside = 1e-5;
constexpr double inside_edge = 1e-3;    ///< of the planes along an edge; a roll rises steeply there
constexpr double longest_straight = 4;  ///< a bent line is drawn in pieces no longer than this
constexpr int stations = 120;

void cut_triangle(const Mesh& mesh, std::size_t t, const LineSegment& along, std::vector<SliceLine>& lines) {
  const Point way = unit(along.b - along.a);
  Point found[2];
  int count = 0;
  for (std::size_t i = 0; i < 3 && count < 2; ++i) {
    const auto& a = mesh.points[mesh.triangles[t][i]];
    const auto& b = mesh.points[mesh.triangles[t][(i + 1) % 3]];
    const double off_a = cross(way, Point{a[0], a[1]} - along.a) + beside;
    const double off_b = cross(way, Point{b[0], b[1]} - along.a) + beside;
    if ((off_a < 0) == (off_b < 0)) continue;
    const double s = off_a / (off_a - off_b);
    found[count++] = {a[0] + s * (static_cast<double>(b[0]) - a[0]), a[2] + s * (static_cast<double>(b[2]) - a[2])};
  }
  if (count == 2) lines.push_back({found[0], found[1]});
}

/// The line so far inside an edge, from end to end of the board.
LineSegment inside(const Layout& layout, int side, double inward) {
  const double out = side == 0 ? -1 : 1;
  const auto place = [&](double x) { return Point{x, out * (layout.edge(side, x) - inward)}; };
  return {place(layout.nut_end), place(layout.heel_end)};
}

void measure_gap(EdgeView& view, const Layout& layout, const NeckShape& neck) {
  for (int i = 0; i <= stations; ++i) {
    const double x = layout.nut_end + (layout.heel_end - layout.nut_end) * i / stations;
    const std::vector<FaceSpan> spans = spans_at(neck.outlines, x);
    if (spans.empty()) continue;
    view.gap.push_back({x, view.side == 0 ? -spans.front().low_z : -spans.back().high_z});
    if (std::abs(view.gap.back().gap) > std::abs(view.widest)) view.widest = view.gap.back().gap, view.widest_at = x;
  }
}

}  // namespace

std::vector<SliceLine> long_slice(const Mesh& mesh, const LineSegment& along) {
  std::vector<SliceLine> lines;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) cut_triangle(mesh, t, along, lines);
  return lines;
}

std::vector<SliceLine> bent(const std::vector<SliceLine>& lines, const PreparedBoard& board) {
  std::vector<SliceLine> out;
  const auto lowered = [&](Point p) { return Point{p.x, p.y - relief_at(board, p.x)}; };
  for (const SliceLine& line : lines) {
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(line.b.x - line.a.x) / longest_straight)));
    for (int i = 0; i < pieces; ++i)
      out.push_back({lowered(between(line.a, line.b, 1.0 * i / pieces)),
                     lowered(between(line.a, line.b, 1.0 * (i + 1) / pieces))});
  }
  return out;
}

EdgeView edge_view(const PreparedBoard& board, const StageModel& stage, int side, const NeckReading* neck) {
  const Layout& layout = board.layout();
  const Surface& surface = board.surface();
  EdgeView view;
  view.side = side;
  const double ledge = board.board().binding ? ledge_width(*board.board().binding) : 0;
  const double square = std::hypot(1.0, layout.edge_slope[static_cast<std::size_t>(side)]);
  view.wall = long_slice(stage.mesh, inside(layout, side, ledge * square + inside_edge));
  if (ledge > 0) view.ledge = long_slice(stage.mesh, inside(layout, side, inside_edge));
  const double out = side == 0 ? -1 : 1;
  for (int i = 0; i <= stations; ++i) {
    const double x = layout.nut_end + (layout.heel_end - layout.nut_end) * i / stations;
    view.top.push_back({x, surface.lowest(x, out * layout.edge(side, x))});
    for (const WorkedEdge& edge : surface.worked_edges)
      if (edge.side == (side == 0 ? -1 : 1))
        view.worked.push_back({x, surface.height(x, out * surface.begins(edge, x))});
  }
  if (neck && neck->shape && is_measured(*neck->shape)) measure_gap(view, layout, *neck->shape);
  return view;
}

int bass_side(const Layout& layout) {
  return layout.strings.empty() || layout.strings.front().a.y <= layout.strings.back().a.y ? 0 : 1;
}

std::optional<double> highest_at(const std::vector<SliceLine>& lines, double x) {
  std::optional<double> top;
  for (const SliceLine& line : lines) {
    const double low = std::min(line.a.x, line.b.x), high = std::max(line.a.x, line.b.x);
    if (x < low || x > high || high <= low) continue;
    const double z = line.a.y + (x - line.a.x) / (line.b.x - line.a.x) * (line.b.y - line.a.y);
    if (!top || z > *top) top = z;
  }
  return top;
}

}  // namespace sagitta::viewer
