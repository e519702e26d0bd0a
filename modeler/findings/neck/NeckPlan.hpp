#pragma once

/// What a neck must be to meet this board: its sides, its widths and depths, and where nothing may rise. Lengths in mm,
/// in the board's frame; the glue face is z = 0, seen from above as the neck lies.

#include <optional>
#include <string>
#include <vector>

#include "neck/MatingFace.hpp"
#include "neck/NeckFamilies.hpp"

namespace sagitta {

/// Widths at one place, square to the centre line.
struct NeckWidthAt {
  std::string place;  ///< "nut", "fret 5", "joint", "end"
  double x = 0;
  double bare = 0;          ///< of the board's wood, binding and its lines off
  double over_binding = 0;  ///< of the finished board
  double neck = 0;          ///< of the neck, neck.allowance on each side
};

/// Depths at one fret, on the centre line.
struct NeckDepthAt {
  int fret = 0;
  double x = 0;
  double whole = 0;                   ///< neck and board, as the board file says
  double board = 0;                   ///< the board's part
  double wood = 0;                    ///< what the neck's wood must be
  std::optional<double> under_rod{};  ///< what the rod channel leaves of it
};

/// A cut of the board under which nothing of the neck may rise.
struct DeepCut {
  std::string name;  ///< "shell-03", "cut "window""
  std::vector<Loop> outlines;
  double left = 0;  ///< wood under it; 0: it is open at the glue face
};

struct NeckPlan {
  MatingFace face;
  LineSegment sides[2];             ///< finished sides of the neck, [0] at negative y, by rising x
  LineSegment ledge;                ///< the board's nut end, from side to side
  Loop gauge;                       ///< the neck's sides and the board's two ends as straight lines
  std::vector<NeckWidthAt> widths;  ///< by rising x
  std::vector<NeckDepthAt> depths;  ///< at frets 1 and 12, where given
  std::vector<DeepCut> deep_cuts;   ///< those that leave less than deep_cut_floor of wood, and those from below
  std::optional<OverChannel> over_channel{};  ///< where the board is thinnest over the rod channel
  double joint_x = 0;                         ///< of the joint on the centre line
  std::optional<double> end_room{};           ///< least room between the board's end and the body's top, from [height]
};

/// Under a cut that leaves less wood than this no screw, pin or rod's end of the neck may rise. mm.
inline constexpr double deep_cut_floor = 3;

NeckPlan neck_plan(const PreparedBoard& ready);

}  // namespace sagitta
