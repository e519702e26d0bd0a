#include "neck/BoardSeat.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

/// Sides of a board that differ by less than this are the same to either hand. mm.
constexpr double same_hand = 0.05;

void add(std::vector<double>& lines, double x) {
  if (std::none_of(lines.begin(), lines.end(), [&](double known) { return std::abs(known - x) < same_hand; }))
    lines.push_back(x);
}

std::optional<double> joint_x(const Board& board, const Layout& layout) {
  if (!board.neck) return {};
  const auto& neck = *board.neck;
  if (neck.body_at) return std::min(*neck.body_at, layout.heel_end);
  if (!neck.joint_fret || *neck.joint_fret >= static_cast<int>(layout.frets.size())) return {};
  return std::min(layout.frets[static_cast<std::size_t>(*neck.joint_fret)].middle.x, layout.heel_end);
}

}  // namespace

BoardSeat board_seat(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  BoardSeat seat;
  seat.outline = layout.outline;
  seat.edge_at_nut = layout.edge_at_nut, seat.edge_slope = layout.edge_slope;
  seat.thickness = board.board.thickness;
  seat.nut_end = layout.nut_end, seat.heel_end = layout.heel_end;
  seat.nut_slant = layout.nut_direction.x / layout.nut_direction.y;
  const auto joint = joint_x(board, layout);
  seat.joint_given = joint.has_value();
  seat.compare_to = joint.value_or(layout.heel_end);
  for (const double x : {layout.nut_end, 0.0}) add(seat.nut_lines, x);
  if (layout.nut) {
    add(seat.nut_lines, layout.nut->face.x);
    if (!layout.nut->shelf) add(seat.nut_lines, layout.nut->back.x);
  }
  if (joint) add(seat.heel_lines, *joint);
  add(seat.heel_lines, layout.heel_end);
  for (const std::size_t fret : {1U, 12U})
    if (fret < layout.frets.size()) seat.depth_at.push_back(layout.frets[fret].middle.x);
  if (!board.neck) return seat;
  if (board.neck->state == NeckState::rough) seat.trim = board.neck->trim;
  seat.file_nut = board.neck->file_nut, seat.file_heel = board.neck->file_heel;
  return seat;
}

BoardSeat mirrored(const BoardSeat& seat) {
  BoardSeat other = seat;
  other.outline = mirrored(seat.outline);
  std::swap(other.edge_at_nut[0], other.edge_at_nut[1]);
  std::swap(other.edge_slope[0], other.edge_slope[1]);
  other.nut_slant = -seat.nut_slant;
  return other;
}

bool is_one_handed(const BoardSeat& seat) {
  const double wide = seat.edge(0, 0) + seat.edge(1, 0);
  return std::abs(seat.edge(0, 0) - seat.edge(1, 0)) > same_hand ||
         std::abs(seat.edge(0, seat.heel_end) - seat.edge(1, seat.heel_end)) > same_hand ||
         std::abs(seat.nut_slant) * wide > same_hand;
}

}  // namespace sagitta
