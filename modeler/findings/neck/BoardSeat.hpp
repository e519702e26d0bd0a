#pragma once

/// What of a board a neck must fit: its edges, its ends and what the board file says of the neck. Plain values, so that
/// a process of its own can be asked. Lengths in mm, in the board's frame.

#include <array>
#include <optional>
#include <vector>

#include "neck/FaceSpans.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct BoardSeat {
  Loop outline;
  std::array<double, 2> edge_at_nut{}, edge_slope{};  ///< as in Layout
  double thickness = 0;
  double nut_end = 0, heel_end = 0;
  double nut_slant = 0;            ///< change of the nut line's x for each mm of y
  double compare_to = 0;           ///< x of the joint where the board file gives one, else the heel end
  bool joint_given = false;        ///< `compare_to` is the joint
  std::vector<double> nut_lines;   ///< x on the centre line where a neck's face may begin, the likeliest first
  std::vector<double> heel_lines;  ///< where it may end
  double trim = 0;                 ///< what a rough neck stands out on each side
  std::vector<double> depth_at;    ///< x where the neck's depth is asked: frets 1 and 12
  std::optional<Place3> file_nut, file_heel;  ///< points of the centre line in the file

  double edge(int side, double x) const {
    const auto i = static_cast<std::size_t>(side);
    return edge_at_nut[i] + edge_slope[i] * x;
  }
  friend bool operator==(const BoardSeat&, const BoardSeat&) = default;
};

BoardSeat board_seat(const PreparedBoard& ready);

/// The same for the other hand.
BoardSeat mirrored(const BoardSeat& seat);

/// Whether the other hand's board differs from this one at all.
bool is_one_handed(const BoardSeat& seat);

}  // namespace sagitta
