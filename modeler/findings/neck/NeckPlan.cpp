#include "neck/NeckPlan.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include "board/CutSide.hpp"
#include "neck/HeightChain.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// An edge by rising x, moved outward.
LineSegment side_of(const LineSegment& edge, double out) {
  const bool rising = edge.a.x <= edge.b.x;
  const Point low = rising ? edge.a : edge.b, high = rising ? edge.b : edge.a;
  const Point by{0, (low.y + high.y) < 0 ? -out : out};
  return {low + by, high + by};
}

Point on(const LineSegment& side, double x) { return between(side.a, side.b, (x - side.a.x) / (side.b.x - side.a.x)); }

double binding_of(const Board& board) {
  if (!board.binding) return 0;
  return board.binding->width + std::accumulate(board.binding->lines.begin(), board.binding->lines.end(), 0.0);
}

std::vector<NeckWidthAt> widths_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  std::vector<NeckWidthAt> widths;
  const auto add = [&](const std::string& place, double x) {
    const double whole = layout.edge(0, x) + layout.edge(1, x);
    double bare = whole;
    // The binding is square to each edge.
    for (const double slope : layout.edge_slope) bare -= binding_of(board) * std::hypot(1, slope);
    widths.push_back({place, x, bare, whole, whole + 2 * (board.neck ? board.neck->allowance : 0)});
  };
  add("nut", 0);
  for (const std::size_t fret : {1U, 5U, 12U})
    if (fret < layout.frets.size()) add("fret " + std::to_string(fret), layout.frets[fret].middle.x);
  if (board.neck && (board.neck->body_at || board.neck->joint_fret))
    add("joint", std::min(joint_place(ready), layout.heel_end));
  add("end", layout.heel_end);
  std::stable_sort(widths.begin(), widths.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  return widths;
}

std::vector<NeckDepthAt> depths_of(const PreparedBoard& ready) {
  std::vector<NeckDepthAt> depths;
  if (!ready.board().neck) return depths;
  const Neck& neck = *ready.board().neck;
  const std::pair<int, std::optional<double>> given[] = {{1, neck.depth_first}, {12, neck.depth_twelfth}};
  for (const auto& [fret, whole] : given) {
    if (!whole || fret >= static_cast<int>(ready.layout().frets.size())) continue;
    NeckDepthAt depth{fret, ready.layout().frets[static_cast<std::size_t>(fret)].middle.x, *whole};
    depth.board = ready.surface().height(depth.x, 0);
    depth.wood = depth.whole - depth.board;
    if (neck.channel_depth && depth.x >= neck.channel_from.value_or(depth.x) &&
        depth.x <= neck.channel_to.value_or(depth.x))
      depth.under_rod = depth.wood - *neck.channel_depth;
    depths.push_back(depth);
  }
  return depths;
}

std::vector<DeepCut> deep_cuts_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  std::vector<DeepCut> cuts;
  for (const InlayPiece& piece : ready.inlays().pieces)
    if (const double left = board.board.thickness - piece.depth; left < deep_cut_floor)
      cuts.push_back({piece.name, piece.pocket, left});
  for (const FittedCut& fitted : ready.inlays().cuts) {
    const Cut& cut = board.cuts[static_cast<std::size_t>(fitted.cut)];
    const bool open = is_through(cut) || is_from_below(cut);
    const double left = open ? 0 : board.board.thickness - cut.depth;
    if (left < deep_cut_floor) cuts.push_back({"cut \"" + cut.name + "\"", fitted.outlines, left});
  }
  return cuts;
}

}  // namespace

NeckPlan neck_plan(const PreparedBoard& ready) {
  const Layout& layout = ready.layout();
  const double out = ready.board().neck ? ready.board().neck->allowance : 0;
  NeckPlan plan;
  plan.face = mating_face(ready);
  for (std::size_t i = 0; i < 2; ++i) plan.sides[i] = side_of(layout.edges[i], out);
  // Straight on to the heel end, past the rounded corners.
  for (LineSegment& side : plan.sides) side.b = on(side, layout.heel_end);
  plan.ledge = {plan.sides[0].a, plan.sides[1].a};
  const Point corners[] = {plan.sides[0].a, plan.sides[0].b, plan.sides[1].b, plan.sides[1].a};
  for (std::size_t i = 0; i < 4; ++i) plan.gauge.push_back(line(corners[i], corners[(i + 1) % 4]));
  plan.widths = widths_of(ready);
  plan.depths = depths_of(ready);
  plan.deep_cuts = deep_cuts_of(ready);
  Subject subject{ready};
  subject.let = let_pieces(ready.board(), ready.inlays());
  plan.over_channel = least_over_channel(subject);
  plan.joint_x = joint_place(ready);
  plan.end_room = end_room(ready);
  // Where the body's end is given the joint is there, straight across.
  if (ready.board().neck && ready.board().neck->body_at && plan.joint_x <= layout.heel_end)
    plan.face.joint =
        LineSegment{{plan.joint_x, -layout.edge(0, plan.joint_x)}, {plan.joint_x, layout.edge(1, plan.joint_x)}};
  return plan;
}

}  // namespace sagitta
