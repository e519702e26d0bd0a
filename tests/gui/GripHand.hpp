#pragma once

/// A hand at a drawing on the board: takes hold of its frame's grips, and knows by the points of the board what it did.

#include <numbers>

#include "gui/Hand.hpp"

namespace sagitta::test {

inline constexpr double half_turn = std::numbers::pi;
/// Half of what turns and sizes fall on when nothing snaps: degrees, mm.
inline constexpr double half_turn_grid = 0.05, half_size_grid = 0.025;

/// What a drag did about the marker, by the points of the board under the pointer: degrees, and the ratio of distances.
struct Pulled {
  double angle = 0, ratio = 1;
};

/// A board with an oblong of 20 x 10 mm let in as artwork and nothing else, seen from above and near.
class GripHand : public Hand {
 public:
  explicit GripHand(const HandSpec& spec = {"heron-six"}, std::vector<int> frets = {3}, bool by_space = false);

  const Inlay& inlay() { return board().inlays[0]; }
  Point marker(std::size_t i = 0) { return desk().results.good->prepared->layout().markers[i].centre; }
  /// Makes it the board, as a step of its own.
  void show(const Board& draft);
  void look(const std::string& view);
  void near(Point place);
  /// Clicks on that marker's piece.
  void choose(std::size_t i = 0);

  /// Where the level plane through the playing surface at a marker lies in the window, so much along and across from
  /// it.
  ImVec2 window_of(Point marker, Point off = {});
  /// From that marker to the place of its plane under a pixel: Newton's method on the projection.
  Point board_at(Point marker, ImVec2 at);
  /// The middle of a grip in the window.
  ImVec2 grip(const std::string& name);

  /// Drags from a pixel to another; Shift goes down on the way when nothing is to snap. Pixels are whole ones: so
  /// ImGui has them. The figures are about that marker.
  Pulled pull(ImVec2 from, ImVec2 to, bool snaps, bool let_go = true, std::size_t i = 0);
  /// Turns by the turning grip, by about so many degrees counter-clockwise as seen from above.
  Pulled turn(double by, bool snaps, bool let_go = true);
  /// Sizes by a corner's grip, by about that factor.
  Pulled size(double by, bool snaps, bool let_go = true, int corner = 2);
};

}  // namespace sagitta::test
